import { inner } from '../math/linear.ts';

/** A normal distribution of several variables. */
export interface Gaussian {
  readonly mean: readonly number[];
  readonly covariance: readonly (readonly number[])[];
}

/** A reading of a sum of the variables: value = slopes . x + noise of standard uncertainty u, 0 or more. */
export interface LinearReading {
  readonly slopes: readonly number[];
  readonly value: number;
  readonly u: number;
}

/**
 * The variables as they are known after a reading, by one step of recursive least squares (Kalman 1960, J. Basic Eng. 82, 35):
 *
 *   g = P a / (a' P a + u^2),  x += g (value - a' x),  P becomes B P B' + g u^2 g' with B = I - g a'.
 *
 * P - g a' P is the same, but rounding can leave it no covariance; the longer form (Joseph; Bucy and Joseph 1968, Filtering for
 * stochastic processes) stays one. A reading without noise of a sum that is known exactly teaches nothing and changes nothing.
 */
export function condition({ mean, covariance }: Gaussian, { slopes, value, u }: LinearReading): Gaussian {
  const pa = covariance.map((row) => inner(row, slopes));
  const variance = inner(slopes, pa) + u * u;
  if (!(variance > 0)) return { mean, covariance };
  const gain = pa.map((one) => one / variance);
  const surprise = value - inner(slopes, mean);
  const kept = gain.map((g, i) => slopes.map((slope, k) => (i === k ? 1 : 0) - g * slope));
  const between = kept.map((row) => covariance.map((line) => inner(row, line)));
  return {
    mean: mean.map((x, i) => x + gain[i]! * surprise),
    covariance: between.map((row, i) => kept.map((other, k) => inner(row, other) + gain[i]! * gain[k]! * u * u)),
  };
}
