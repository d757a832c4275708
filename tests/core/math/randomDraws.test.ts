import { describe, expect, test } from 'vitest';
import { normalDraw, randomDraws } from '../../../src/core/math/randomDraws.ts';

const many = (draw: () => number, count = 40_000): number[] => Array.from({ length: count }, draw);
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

describe('seeded draws', () => {
  test('repeat for the same seed and differ for the next', () => {
    expect(many(randomDraws(5), 20)).toEqual(many(randomDraws(5), 20));
    expect(many(randomDraws(5), 20)).not.toEqual(many(randomDraws(6), 20));
  });

  test('are those of the algorithm in whole numbers', () => {
    // Source: mulberry32 written a second time, with integers of any size, for seed 1.
    expect(many(randomDraws(1), 4).map((draw) => draw * 2 ** 32)).toEqual([
      2693262067, 11749833, 2265367787, 4213581821,
    ]);
  });

  test('lie in [0, 1) and fill sixteen equal parts alike', () => {
    const values = many(randomDraws(1));
    expect(Math.min(...values)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...values)).toBeLessThan(1);
    const counts = Array.from({ length: 16 }, () => 0);
    for (const value of values) counts[Math.floor(value * 16)]!++;
    const chiSquare = counts.reduce((sum, count) => sum + (count - 2500) ** 2 / 2500, 0);
    // 15 degrees of freedom: exceeded once in 10,000 by a fair source. Source: chi-square table, 0.9999 quantile 44.26.
    expect(chiSquare).toBeLessThan(44.26);
  });

  test('taken two by two are not correlated', () => {
    const draw = randomDraws(9);
    const products = many(() => (draw() - 0.5) * (draw() - 0.5));
    // Standard deviation of one product is 1/12.
    expect(Math.abs(mean(products))).toBeLessThan((4 / 12) * (1 / Math.sqrt(40_000)));
  });

  test('of the normal distribution have mean 0, variance 1 and 4.55 % beyond two', () => {
    const draw = randomDraws(3);
    const values = many(() => normalDraw(draw));
    expect(Math.abs(mean(values))).toBeLessThan(4 / Math.sqrt(40_000));
    expect(mean(values.map((value) => value * value))).toBeCloseTo(1, 1);
    const beyond = values.filter((value) => Math.abs(value) > 2).length / values.length;
    expect(Math.abs(beyond - 0.0455)).toBeLessThan(4 * Math.sqrt((0.0455 * 0.9545) / 40_000));
  });
});
