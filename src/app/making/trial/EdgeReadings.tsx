import { useMemo } from 'react';
import { type CoverDesign, coverSection, type Edge, edgeSection, type Job, type JobPath } from '../../../core/index.ts';
import { loupeView } from '../../loupe/loupeView.ts';
import { SectionGlass } from '../../loupe/SectionGlass.tsx';
import { gapWords } from '../../sheet/gapWords.ts';
import { SectionPicture } from '../../sheet/SectionPicture.tsx';
import { useLengths } from '../../state/BenchContext.tsx';
import { cardOf } from '../cardOf.ts';
import { GapField } from './GapField.tsx';

const PATHS: Readonly<Record<Edge, JobPath>> = {
  frontForeEdge: 'mockup.readings.front_mm',
  backForeEdge: 'mockup.readings.back_mm',
  head: 'mockup.readings.head_mm',
  tail: 'mockup.readings.tail_mm',
};

/** px across the glass over an edge. */
const GLASS = 152;

/** The card on the book, and at each edge what it shows if every measure is right, with a field for what it does show. */
export function EdgeReadings({ job }: { readonly job: Job }) {
  const card = cardOf(job);
  return (
    <>
      <figure className="section-drawing">
        <SectionPicture section={coverSection(card, 'thick', 0)} label="Section of the book in the card" />
        <figcaption>
          The book in the card, cut across the spine. Below it each edge, enlarged, if every measure is right.
        </figcaption>
      </figure>
      <p className="help">
        Type each gap from the board edge to where it stops at the seam, the book closed in the card. Read the
        fore-edges pushed home: press the card to spine and boards, so that the spare wrap is there. Front and back
        count together, head and tail too.
      </p>
      <form className="job-form edge-readings" aria-label="Gaps read" onSubmit={(event) => event.preventDefault()}>
        {(Object.keys(PATHS) as Edge[]).map((edge) => (
          <EdgeReading key={edge} card={card} edge={edge} />
        ))}
      </form>
    </>
  );
}

function EdgeReading({ card, edge }: { readonly card: CoverDesign; readonly edge: Edge }) {
  const lengths = useLengths();
  // In a pocket: near the fore-edge, where it is deepest.
  const section = edgeSection(card, edge, 'thick', 1);
  const view = useMemo(() => loupeView(card, edge, GLASS), [card, edge]);
  const gap = section.gap ?? 0;
  return (
    <div className="edge-reading">
      <div className="edge-glass">
        <SectionGlass section={section} view={view} size={GLASS} said={gapWords(gap, lengths)} />
      </div>
      <GapField path={PATHS[edge]} expected={gap} />
    </div>
  );
}
