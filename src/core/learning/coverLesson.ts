import type { Doubted } from '../doubt/spare.ts';
import { uncertainty } from '../doubt/spare.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import type { Job } from '../job/jobSchema.ts';
import { grainStretch } from '../report/checks/leatherChecks.ts';
import type { CoverEvidence, CoverLesson } from '../stock/coverLessonSchema.ts';
import { HAND_DOUBTS } from '../stock/hand.ts';
import { bendWay, UNKNOWNS, type Unknown } from '../stock/leatherUnknowns.ts';
import { type OutcomeReading, outcomeReadings } from './outcomeReadings.ts';

/**
 * What a finished cover tells of the leather of its outside and of the maker's hand, as it is kept with the leather. The cover is taken as
 * made to the job: one that was cut otherwise has its sizes typed there.
 *
 * Each dimension that was read is a reading of its spare room: expected at the figures of the job, straight in K, bend ratio, change of
 * size and hand with the slopes of `coverDoubt`, and off by all the other doubts of the cover, by chance of this cut and by the
 * reading.
 * @param from the job's id and name
 * @returns null where nothing was read
 */
export function coverLesson(design: CoverDesign, from: Pick<CoverLesson, 'job' | 'name'>): CoverLesson | null {
  const { outcome, making } = design.job;
  const readings = outcomeReadings(design);
  const { cracked, weekLater_deg, day } = outcome;
  if (readings.length === 0 && cracked === null && weekLater_deg === null) return null;
  return {
    ...from,
    day,
    worked: making.state,
    backbone: making.backbone,
    counts: true,
    evidence: readings.map((reading) => evidenceOf(design, reading)),
    strain: cracked === null ? null : grainStretch(design),
    cracked,
    weekLater_deg,
  };
}

/** What is taught of an input of the cover; undefined of what only this cover has. */
function taughtBy(job: Job, of: OutcomeReading['of'], path: string): Unknown | undefined {
  const { pocket, outside } = job.leather;
  const way = bendWay(of, job.making.backbone);
  const isOneLeather = outside.taken !== null && pocket.taken?.id === outside.taken.id;
  switch (path) {
    case 'leather.outside.neutral':
      return `neutral.${way}`;
    case 'leather.outside.bendRatio':
      return `bendRatio.${way}`;
    case 'leather.pocket.bendRatio':
      return isOneLeather ? `bendRatio.${way}` : undefined;
    case 'making.changeAlong':
      return `change.${job.making.state}.along`;
    case 'making.changeAcross':
      return `change.${job.making.state}.across`;
    default:
      return undefined;
  }
}

/** What chance and the maker's way put on the two edges and the cut of a dimension; they are counted apart, by `HAND_DOUBTS`. */
const OF_THE_HAND = /^(seam\.edgeMargin_mm|pattern\.outside(Width|Height)_mm)$/;

function evidenceOf({ job, doubt, fitDoubt }: CoverDesign, reading: OutcomeReading): CoverEvidence {
  const { of, value: read, u: error } = reading;
  const spare: Doubted = of === 'wrap' ? fitDoubt.spare.closed : fitDoubt.spare.height;
  const slopes: Partial<Record<Unknown, number>> = {};
  const at: Partial<Record<Unknown, number>> = {};
  const rest = spare.slopes.map((slope, i) => {
    const { path, value } = doubt.inputs[i]!;
    const unknown = taughtBy(job, of, path);
    if (unknown === undefined) return OF_THE_HAND.test(path) ? 0 : slope;
    if (slope !== 0) {
      slopes[unknown] = (slopes[unknown] ?? 0) + slope;
      at[unknown] ??= value;
    }
    return 0;
  });
  // A turned end has no margin.
  const margins = of === 'wrap' && job.pockets.construction === 'turned' ? 0 : 2;
  const { margin_mm: margin, cutting_mm: cutting } = job.making.hand;
  const chance = Math.hypot(Math.sqrt(margins) * HAND_DOUBTS.margin.chance, HAND_DOUBTS.cutting.chance);
  return {
    of,
    read_mm: read,
    expected_mm: spare.mean,
    u_mm: Math.hypot(uncertainty(rest, doubt.covariance), chance, error),
    foretold_mm: Math.hypot(spare.u, error),
    slopes: inOrder({ ...slopes, 'hand.cutting': 1, ...(margins > 0 && { 'hand.margin': -margins }) }),
    at: inOrder({ ...at, 'hand.cutting': cutting, ...(margins > 0 && { 'hand.margin': margin }) }),
  };
}

/** As a document has them once it was read, so that equal lessons are equal texts. */
const inOrder = (values: Partial<Record<Unknown, number>>): Partial<Record<Unknown, number>> =>
  Object.fromEntries(
    UNKNOWNS.flatMap((unknown) => (values[unknown] === undefined ? [] : [[unknown, values[unknown]]])),
  );
