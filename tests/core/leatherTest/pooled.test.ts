import { describe, expect, test } from 'vitest';
import { pooled, pooledRelative } from '../../../src/core/leatherTest/pooled.ts';
import { defined } from '../../defined.ts';

const readings = (...values: readonly (readonly [value: number, u: number])[]) =>
  values.map(([value, u], place) => ({ value, u, place }));

describe('readings that are pooled', () => {
  test('say nothing where there are none, and of one what it says', () => {
    expect(pooled([])).toBeNull();
    expect(pooled(readings([3, 0.2]))).toEqual({ value: 3, u: 0.2, scatter: 0, count: 1, again: [] });
  });

  test('count by their uncertainties where these explain how they differ', () => {
    // By hand: weights 4 and 1.
    const result = defined(pooled(readings([1, 0.5], [2, 1])));
    expect(result.value).toBeCloseTo(1.2, 12);
    expect(result.u).toBeCloseTo(Math.sqrt(1 / 5), 12);
    expect(result).toMatchObject({ scatter: 0, count: 2, again: [] });
  });

  test('that scatter from strip to strip have their scatter, and a mean of that uncertainty', () => {
    // By hand for equal errors: variance of the three is 4, of which 0.25 is their errors'.
    const result = defined(pooled(readings([8, 0.5], [10, 0.5], [12, 0.5])));
    expect(result.value).toBeCloseTo(10, 9);
    expect(result.scatter).toBeCloseTo(Math.sqrt(3.75), 9);
    // The errors alone would give 0.25 / 3; the rest is widened by Student's t of 2 degrees.
    expect(result.u).toBeCloseTo(Math.sqrt(0.25 / 3 + (4.303 / 1.96) ** 2 * (3.75 / 3)), 9);
    expect(result.again).toEqual([]);
  });

  test('name the place of the one that contradicts the others, which counts and widens', () => {
    const result = defined(pooled(readings([10, 0.5], [10.4, 0.5], [14, 0.5], [9.8, 0.5])));
    expect(result).toMatchObject({ count: 4, again: [2] });
    expect(result.value).toBeCloseTo(11.05, 9);
    expect(1.96 * result.u).toBeGreaterThan(1);
    // Read again, it no longer stands alone.
    const twice = readings([10, 0.5], [10.4, 0.5], [14, 0.5], [9.8, 0.5], [13.9, 0.5]);
    expect(defined(pooled(twice)).again).toEqual([]);
  });

  test('are both asked for again where the only two contradict each other', () => {
    const result = defined(pooled(readings([10, 0.5], [14, 0.5])));
    expect(result).toMatchObject({ count: 2, again: [0, 1] });
    expect(result.value).toBeCloseTo(12, 9);
    expect(1.96 * result.u).toBeGreaterThan(4);
  });

  test('of a leather that differs all over are not taken for a wrong one', () => {
    expect(defined(pooled(readings([6, 0.5], [9, 0.5], [12, 0.5], [15, 0.5]))).again).toEqual([]);
  });

  test('with errors in proportion count alike, whichever is larger', () => {
    const result = defined(pooledRelative(readings([50, 5], [55, 5.5])));
    expect(result.value).toBeCloseTo(Math.sqrt(2750), 9);
    expect(result.u / result.value).toBeCloseTo(0.1 / Math.SQRT2, 9);
    // Three that differ by 0.2 in their logarithms, far more than their errors.
    const apart = defined(pooledRelative(readings([50, 0.05], [50 * Math.exp(0.2), 0.06], [50 * Math.exp(0.4), 0.07])));
    expect(apart.scatter / apart.value).toBeCloseTo(0.2, 4);
  });

  test.each([
    [10, 2.262],
    [12, 2.201],
    [31, 2.042],
  ])("of %d strips are widened by Student's t as tables have it", (count, t) => {
    const strips = Array.from({ length: count }, (_, i) => [i % 2 === 0 ? 0 : 10, 1e-6] as const);
    const { u, scatter } = defined(pooled(readings(...strips)));
    expect(u / (scatter / Math.sqrt(count))).toBeCloseTo(t / 1.96, 2);
  });
});
