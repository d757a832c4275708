import { describe, expect, test } from 'vitest';
import type { Model } from '../../../src/core/doubt/propagate.ts';
import { drawTrials, runTrials, summary } from '../../../src/core/doubt/trials.ts';
import type { Uncertain } from '../../../src/core/doubt/uncertain.ts';
import { nth } from '../../nth.ts';

const normal = (value: number, u: number): Uncertain => ({ value, u, distribution: 'normal' });
const even = (value: number, u: number): Uncertain => ({ value, u, distribution: 'even' });

const columns = (rows: Float64Array, width: number): number[][] =>
  Array.from({ length: width }, (_, i) =>
    Array.from({ length: rows.length / width }, (_, k) => nth(rows, k * width + i)),
  );

const correlation = (a: readonly number[], b: readonly number[]): number => {
  const [one, other] = [summary(a), summary(b)];
  const sum = a.reduce((total, x, k) => total + (x - one.mean) * (nth(b, k) - other.mean), 0);
  return sum / ((a.length - 1) * one.u * other.u);
};

describe('trials', () => {
  test('are the same for one seed, and others for the next', () => {
    const inputs = [normal(5, 1), even(2, 0.5)];
    expect(drawTrials(inputs, [], 50, 7)).toEqual(drawTrials(inputs, [], 50, 7));
    expect(drawTrials(inputs, [], 50, 7)).not.toEqual(drawTrials(inputs, [], 50, 8));
  });

  test('keep the draws of an input when another is added after it', () => {
    const [one] = columns(drawTrials([normal(5, 1)], [], 50, 7), 1);
    const [same] = columns(drawTrials([normal(5, 1), normal(0, 1)], [], 50, 7), 2);
    expect(same).toEqual(one);
  });

  test('have one draw in each part of equal chance', () => {
    const [normals = [], evens = []] = columns(drawTrials([normal(0, 1), even(10, 2)], [], 400, 3), 2);
    const half = 2 * Math.sqrt(3);
    const parts = evens.map((x) => Math.floor((400 * (x - 10 + half)) / (2 * half))).sort((a, b) => a - b);
    expect(parts).toEqual(Array.from({ length: 400 }, (_, k) => k));
    expect(normals.filter((z) => z < 0)).toHaveLength(200);
    expect(normals.filter((z) => z < -1.6448536269514722)).toHaveLength(20);
  });

  test('have the mean and standard deviation of their inputs', () => {
    for (const input of [normal(5, 2), even(-3, 0.7), normal(4, 0)]) {
      const { mean, u } = summary(drawTrials([input], [], 2000, 1));
      expect(Math.abs(mean - input.value)).toBeLessThanOrEqual(0.002 * input.u);
      expect(Math.abs(u - input.u)).toBeLessThanOrEqual(0.005 * input.u);
    }
  });

  test('put columns in orders that do not depend on each other', () => {
    const all = columns(drawTrials([normal(0, 1), normal(0, 1), normal(0, 1)], [], 10_000, 2), 3);
    for (const [a, b] of [
      [0, 1],
      [0, 2],
      [1, 2],
    ] as const)
      expect(Math.abs(correlation(nth(all, a), nth(all, b)))).toBeLessThan(4 / 100);
  });

  test('have the correlation asked for, of scores and, for even inputs, (6 / pi) asin(r / 2)', () => {
    const r = -0.7;
    const [a = [], b = []] = columns(drawTrials([normal(1, 1), normal(0, 5)], [{ a: 0, b: 1, r }], 20_000, 5), 2);
    // Standard error of a correlation from 20,000 draws: (1 - r^2) / sqrt(20000) = 0.0036.
    expect(Math.abs(correlation(a, b) - r)).toBeLessThan(0.0144);
    const [c = [], d = []] = columns(drawTrials([even(1, 1), even(0, 5)], [{ a: 0, b: 1, r }], 20_000, 5), 2);
    // Source: the grade correlation of a binormal, K. Pearson 1907; from memory.
    expect(Math.abs(correlation(c, d) - (6 / Math.PI) * Math.asin(r / 2))).toBeLessThan(0.0144);
  });

  test('with a correlation of 1 move two inputs as one', () => {
    const rows = drawTrials([normal(1, 2), even(0, 1), normal(5, 2)], [{ a: 0, b: 2, r: 1 }], 100, 1);
    const [a = [], , c = []] = columns(rows, 3);
    for (const [k, x] of a.entries()) expect(nth(c, k)).toBeCloseTo(x + 4, 12);
  });

  test('of an input that follows from two others keep the sum', () => {
    // r = 1 / sqrt 2 with each of two independent ones: the third score is their sum over sqrt 2.
    const r = Math.SQRT1_2;
    const rows = drawTrials(
      [normal(0, 1), normal(0, 1), normal(0, 1)],
      [
        { a: 0, b: 2, r },
        { a: 1, b: 2, r },
      ],
      100,
      1,
    );
    const [a = [], b = [], c = []] = columns(rows, 3);
    for (const [k, x] of a.entries()) expect(nth(c, k)).toBeCloseTo((x + nth(b, k)) * r, 6);
  });

  test('are refused for correlations that contradict each other', () => {
    const inputs = [normal(0, 1), normal(0, 1), normal(0, 1)];
    const correlations = [
      { a: 0, b: 1, r: 0.9 },
      { a: 1, b: 2, r: 0.9 },
      { a: 0, b: 2, r: -0.9 },
    ];
    expect(() => drawTrials(inputs, correlations, 10, 1)).toThrow(RangeError);
  });

  test('run a model give each output in the order of the draws', () => {
    const inputs = [normal(3, 1), even(2, 1)];
    const [a = [], b = []] = columns(drawTrials(inputs, [], 30, 4), 2);
    let calls = 0;
    const model: Model = ([x = 0, y = 0]) => {
      calls++;
      return [x + y, x - y];
    };
    const [sum = [], difference = []] = runTrials(model, inputs, [], 30, 4);
    expect(calls).toBe(30);
    expect([...sum]).toEqual(a.map((x, k) => x + nth(b, k)));
    expect([...difference]).toEqual(a.map((x, k) => x - nth(b, k)));
  });

  test('estimate the chance of a sum at least as well as independent draws would', () => {
    // Sum of 12 normals above -1.5 of its u: 0.9332. Over 200 seeds the spread of the estimates is below the binomial one.
    const inputs = Array.from({ length: 12 }, () => normal(0, 1));
    const chances = Array.from({ length: 200 }, (_, seed) => {
      const [sums = []] = runTrials((x) => [x.reduce((a, b) => a + b, 0)], inputs, [], 200, seed);
      return [...sums].filter((sum) => sum > -1.5 * Math.sqrt(12)).length / 200;
    });
    const { mean, u } = summary(chances);
    const binomial = Math.sqrt((0.9332 * 0.0668) / 200);
    expect(Math.abs(mean - 0.9332)).toBeLessThan((4 * binomial) / Math.sqrt(200));
    expect(u).toBeLessThan(binomial);
  });
});

