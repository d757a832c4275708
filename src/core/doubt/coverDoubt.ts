import { endNeed, type Needs, needsAt, needsIn } from '../allowance/needs.ts';
import { bookModel } from '../book/bookModel.ts';
import { bookOutline, CLOSED } from '../book/bookOutline.ts';
import { tautPath } from '../book/tautPath.ts';
import type { Job } from '../job/jobSchema.ts';
import { coverLeathers } from '../leather/leatherModel.ts';
import { normalDraw, randomDraws } from '../math/randomDraws.ts';
import { condition, type Gaussian } from './condition.ts';
import { asMeant, type CoverInput, coverInputs, type Truth, truthMoved } from './coverInputs.ts';
import { doubtOf } from './doubtOf.ts';
import { sensitivitiesOf } from './propagate.ts';
import { type Correlation, covarianceOf } from './uncertain.ts';

/**
 * What the fit of a cover depends on, at one truth: outside needed from seam to seam with the book closed and flat, both seats
 * in it; height needed from seam to seam; fore-edge seat; width of the board; all mm. Then the change of size of a width and a height, and
 * what cutting and punching add to the room in both, mm; last the wrap of the book's own surface, mm.
 */
const QUANTITIES = [
  'closed',
  'flat',
  'height',
  'seat',
  'board',
  'widthChange',
  'heightChange',
  'widthAdds',
  'heightAdds',
  'wrap',
] as const;

export type Quantity = (typeof QUANTITIES)[number];

/** A cover's quantities at the middle of its leather, with their doubt to first order. */
export interface CoverDoubt {
  readonly inputs: readonly CoverInput[];
  /** Of the inputs; correlations and readings round the book are in it. */
  readonly covariance: readonly (readonly number[])[];
  readonly means: Readonly<Record<Quantity, number>>;
  /** d quantity / d input. */
  readonly slopes: Readonly<Record<Quantity, readonly number[]>>;
}

/** The job of a truth; its middle leather is the true one. */
export const jobOf = (job: Job, { book, leather }: Truth): Job => ({ ...job, book, leather });

function quantitiesOf(job: Job, needs: Needs, truth: Truth): number[] {
  const { book, closed, flat, foreEdge, headTail } = needs;
  // The edge margins are part of the need, so that size less need is what is spare.
  const ends = 2 * endNeed(needs);
  const height = book.height + 2 * (headTail.needed + job.seam.edgeMargin_mm);
  const { widthChange, heightChange, width, height: adds } = truth;
  const sizes = [closed.length + ends, flat.length + ends, height, foreEdge.seat, book.width];
  return [...sizes, widthChange, heightChange, width, adds, closed.path.length];
}

/** Wrap round the bare book, mm: what a strip of paper would show. */
const bareWrap = (book: Job['book']): number => tautPath(bookOutline(bookModel(book), CLOSED)).length;

/**
 * The quantities of a cover with their doubt: law of propagation of uncertainty (JCGM 100:2008, 5.1.2 and 5.2.2) over
 * `coverInputs`, correlated as the job says and by shared tools and leathers.
 *
 * A strip round the closed book, or the rolled half, is a reading of the bare wrap: it shifts the inputs and narrows
 * their covariance (`condition`).
 */
export function coverDoubt(job: Job): CoverDoubt {
  const inputs = coverInputs(job);
  const readings = wrapReadings(job, inputs);
  const nominal = needsAt(job, 'nominal');
  const moved = (i: number, value: number): number[] => {
    const truth = truthMoved(job, inputs[i]!, value);
    const { book, leather } = truth;
    const { pockets, seam } = job;
    if (book === job.book && leather === job.leather) return quantitiesOf(job, nominal, truth);
    const leathers = leather === job.leather ? nominal.leathers : coverLeathers({ leather, pockets }, 'nominal');
    return quantitiesOf(job, needsIn({ book, pockets, seam }, leathers, nominal), truth);
  };
  const prior = covarianceOf(inputs, correlationsIn(job, inputs));
  const values = quantitiesOf(job, nominal, asMeant(job));
  const sensitivities = sensitivitiesOf(QUANTITIES.length, moved, inputs);
  const slopes = byQuantity((k) => sensitivities[k]!);
  let known: Gaussian = { mean: inputs.map(() => 0), covariance: prior };
  for (const reading of readings) known = condition(known, linearReading(reading, slopes.wrap, bareWrap(job.book)));
  const { mean: shift, covariance } = known;
  return {
    inputs: inputs.map((each, i) => ({ ...each, value: each.value + shift[i]! })),
    covariance,
    means: byQuantity((k) => sensitivities[k]!.reduce((sum, slope, i) => sum + slope * shift[i]!, values[k]!)),
    slopes,
  };
}

