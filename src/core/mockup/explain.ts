import { riseOf } from '../book/rise.ts';
import { coverDesign } from '../fold/coverDesign.ts';
import type { JobPath } from '../job/jobPath.ts';
import type { Job } from '../job/jobSchema.ts';
import { type Explained, type Learned, MEASURES, type MeasureName } from './cardLesson.ts';
import type { CardTrial } from './cardTrial.ts';
import { covarianceOf, type Observation, type Prior, slopesAt } from './estimate.ts';
import type { Taken } from './readings.ts';
import { UNKNOWNS, type Values, valueIn } from './unknowns.ts';
import type { Weighed } from './weigh.ts';

/** Correlation above which the readings cannot tell two measures apart. */
const INSEPARABLE = 0.3;

/** Measures of the book by the unknowns. */
const MEASURE_OF: Readonly<Record<MeasureName, Observation['predict']>> = {
  width: (values) => valueIn(values, 'width'),
  thickness: (values) => valueIn(values, 'thickness') + valueIn(values, 'swell'),
  rise: (values) => Math.abs(valueIn(values, 'rise')),
  height: (values) => valueIn(values, 'height'),
};

/**
 * What the measures are if one explanation is true.
 * @param typed the measures as typed, with their errors
 */
export function explain(
  trial: CardTrial,
  typed: Prior,
  readings: readonly Taken[],
  { explanation: { id, words }, prior, result, chance }: Weighed,
  job: Job,
): Explained {
  const slopesBefore = slopesAt(typed, typed.mean);
  const slopesAfter = slopesAt(prior, result.mean);
  const slopes = Object.fromEntries(MEASURES.map((name) => [name, slopesAfter(MEASURE_OF[name])]));
  const learned = (length: Observation['predict']): Learned => {
    const after = slopesAfter(length);
    return {
      before: length(typed.mean),
      after: length(result.mean),
      errorBefore: Math.hypot(...slopesBefore(length).map((slope, i) => slope * typed.error[i]!)),
      errorAfter: Math.sqrt(Math.max(0, covarianceOf(after, result.covariance, after))),
    };
  };
  const all = MEASURES.map((name) => [name, learned(MEASURE_OF[name])] as const);
  const doubted = all.filter(([, { before, after, errorAfter }]) => errorAfter > 0 || before !== after);
  const correlation = (a: MeasureName, b: MeasureName): number => {
    const between = (one: MeasureName, other: MeasureName): number =>
      covarianceOf(slopes[one]!, result.covariance, slopes[other]!);
    return between(a, b) / Math.sqrt(between(a, a) * between(b, b));
  };
  const names = doubted.map(([name]) => name);
  const corrected = correctedJob(trial, typed, result.mean);
  const { width, height } = coverDesign(corrected).pieces.outside;
  return {
    id,
    words,
    chance,
    measures: Object.fromEntries(doubted),
    wrap: learned(trial.bareWrap),
    height: learned(MEASURE_OF.height),
    cardFolds: foldShare(trial, typed, result.mean),
    residuals: readings.map(({ name, of, from, value, predict }, i) => ({
      name,
      of,
      from,
      read: value,
      expected: predict(typed.mean),
      fitted: predict(result.mean),
      deviation: result.deviations[i]!,
    })),
    shared: names.filter((a) => names.some((b) => a !== b && Math.abs(correlation(a, b)) > INSEPARABLE)),
    change: changesBetween(job, corrected),
    job: corrected,
    cut: { width, height },
    iterations: result.iterations,
    residual: result.residual,
  };
}

/** Change of the fore-edge gap due to the card's own folding, with the book as corrected. */
function foldShare({ spare }: CardTrial, typed: Prior, values: Values): number {
  const asAssumed = values.map((value, i) =>
    UNKNOWNS[i] === 'neutral' || UNKNOWNS[i] === 'bendRatio' ? typed.mean[i]! : value,
  );
  return spare(values).wrap - spare(asAssumed).wrap;
}

/** The job with changed measures rounded to 0.01 mm; unchanged ones stay as typed. */
function correctedJob({ bookAs }: CardTrial, typed: Prior, values: Values): Job {
  return bookAs(
    values.map((value, i) => {
      const before = typed.mean[i]!;
      return Math.abs(value - before) < 0.005 ? before : Math.round(value * 100) / 100;
    }),
  );
}

function changesBetween({ book: before }: Job, { book: after }: Job): Explained['change'] {
  const isThicker = after.thickness_mm !== before.thickness_mm;
  const all = [
    { path: 'book.spine.shape', is: after.spine.shape, isOther: after.spine.shape !== before.spine.shape },
    length('book.width_mm', before.width_mm, after.width_mm),
    length('book.thickness_mm', before.thickness_mm, after.thickness_mm),
    // A fore-edge that is not typed would follow the spine.
    length('book.foreEdgeThickness_mm', before.foreEdgeThickness_mm, after.foreEdgeThickness_mm, isThicker),
    length('book.spine.rise_mm', riseOf(before), riseOf(after)),
    length('book.height_mm', before.height_mm, after.height_mm),
  ] as const;
  return all.flatMap(({ path, is, isOther }) => (isOther ? [{ path, value: is }] : []));
}

/** The fore-edge thickness is corrected by a difference: rounding to 1e-6 mm removes the floating-point noise. */
const length = <Path extends JobPath>(path: Path, from: number, to: number, isAlways = false) => ({
  path,
  is: Math.round(to * 1e6) / 1e6,
  isOther: isAlways || from !== to,
});
