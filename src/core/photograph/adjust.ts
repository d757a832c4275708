import { inverse } from '../math/inverse.ts';

/** What is known of an unknown before anything is seen: a value and its standard uncertainty. */
export interface Prior {
  readonly value: number;
  readonly u: number;
}

/** Observations that stand or fall together, such as the four corners of a mark. */
export interface Observation {
  /** Places of the unknowns on which it depends. */
  readonly of: readonly number[];
  /** Observed minus computed, each in its own standard uncertainties. */
  readonly residuals: (unknowns: Float64Array) => readonly number[];
}

export interface Adjusted {
  readonly values: Float64Array;
  /** Covariance of the unknowns. */
  readonly covariance: readonly (readonly number[])[];
  /** Root mean square of the residuals that count; 1 where the observations are as good as they claim. */
  readonly misfit: number;
  /** Weight of each observation, 1 for one that fits and less for one that does not. */
  readonly weights: readonly number[];
  readonly steps: number;
}

/** Residuals beyond so many of their uncertainties count less and less (Huber 1964, Robust estimation of a location parameter). */
const HUBER = 2.5;
const MOST_STEPS = 40;
const CONVERGED = 1e-4;

/** A list of unknowns that an adjustment finds, in the order in which they are added. */
export class Unknowns {
  readonly starts: number[] = [];
  readonly scales: number[] = [];
  readonly priors: (Prior | null)[] = [];

  /**
   * @param scale how far it has to move to matter; derivatives are differences over a small part of it
   * @returns its place
   */
  add(start: number, scale: number, prior: Prior | null = null): number {
    this.priors.push(prior);
    this.scales.push(scale);
    return this.starts.push(start) - 1;
  }
}

/**
 * Least squares of observations and priors by the damped Gauss-Newton method (Levenberg 1944, Marquardt 1963) with
 * Huber's weights (Triggs et al. 2000, Bundle adjustment - a modern synthesis, 4.3). Where the observations fit worse than they claim, the
 * covariance grows by their misfit (Birge 1932).
 *
 * @throws RangeError where some unknown is told by no observation and no prior
 */
export function adjust(unknowns: Unknowns, observations: readonly Observation[]): Adjusted {
  let values = Float64Array.from(unknowns.starts);
  let here = linearised(unknowns, observations, values);
  let damping = 1e-3;
  let steps = 0;
  while (steps < MOST_STEPS) {
    steps++;
    const step = solved(here.normal, here.pull, damping);
    const next = values.map((value, i) => value + (step?.[i] ?? 0));
    const cost = step === null ? Number.POSITIVE_INFINITY : costOf(unknowns, observations, next);
    if (!(cost <= here.cost * (1 + 1e-12))) {
      damping *= 10;
      if (damping > 1e9) break;
      continue;
    }
    const isDone = step!.every((each, i) => Math.abs(each) < CONVERGED * unknowns.scales[i]!);
    const gain = here.cost - cost;
    values = next;
    here = linearised(unknowns, observations, values);
    damping = Math.max(damping / 10, 1e-12);
    if (isDone || gain < 1e-10 * (1 + cost)) break;
  }
  const misfit = Math.sqrt(here.squares / Math.max(1, here.count - here.free));
  const factor = Math.max(1, misfit) ** 2;
  const scaled = here.normal.map((row, i) =>
    Array.from(row, (each, k) => each * unknowns.scales[i]! * unknowns.scales[k]!),
  );
  const covariance = inverse(scaled).map((row, i) =>
    row.map((each, k) => each * factor * unknowns.scales[i]! * unknowns.scales[k]!),
  );
  return { values, covariance, misfit, weights: here.weights, steps };
}

/** Part of its scale over which a derivative is taken. */
const PART = 1e-4;

function linearised({ scales, priors }: Unknowns, observations: readonly Observation[], values: Float64Array) {
  const n = values.length;
  const normal = Array.from({ length: n }, () => new Float64Array(n));
  const pull = new Float64Array(n);
  const weights: number[] = [];
  const moved = Float64Array.from(values);
  let cost = 0;
  let squares = 0;
  let count = 0;
  for (const { of, residuals } of observations) {
    const own = residuals(values);
    const { weight, loss } = weightOf(own);
    weights.push(weight);
    cost += loss;
    for (const each of own) squares += weight * each * each;
    count += own.length * Math.min(1, weight);
    const slopes = of.map((i) => {
      const by = PART * scales[i]!;
      moved[i] = values[i]! + by;
      const up = residuals(moved);
      moved[i] = values[i]! - by;
      const down = residuals(moved);
      moved[i] = values[i]!;
      return up.map((each, k) => (each - down[k]!) / (2 * by));
    });
    for (let a = 0; a < of.length; a++) {
      const slope = slopes[a]!;
      for (let k = 0; k < own.length; k++) pull[of[a]!]! -= weight * slope[k]! * own[k]!;
      for (let b = 0; b <= a; b++) {
        const other = slopes[b]!;
        let sum = 0;
        for (let k = 0; k < own.length; k++) sum += slope[k]! * other[k]!;
        normal[of[a]!]![of[b]!]! += weight * sum;
        if (a !== b) normal[of[b]!]![of[a]!]! += weight * sum;
      }
    }
  }
  let known = 0;
  priors.forEach((prior, i) => {
    if (prior === null) return;
    known++;
    const off = (values[i]! - prior.value) / prior.u;
    cost += off * off;
    squares += off * off;
    pull[i]! -= off / prior.u;
    normal[i]![i]! += 1 / prior.u ** 2;
  });
  return { normal, pull, weights, cost, squares, count: count + known, free: n };
}

function costOf({ priors }: Unknowns, observations: readonly Observation[], values: Float64Array): number {
  let cost = 0;
  for (const { residuals } of observations) cost += weightOf(residuals(values)).loss;
  priors.forEach((prior, i) => {
    if (prior !== null) cost += ((values[i]! - prior.value) / prior.u) ** 2;
  });
  return cost;
}

/** Huber's weight of residuals that stand together, and what they cost. */
function weightOf(residuals: readonly number[]): { weight: number; loss: number } {
  let square = 0;
  for (const each of residuals) square += each * each;
  const size = Math.sqrt(square / residuals.length);
  if (size <= HUBER) return { weight: 1, loss: square };
  if (!Number.isFinite(size)) return { weight: 0, loss: Number.POSITIVE_INFINITY };
  return { weight: HUBER / size, loss: residuals.length * (2 * HUBER * size - HUBER * HUBER) };
}

/** Step of the damped normal equations by Cholesky's method; null where they are not positive definite. */
function solved(normal: readonly Float64Array[], pull: Float64Array, damping: number): Float64Array | null {
  const n = pull.length;
  const factor = Array.from({ length: n }, () => new Float64Array(n));
  const step = Float64Array.from(pull);
  for (let i = 0; i < n; i++) {
    const row = factor[i]!;
    for (let k = 0; k <= i; k++) {
      const other = factor[k]!;
      let sum = normal[i]![k]! * (i === k ? 1 + damping : 1);
      for (let j = 0; j < k; j++) sum -= row[j]! * other[j]!;
      if (k < i) row[k] = sum / other[k]!;
      else if (sum > 0) row[i] = Math.sqrt(sum);
      else return null;
    }
    for (let j = 0; j < i; j++) step[i]! -= row[j]! * step[j]!;
    step[i]! /= row[i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let j = i + 1; j < n; j++) step[i]! -= factor[j]![i]! * step[j]!;
    step[i]! /= factor[i]![i]!;
  }
  return step;
}
