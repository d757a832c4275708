import { findLevel } from '../math/findLevel.ts';
import type { TestFigure } from './testFigure.ts';
import type { TestResult } from './testResult.ts';

/** A reading further from the others than this, in standard uncertainties, contradicts them. */
const MOST_DEVIATION = 3;

/** A reading's figure and its place in the list of its test. */
export interface PlacedFigure extends TestFigure {
  readonly place: number;
}

/**
 * Readings of one figure on several strips of one hide, pooled.
 *
 * Each is the hide's mean plus what its strip differs by (variance s^2) plus its error (u_i^2). The weights are 1 / (u_i^2 + s^2), the
 * variance of the mean one over their sum, and s^2 is the least from 0 up for which the weighted squares of the differences are at
 * most n - 1 (R. C. Paule and J. Mandel 1982, J. Res. NBS 87, 377): readings that scatter no more than their errors explain have s = 0.
 * The part of the variance that s adds is known from n strips only and widened by Student's t, so that 1.96 u holds 95 in 100.
 *
 * A reading contradicts the rest if it lies more than three standard uncertainties, its own and the rest's with their scatter,
 * from where the rest has it. It stays in, for a hide that differs all over looks the same; it widens u until it is read again.
 * @returns null without readings
 */
export function pooled(readings: readonly PlacedFigure[]): TestResult | null {
  if (readings.length === 0) return null;
  const { value, variance, ofErrors, scatter } = meanOf(readings);
  const widened = ofErrors + studentFactor(readings.length - 1) ** 2 * (variance - ofErrors);
  const again = readings.filter((reading) => contradicts(reading, readings)).map(({ place }) => place);
  return { value, u: Math.sqrt(widened), scatter, count: readings.length, again };
}

/**
 * Readings of a figure over 0 whose errors are shares of it, pooled by their logarithms; else the lower of two readings with equal
 * relative errors would count for more.
 */
export function pooledRelative(readings: readonly PlacedFigure[]): TestResult | null {
  const result = pooled(readings.map(({ value, u, place }) => ({ value: Math.log(value), u: u / value, place })));
  if (result === null) return null;
  const value = Math.exp(result.value);
  return { ...result, value, u: value * result.u, scatter: value * result.scatter };
}

function contradicts(reading: PlacedFigure, all: readonly PlacedFigure[]): boolean {
  const others = all.filter((other) => other !== reading);
  if (others.length === 0) return false;
  const rest = meanOf(others);
  const deviation =
    Math.abs(reading.value - rest.value) / Math.hypot(reading.u, Math.sqrt(rest.variance), rest.scatter);
  return deviation > MOST_DEVIATION;
}

/** Quantiles of Student's t for 95 in 100 on both sides, from 2 degrees of freedom up (any table, as Abramowitz and Stegun 26.10). */
const STUDENT = [4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228];

/**
 * By how much less than infinitely many readings widen: t / 1.96 of the degrees of freedom. One degree counts as two: else two readings
 * that differ by little more than their errors would tell less than either.
 */
function studentFactor(degrees: number): number {
  // Beyond the table the first terms of t in 1 / degrees.
  return (STUDENT[Math.max(0, degrees - 2)] ?? 1.96 + 2.37 / degrees + 2.8 / degrees ** 2) / 1.96;
}

interface Mean {
  readonly value: number;
  /** Of the mean. */
  readonly variance: number;
  /** The same if strips did not differ. */
  readonly ofErrors: number;
  /** s */
  readonly scatter: number;
}

/** Mean of one or more readings, weighted with their scatter. */
function meanOf(readings: readonly TestFigure[]): Mean {
  const weighted = (s2: number) => {
    const weights = readings.map(({ u }) => 1 / (u * u + s2));
    const sum = weights.reduce((all, weight) => all + weight, 0);
    const value = readings.reduce((all, reading, i) => all + reading.value * weights[i]!, 0) / sum;
    const squares = readings.reduce((all, reading, i) => all + weights[i]! * (reading.value - value) ** 2, 0);
    return { value, variance: 1 / sum, squares };
  };
  const values = readings.map(({ value }) => value);
  // Here every square is below one over the number of readings.
  const ample = readings.length * (Math.max(...values) - Math.min(...values)) ** 2;
  const s2 = findLevel((at) => -weighted(at).squares, 1 - readings.length, 0, ample);
  const { value, variance } = weighted(s2);
  return { value, variance, ofErrors: weighted(0).variance, scatter: Math.sqrt(s2) };
}