/**
 * Draws as they are once the readings round the book are known (Matheron's rule): each draw, with a reading that it would have given,
 * is moved by what the true reading differs from that one. Exact for normal inputs and straight needs.
 * @param inputs `coverInputs(job)`
 * @param rows one draw of these inputs after the other
 */
export function readTrials(
  job: Job,
  inputs: readonly CoverInput[],
  doubt: CoverDoubt,
  rows: Float64Array,
  seed: number,
): Float64Array {
  const readings = wrapReadings(job, inputs);
  if (readings.length === 0) return rows;
  const random = randomDraws(seed);
  const wrap = bareWrap(job.book);
  let covariance: readonly (readonly number[])[] = covarianceOf(inputs, correlationsIn(job, inputs));
  const read = Float64Array.from(rows);
  for (const reading of readings) {
    const linear = linearReading(reading, doubt.slopes.wrap, wrap);
    const { slopes, value, u } = linear;
    // What one millimetre of surprise moves each input by.
    const gain = condition({ mean: inputs.map(() => 0), covariance }, { ...linear, value: 1 }).mean;
    for (let at = 0; at < read.length; at += inputs.length) {
      const given = inputs.reduce((sum, each, i) => sum + slopes[i]! * (read[at + i]! - each.value), 0);
      const surprise = value - given - u * normalDraw(random);
      for (let i = 0; i < inputs.length; i++) read[at + i] = read[at + i]! + gain[i]! * surprise;
    }
    covariance = condition({ mean: inputs.map(() => 0), covariance }, linear).covariance;
  }
  return read;
}

/** What the doubt would be with a strip round the closed book besides. */
export function withStripReading(job: Job, doubt: CoverDoubt): CoverDoubt {
  const { inputs, means, slopes, covariance } = doubt;
  const reading = wrapReading(job, inputs, 'closedWrap_mm', means.wrap, 1);
  const known = { mean: inputs.map(() => 0), covariance };
  return { ...doubt, covariance: condition(known, linearReading(reading, slopes.wrap, means.wrap)).covariance };
}

const byQuantity = <T>(at: (index: number) => T) =>
  Object.fromEntries(QUANTITIES.map((name, k) => [name, at(k)])) as Record<Quantity, T>;

/** A reading of the wrap round the closed book. */
interface WrapReading {
  readonly value: number;
  /** How much of the wrap it spans. */
  readonly share: number;
  readonly u: number;
  /** Index of the input that is the scale error of its tool, or -1. */
  readonly scale: number;
}

function wrapReadings(job: Job, inputs: readonly CoverInput[]): WrapReading[] {
  const { closedWrap_mm: strip, rolledHalf_mm: rolled } = job.book.measured;
  return [
    ...(strip === null ? [] : [wrapReading(job, inputs, 'closedWrap_mm', strip, 1)]),
    ...(rolled === null ? [] : [wrapReading(job, inputs, 'rolledHalf_mm', rolled, 1 / 2)]),
  ];
}

function wrapReading(
  job: Job,
  inputs: readonly CoverInput[],
  key: 'closedWrap_mm' | 'rolledHalf_mm',
  value: number,
  share: number,
): WrapReading {
  const { u, with: tool } = doubtOf(job, `book.measured.${key}`);
  return { value, share, u, scale: inputs.findIndex((each) => each.path === `scale of ${tool}`) };
}

/** A reading as a sum of how far the inputs are off: value / (1 + scale error) = share (wrap + slopes . x). */
const linearReading = ({ value, share, u, scale }: WrapReading, slopes: readonly number[], wrap: number) => ({
  slopes: slopes.map((slope, i) => share * slope - (i === scale ? value : 0)),
  value: value - share * wrap,
  u,
});

/** Correlations of the job by the index of the inputs; one of an input that this job has not is left out. */
export function correlationsIn(job: Job, inputs: readonly CoverInput[]): readonly Correlation[] {
  const at = (path: CoverInput['path']): number => inputs.findIndex((each) => each.path === path);
  return job.correlations.map(({ a, b, r }) => ({ a: at(a), b: at(b), r })).filter(({ a, b }) => a >= 0 && b >= 0);
}
