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
}

/** Step of the slopes as a share of the unknown's standard deviation, and the least step in the unknown's unit. */
const SLOPE_STEP = 1e-2;
const LEAST_STEP = 1e-4;
const MOST_ITERATIONS = 30;
/** Converged once no unknown changes by more than this in a step, in its unit. */
const STILL = 1e-7;

/**
 * Estimates unknowns x from readings y = h(x) + noise and a prior x ~ (m, P), as the most probable ones: minimise
 *
 *   (x - m)' P^-1 (x - m) + sum ((y - h(x)) / s)^2.
 *
 * Gauss-Newton: with A the slopes of h at the last x, solve the linear problem (A' S^-1 A + P^-1)(x - m) =
 * A' S^-1 (y - h + A (x_last - m)) and repeat. It is solved one reading at a time (recursive least squares; Kalman 1960,
 * J. Basic Eng. 82, 35), which needs no inverse: for a reading r with slopes a,
 *
 *   g = P a / (a' P a + s^2),  x += g (r - a' (x - m)),  P -= g a' P.
 *
 * An unknown without prior error keeps its mean. Linear readings converge in two steps.
 */
export function estimate(prior: Prior, observations: readonly Observation[]): Estimate {
  let mean = [...prior.mean];
  let linear = linearise(prior, observations, mean);
  let iterations = 0;
  let residual = 0;
  do {
    const shift = solve(prior, linear).shift;
    const next = prior.mean.map((m, i) => m + shift[i]!);
    residual = Math.max(0, ...next.map((value, i) => Math.abs(value - mean[i]!)));
    mean = next;
    linear = linearise(prior, observations, mean);
    iterations++;
  } while (residual > STILL && iterations < MOST_ITERATIONS);
  return {
    status: residual <= STILL ? 'converged' : 'notConverged',
    iterations,
    residual,
    mean,
    covariance: solve(prior, linear).covariance,
    deviations: linear.map((row, i) => {
      const others = linear.filter((_, k) => k !== i);
      const { shift, covariance } = solve(prior, others);
      return (row.value - dot(row.slopes, shift)) / Math.sqrt(spread(row, covariance));
    }),
  };
}

/** One reading as a linear equation in the shift from the prior mean: value = slopes . shift. */
interface Row {
  readonly slopes: readonly number[];
  readonly value: number;
  readonly error: number;
}

/** Slopes by central differences, all readings at the same points, so that they can share work. */
function linearise({ mean: from, error: errors }: Prior, observations: readonly Observation[], at: number[]): Row[] {
  const moves = at.map((_, i) => {
    const step = errors[i] === 0 ? 0 : Math.max(LEAST_STEP, SLOPE_STEP * errors[i]!);
    const moved = (by: number): number[] => at.map((x, k) => (k === i ? x + by : x));
    return { step, up: moved(step), down: moved(-step) };
  });
  const shift = at.map((x, i) => x - from[i]!);
  return observations.map(({ value, error, predict }) => {
    const slopes = moves.map(({ step, up, down }) => (step === 0 ? 0 : (predict(up) - predict(down)) / (2 * step)));
    return { slopes, value: value - predict(at) + dot(slopes, shift), error };
  });
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, x, i) => sum + x * b[i]!, 0);

const times = (matrix: readonly (readonly number[])[], vector: readonly number[]): number[] =>
  matrix.map((row) => dot(row, vector));

/** a' P a + s^2: variance of the difference between a reading and what is expected of it. */
const spread = ({ slopes, error }: Row, covariance: readonly (readonly number[])[]): number =>
  dot(slopes, times(covariance, slopes)) + error * error;

function solve(prior: Prior, rows: readonly Row[]): { shift: number[]; covariance: number[][] } {
  let shift = prior.mean.map(() => 0);
  let covariance = prior.error.map((error, i) => prior.error.map((_, k) => (i === k ? error * error : 0)));
  for (const row of rows) {
    const pa = times(covariance, row.slopes);
    const variance = spread(row, covariance);
    const surprise = row.value - dot(row.slopes, shift);
    shift = shift.map((x, i) => x + (pa[i]! * surprise) / variance);
    covariance = covariance.map((line, i) => line.map((value, k) => value - (pa[i]! * pa[k]!) / variance));
  }
  return { shift, covariance };
}
