import { useState } from 'react';
import {
  DOUBTS,
  type Edge,
  fieldNote,
  GIVE_OR_TAKE,
  gapBetween,
  type Job,
  type JobPath,
  printScale,
  type Vec2,
} from '../../../core/index.ts';
import { Choice } from '../../fields/Choice.tsx';
import { OnePhotograph, type PointedPhotograph } from '../../photograph/OnePhotograph.tsx';
import { gapWords } from '../../sheet/gapWords.ts';
import { useDispatch, useLengths } from '../../state/BenchContext.tsx';
import { cardOf } from '../cardOf.ts';

/** Two places on each of the two lines, as shares of the picture. */
const POINTS = [
  { name: 'Board edge, one end', at: [0.4, 0.42] },
  { name: 'Board edge, other end', at: [0.6, 0.42] },
  { name: 'Seam line, one end', at: [0.4, 0.38] },
  { name: 'Seam line, other end', at: [0.6, 0.38] },
] as const;
const LINES = [
  [0, 1],
  [2, 3],
] as const;

interface TrialPhotographProps {
  readonly job: Job;
  readonly paths: Readonly<Record<Edge, JobPath>>;
}

/** The gaps of the card trial by photograph: the book in its card lies on the sheet, and two lines are put on an edge. */
export default function TrialPhotograph({ job, paths }: TrialPhotographProps) {
  const [edge, setEdge] = useState<Edge>('head');
  const options = (Object.keys(paths) as Edge[]).map((value) => ({ value, label: fieldNote(paths[value]).title }));
  return (
    <>
      <p className="help">
        Lay the book in its card on the sheet to photograph, marks in sight all round. Put two points on the edge of the
        board, where it shows or presses through. Put the other two on the seam line of the card.
      </p>
      <Choice title="Edge" options={options} chosen={edge} choose={(value) => setEdge(value as Edge)} />
      <OnePhotograph title="Photograph of the book in its card" points={POINTS} lines={LINES}>
        {(pointed) => <GapFound key={edge} job={job} path={paths[edge]} pointed={pointed} />}
      </OnePhotograph>
    </>
  );
}

interface GapFoundProps {
  readonly job: Job;
  readonly path: JobPath;
  readonly pointed: PointedPhotograph;
}

function GapFound({ job, path, pointed: { photograph, points } }: GapFoundProps) {
  const dispatch = useDispatch();
  const lengths = useLengths();
  const [a, b, p, q] = points as readonly [Vec2, Vec2, Vec2, Vec2];
  const { thickness_mm: thickness } = job.book;
  const found = gapBetween(
    photograph,
    // A gap of a few millimetres hardly depends on how large the sheet was printed.
    printScale('A4', { across: null, along: null }, DOUBTS.reading_mm),
    { edge: [a, b], line: [p, q], height: { value: thickness + 2 * cardThickness(job), u: DOUBTS.thickness_mm } },
  );
  if ('ok' in found)
    return (
      <p className="issue" role="alert">
        The points and the marks fit no camera. Put the points on the two lines.
      </p>
    );
  const gap = Math.round(found.value * 10) / 10;
  return (
    <div role="status">
      <p>
        It shows: {gapWords(gap, lengths)}, give or take {lengths.fine(GIVE_OR_TAKE * found.u)}.
      </p>
      <button type="button" onClick={() => dispatch({ type: 'edit', key: path, patches: [{ path, value: gap }] })}>
        Put it into {fieldNote(path).title}
      </button>
    </div>
  );
}

/** The card lies under and over the book. */
const cardThickness = (job: Job): number => cardOf(job).job.leather.outside.max_mm;
