import { condition, type Gaussian } from '../doubt/condition.ts';

/** A reading, its error, and its prediction from the unknowns. */
export interface Observation {
  readonly value: number;
  /** s: standard deviation of the reading, over 0. */
  readonly error: number;
  predict(unknowns: readonly number[]): number;
}

/** Prior of the unknowns: independent, each with its mean and standard deviation. */
export interface Prior {
  readonly mean: readonly number[];
  readonly error: readonly number[];
}

export interface Estimate {
  readonly status: 'converged' | 'notConverged';
  readonly iterations: number;
  /** Largest change of an unknown in the last step. */
  readonly residual: number;
  readonly mean: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  /** For each reading, its difference from what the prior and all others predict, over its standard deviation. */
  readonly deviations: readonly number[];
  /**
   * Logarithm of the evidence: the density of all readings under this prior, with the predictions linear about the mean.
   * Each reading in turn adds -(r^2/v + ln(2 pi v))/2, its surprise r and the variance v of that.
   */
  readonly logEvidence: number;
}

/** Step of the slopes as a share of the unknown's standard deviation, and the least step in the unknown's unit. */
const SLOPE_STEP = 1e-2;
const LEAST_STEP = 1e-4;
const MOST_ITERATIONS = 30;
/** Least and largest share of a step that is taken. */
const LEAST_SHARE = 1 / 64;
const LARGEST_SHARE = 2;
/** Fall of the minimised sum that is told from rounding, as a share of it. */
const ROUNDING = 1e-13;
/** Converged once no unknown changes by more than this in a step, in its unit. */
const STILL = 1e-6;

/**
 * Estimates unknowns x from readings y = h(x) + noise and a prior x ~ (m, P), as the most probable ones: minimise
 *
 *   (x - m)' P^-1 (x - m) + sum ((y - h(x)) / s)^2.
 *
 * Gauss-Newton: with A the slopes of h at the last x, solve the linear problem (A' S^-1 A + P^-1)(x - m) =
 * A' S^-1 (y - h + A (x_last - m)) and repeat; of each step that share is taken where the sum, as a parabola along it, is least. It is solved one reading at a time (recursive least squares; Kalman 1960,
 * J. Basic Eng. 82, 35), which needs no inverse: for a reading r with slopes a,
 *
 *   g = P a / (a' P a + s^2),  x += g (r - a' (x - m)),  P -= g a' P.
 *
 * An unknown without prior error keeps its mean. Linear readings converge in two steps.
 */
export function estimate(prior: Prior, observations: readonly Observation[]): Estimate {
  let mean = [...prior.mean];
  let linear = linearise(prior, observations, mean);
  let cost = costOf(prior, observations, mean);
  let iterations = 0;
  let residual = 0;
  let share = 1;
  for (;;) {
    const { shift } = solve(prior, linear);
    const whole = prior.mean.map((m, i) => m + shift[i]!);
    residual = Math.max(0, ...whole.map((value, i) => Math.abs(value - mean[i]!)));
    iterations++;
    if (residual <= STILL || iterations === MOST_ITERATIONS) break;
    const from = mean;
    const fall = 2 * (cost - costOfRows(prior, linear, whole));
    // What is below this is rounding: the share of the last step is as good.
    if (fall > ROUNDING * (1 + cost)) share = bestShare(fall, costOf(prior, observations, whole) - cost);
    mean = from.map((value, i) => value + share * (whole[i]! - value));
    cost = costOf(prior, observations, mean);
    linear = linearise(prior, observations, mean);
  }
  const { covariance, logEvidence } = solve(prior, linear);
  return {
    status: residual <= STILL ? 'converged' : 'notConverged',
    iterations,
    residual,
    mean,
    covariance,
    logEvidence,
    deviations: linear.map((row, i) => {
      const others = linear.filter((_, k) => k !== i);
      const { shift, covariance } = solve(prior, others);
      return (row.value - dot(row.slopes, shift)) / Math.sqrt(spread(row, covariance));
    }),
  };
}

/** What `estimate` minimises; an unknown without prior error adds nothing. */
const costOf = (prior: Prior, observations: readonly Observation[], at: readonly number[]): number =>
  observations.reduce(
    (sum, { value, error, predict }) => sum + ((value - predict(at)) / error) ** 2,
    fromPrior(prior, at),
  );

