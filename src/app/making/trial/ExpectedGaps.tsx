import { cardDesign, coverSection, type Job } from '../../../core/index.ts';
import { SectionPicture } from '../../sheet/SectionPicture.tsx';
import { useLengths } from '../../state/BenchContext.tsx';

/** The card on the book, and the gaps that it shows if every measure is right. */
export function ExpectedGaps({ job }: { readonly job: Job }) {
  const lengths = useLengths();
  const card = cardDesign(job, job.mockup.card);
  const { foreEdge, head, tail } = card.fits.thick;
  const gap = (length: number): string => `${length < 0 ? 'overrun' : 'gap'} ${lengths.gap(length)}`;
  const edges = [
    ['front fore-edge', foreEdge.front],
    ['back fore-edge', foreEdge.back],
    ['head', head],
    ['tail', tail],
  ] as const;
  return (
    <figure className="section-drawing">
      <SectionPicture section={coverSection(card, 'thick', 0)} label="Section of the book in the card" />
      <figcaption>
        The book in the card, cut across the spine. If every measure is right:{' '}
        {edges.map(([edge, length]) => `${edge} ${gap(length)}`).join(', ')}.
      </figcaption>
    </figure>
  );
}
