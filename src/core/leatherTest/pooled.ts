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
 * pooled variance one over their sum, and s^2 is the least from 0 up for which the weighted squares of the differences reach n - 1
 * (R. C. Paule and J. Mandel 1982, J. Res. NBS 87, 377): readings that scatter no more than their errors explain have s = 0.
 *
 * A reading contradicts the rest if it lies more than three standard uncertainties, its own and the rest's with their scatter,
 * from where the rest has it. The worst is left out first, and the others are looked at again.
 * @returns null without readings
 */
export function pooled(readings: readonly PlacedFigure[]): TestResult | null {
  if (readings.length === 0) return null;
  let kept = readings;
  const again: number[] = [];
  for (;;) {
    const worst = mostDeviating(kept);
    if (worst === null) break;
    if (kept.length === 2) {
      again.push(...kept.map(({ place }) => place));
      break;
    }
    again.push(worst.place);
    kept = kept.filter((reading) => reading !== worst);
  }
  return { ...meanOf(kept), count: kept.length, again: again.toSorted((a, b) => a - b) };
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

/** The reading that contradicts the others most; null where none does. */
function mostDeviating(readings: readonly PlacedFigure[]): PlacedFigure | null {
  let worst: PlacedFigure | null = null;
  let most = MOST_DEVIATION;
  if (readings.length < 2) return null;
  for (const reading of readings) {
    const rest = meanOf(readings.filter((other) => other !== reading));
    const deviation = Math.abs(reading.value - rest.value) / Math.hypot(reading.u, rest.u, rest.scatter);
    if (deviation > most) [worst, most] = [reading, deviation];
  }
  return worst;
}

/** Mean of one or more readings weighted with their scatter, its standard uncertainty, and the scatter s. */
function meanOf(readings: readonly TestFigure[]): TestFigure & { readonly scatter: number } {
  const values = readings.map(({ value }) => value);
  const range = Math.max(...values) - Math.min(...values);
  const weighted = (variance: number) => {
    const weights = readings.map(({ u }) => 1 / (u * u + variance));
    const sum = weights.reduce((all, weight) => all + weight, 0);
    const value = readings.reduce((all, { value }, i) => all + value * weights[i]!, 0) / sum;
    const squares = readings.reduce((all, reading, i) => all + weights[i]! * (reading.value - value) ** 2, 0);
    return { value, u: Math.sqrt(1 / sum), squares };
  };
  // At this variance every square is below one over the number of readings.
  const ample = readings.length * range ** 2;
  const variance = findLevel((s2) => -weighted(s2).squares, -(readings.length - 1), 0, ample);
  const { value, u } = weighted(variance);
  return { value, u, scatter: Math.sqrt(variance) };
}