/** The same with the readings as linear equations. */
function costOfRows(prior: Prior, rows: readonly Row[], at: readonly number[]): number {
  const shift = at.map((x, i) => x - prior.mean[i]!);
  return rows.reduce(
    (sum, { value, error, slopes }) => sum + ((value - dot(slopes, shift)) / error) ** 2,
    fromPrior(prior, at),
  );
}

const fromPrior = ({ mean, error }: Prior, at: readonly number[]): number =>
  at.reduce((sum, x, i) => sum + (error[i] === 0 ? 0 : ((x - mean[i]!) / error[i]!) ** 2), 0);

/**
 * Where the parabola is least that starts with the slope -fall and has changed by `change` at the whole step: fall / (2 (change +
 * fall)), which is 1 for linear readings.
 */
function bestShare(fall: number, change: number): number {
  const bend = change + fall;
  return bend <= 0 ? LARGEST_SHARE : Math.max(LEAST_SHARE, Math.min(LARGEST_SHARE, fall / (2 * bend)));
}

/** One reading as a linear equation in the shift from the prior mean: value = slopes . shift. */
interface Row {
  readonly slopes: readonly number[];
  readonly value: number;
  readonly error: number;
}

function linearise(prior: Prior, observations: readonly Observation[], at: readonly number[]): Row[] {
  const slopesOf = slopesAt(prior, at);
  const shift = at.map((x, i) => x - prior.mean[i]!);
  return observations.map(({ value, error, predict }) => {
    const slopes = slopesOf(predict);
    return { slopes, value: value - predict(at) + dot(slopes, shift), error };
  });
}

/**
 * Slopes of predictions along the unknowns, by central differences; 0 along one without error. All predictions are asked
 * for at the same points, so that they can share work.
 */
export function slopesAt(
  { error: errors }: Prior,
  at: readonly number[],
): (predict: Observation['predict']) => number[] {
  const moves = at.map((_, i) => {
    const step = errors[i] === 0 ? 0 : Math.max(LEAST_STEP, SLOPE_STEP * errors[i]!);
    const moved = (by: number): number[] => at.map((x, k) => (k === i ? x + by : x));
    return { step, up: moved(step), down: moved(-step) };
  });
  return (predict) => moves.map(({ step, up, down }) => (step === 0 ? 0 : (predict(up) - predict(down)) / (2 * step)));
}

type Matrix = readonly (readonly number[])[];

/** a' P b: covariance of two lengths with these slopes along the unknowns. */
export const covarianceOf = (a: readonly number[], covariance: Matrix, b: readonly number[]): number =>
  dot(a, times(covariance, b));

/** The covariance once a length with these slopes is known exactly. */
export const onceKnown = (covariance: Matrix, slopes: readonly number[]): Matrix =>
  condition({ mean: slopes.map(() => 0), covariance }, { slopes, value: 0, u: 0 }).covariance;

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, x, i) => sum + x * b[i]!, 0);

const times = (matrix: Matrix, vector: readonly number[]): number[] => matrix.map((row) => dot(row, vector));

/** a' P a + s^2: variance of the difference between a reading and what is expected of it. */
const spread = ({ slopes, error }: Row, covariance: Matrix): number =>
  covarianceOf(slopes, covariance, slopes) + error * error;

function solve(
  prior: Prior,
  rows: readonly Row[],
): { shift: readonly number[]; covariance: Matrix; logEvidence: number } {
  let known: Gaussian = {
    mean: prior.mean.map(() => 0),
    covariance: prior.error.map((error, i) => prior.error.map((_, k) => (i === k ? error * error : 0))),
  };
  let logEvidence = 0;
  for (const row of rows) {
    const variance = spread(row, known.covariance);
    const surprise = row.value - dot(row.slopes, known.mean);
    logEvidence -= (surprise ** 2 / variance + Math.log(2 * Math.PI * variance)) / 2;
    known = condition(known, { ...row, u: row.error });
  }
  return { shift: known.mean, covariance: known.covariance, logEvidence };
}