describe('a summary', () => {
  test('of five values worked by hand', () => {
    const { mean, u, quantiles } = summary([3, 1, 5, 2, 9], { shares: [0, 0.1, 0.3, 0.5, 0.6, 1] });
    expect(mean).toBe(4);
    expect(u).toBeCloseTo(Math.sqrt((9 + 4 + 1 + 1 + 25) / 4), 12);
    // The values stand at 0.1, 0.3, 0.5, 0.7 and 0.9.
    expect(quantiles.map((value) => Math.round(value * 1e9) / 1e9)).toEqual([1, 1, 2, 3, 4, 9]);
  });

  test('has the intervals of JCGM 101, 7.7, between sorted values', () => {
    // n = 20, coverage 0.8: q = 16, r = 2, so y_2 to y_18; the shortest starts at y_1, for the first values lie closest.
    const values = Array.from({ length: 20 }, (_, k) => (k + 1) ** 2);
    const { symmetric, shortest } = summary(values.reverse(), { coverage: 0.8 });
    expect(symmetric).toEqual([4, 324]);
    expect(shortest).toEqual([1, 289]);
  });

  test('rounds an interval that does not come out even as 7.7.2 says', () => {
    // n = 7, coverage 0.5: q = floor(3.5 + 0.5) = 4, r = floor((7 - 4 + 1) / 2) = 2: y_2 to y_6.
    expect(summary([10, 20, 30, 40, 50, 60, 70], { coverage: 0.5 }).symmetric).toEqual([20, 60]);
  });

  test('takes the shortest interval from the end where values are dense', () => {
    expect(summary([1, 20, 21, 22, 23], { coverage: 0.6 }).shortest).toEqual([20, 23]);
  });

  test('compares lengths, not places, and keeps the first of equal ones', () => {
    expect(summary([-50, -5, -4, -3, -1], { coverage: 0.6 }).shortest).toEqual([-5, -1]);
    expect(summary([1, 2, 3, 4, 5], { coverage: 0.6 }).shortest).toEqual([1, 4]);
  });

  test('has no quantiles unless asked', () => {
    expect(summary([1, 2]).quantiles).toEqual([]);
  });

  test('covers no more than all values', () => {
    expect(summary([4, 8], { coverage: 0.99 })).toMatchObject({ symmetric: [4, 8], shortest: [4, 8] });
  });
});
