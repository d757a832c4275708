import { cholesky } from '../math/cholesky.ts';
import { normalDistribution, normalQuantile } from '../math/normal.ts';
import { type Draws, randomDraws } from '../math/randomDraws.ts';
import type { Model } from './propagate.ts';
import { type Correlation, correlationMatrix, type Uncertain } from './uncertain.ts';

/**
 * Draws inputs for Monte Carlo trials (JCGM 101:2008 6.4 and 7.2), the same ones for the same arguments.
 *
 * Latin hypercube (McKay, Beckman and Conover 1979, Technometrics 21, 239): each normal score has one draw in each of n parts of
 * equal chance, in random order. The mean of any result over the trials keeps its expectation, and its variance is at most n / (n - 1)
 * of that of independent draws, and much smaller for results that are nearly sums of the inputs (Owen 1997, Ann. Stat.
 * 25, 1541), as the gaps of a cover are. So the bounds for independent draws stay true.
 *
 * Correlation is a Gaussian copula: independent scores z become L z with L L' = the correlations, and an `even` input takes
 * the quantile of its score. So r is the correlation of the normal scores; two even inputs have (6 / pi) asin(r / 2).
 * @param draws number of trials, 1 or more
 * @param seed a whole number
 * @returns one row after the other: input i of trial k is at k * inputs.length + i
 * @throws RangeError if the correlations are no correlation matrix
 */
export function drawTrials(
  inputs: readonly Uncertain[],
  correlations: readonly Correlation[],
  draws: number,
  seed: number,
): Float64Array {
  const factor = cholesky(correlationMatrix(inputs.length, correlations));
  if (factor === null)
    throw new RangeError('The correlations contradict each other: they are no positive semidefinite matrix.');
  const random = randomDraws(seed);
  const width = inputs.length;
  const rows = new Float64Array(draws * width);
  for (let i = 0; i < width; i++) fillScores(rows, i, width, random);
  for (let at = 0; at < rows.length; at += width) {
    const scores = rows.slice(at, at + width);
    for (const [i, input] of inputs.entries()) {
      let score = 0;
      for (let k = 0; k < width; k++) score += factor[i]![k]! * scores[k]!;
      rows[at + i] = valueAt(input, score);
    }
  }
  return rows;
}

/** Fills one column with normal scores, one in each part of equal chance, and shuffles them (Fisher and Yates). */
function fillScores(rows: Float64Array, column: number, width: number, random: Draws): void {
  const draws = rows.length / width;
  for (let k = 0; k < draws; k++) {
    const score = normalQuantile((k + middle(random())) / draws);
    const other = Math.floor(random() * (k + 1));
    rows[k * width + column] = rows[other * width + column]!;
    rows[other * width + column] = score;
  }
}

/** Moves a draw of [0, 1) off its end, where the score would be infinite, by half the spacing of the draws. */
const middle = (draw: number): number => draw + 2 ** -33;

const valueAt = ({ value, u, distribution }: Uncertain, score: number): number =>
  value + u * (distribution === 'normal' ? score : Math.sqrt(3) * (2 * normalDistribution(score) - 1));

/** Runs a model over trials. @returns for each output its value in every trial, in the order of `drawTrials` */
export function runTrials(
  model: Model,
  inputs: readonly Uncertain[],
  correlations: readonly Correlation[],
  draws: number,
  seed: number,
): Float64Array[] {
  const rows = drawTrials(inputs, correlations, draws, seed);
  const outputs: Float64Array[] = [];
  for (let k = 0; k < draws; k++) {
    const values = model(Array.from(rows.subarray(k * inputs.length, (k + 1) * inputs.length)));
    for (const [i, value] of values.entries()) {
      outputs[i] ??= new Float64Array(draws);
      outputs[i][k] = value;
    }
  }
  return outputs;
}

type Interval = readonly [low: number, high: number];

/** What trials say of one output. */
export interface TrialSummary {
  readonly mean: number;
  /** Standard deviation. */
  readonly u: number;
  /** Quantiles of the shares asked for, in their order. */
  readonly quantiles: readonly number[];
  /** Coverage interval with the same chance on both sides of it. */
  readonly symmetric: Interval;
  /** Shortest coverage interval. */
  readonly shortest: Interval;
}

export interface SummaryOptions {
  /** Share of the trials in the intervals, between 0 and 1. */
  readonly coverage?: number;
  /** Shares whose quantiles are wanted, 0 to 1. */
  readonly shares?: readonly number[];
}

/**
 * Summary of the values of one output: mean and standard deviation (JCGM 101:2008 7.6), coverage intervals (7.7) between the
 * sorted values y_r and y_(r + q), q = coverage n: with r = (n - q) / 2, or so that it is shortest (5.3.4). Quantiles are
 * read between the sorted values, y_r standing at (r - 1/2) / n.
 * @param values two or more
 */
export function summary(
  values: ArrayLike<number>,
  { coverage = 0.95, shares = [] }: SummaryOptions = {},
): TrialSummary {
  const sorted = Float64Array.from(values).sort();
  const count = sorted.length;
  const mean = sorted.reduce((sum, value) => sum + value, 0) / count;
  const squares = sorted.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const span = Math.min(count - 1, Math.floor(coverage * count + 0.5));
  const interval = (from: number): Interval => [sorted[from]!, sorted[from + span]!];
  let shortest = interval(0);
  for (let from = 1; from + span < count; from++) {
    const next = interval(from);
    if (next[1] - next[0] < shortest[1] - shortest[0]) shortest = next;
  }
  return {
    mean,
    u: Math.sqrt(squares / (count - 1)),
    quantiles: shares.map((share) => quantile(sorted, share)),
    symmetric: interval(Math.max(0, Math.floor((count - span + 1) / 2) - 1)),
    shortest,
  };
}

function quantile(sorted: Float64Array, share: number): number {
  const place = Math.max(0, share * sorted.length - 0.5);
  const below = Math.floor(place);
  const low = sorted[below]!;
  return low + (place - below) * (sorted[Math.min(below + 1, sorted.length - 1)]! - low);
}
