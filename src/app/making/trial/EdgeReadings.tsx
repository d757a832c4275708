import { lazy, useMemo, useState } from 'react';
import {
  type CoverDesign,
  coverSection,
  type Edge,
  edgeSection,
  type Job,
  type JobPath,
  type RangePoint,
} from '../../../core/index.ts';
import { LatePart } from '../../loading/LatePart.tsx';
import { loupeView } from '../../loupe/loupeView.ts';
import { SectionGlass } from '../../loupe/SectionGlass.tsx';
import { gapWords } from '../../sheet/gapWords.ts';
import { SectionPicture } from '../../sheet/SectionPicture.tsx';
import { useLengths } from '../../state/BenchContext.tsx';
import { cardOf } from '../cardOf.ts';
import { GapField } from './GapField.tsx';

const TrialPhotograph = lazy(() => import('./TrialPhotograph.tsx'));

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
  const lengths = useLengths();
  const [isByPhotograph, setByPhotograph] = useState(false);
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
          <EdgeReading
            key={edge}
            design={card}
            edge={edge}
            point="thick"
            path={PATHS[edge]}
            told={(gap) => `Expected: ${gapWords(gap, lengths)}.`}
          />
        ))}
      </form>
      <details className="assumptions" onToggle={(event) => setByPhotograph(event.currentTarget.open)}>
        <summary>Read a gap off a photograph</summary>
        {isByPhotograph && (
          <LatePart name="photograph">
            <TrialPhotograph job={job} paths={PATHS} />
          </LatePart>
        )}
      </details>
    </>
  );
}

interface EdgeReadingProps {
  readonly design: CoverDesign;
  readonly edge: Edge;
  readonly point: RangePoint;
  readonly path: JobPath;
  /** What should be seen there, from the gap of the design. */
  readonly told: (gap: number) => string;
}

/** One edge, enlarged, with the field for what is read there. */
export function EdgeReading({ design, edge, point, path, told }: EdgeReadingProps) {
  const lengths = useLengths();
  // In a pocket: near the fore-edge, where it is deepest.
  const section = edgeSection(design, edge, point, 1);
  const view = useMemo(() => loupeView(design, edge, GLASS), [design, edge]);
  const gap = section.gap ?? 0;
  return (
    <div className="edge-reading">
      <div className="edge-glass">
        <SectionGlass section={section} view={view} size={GLASS} said={gapWords(gap, lengths)} />
      </div>
      <GapField path={path} help={told(gap)} />
    </div>
  );
}
