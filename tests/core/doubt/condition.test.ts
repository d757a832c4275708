import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { condition, type Gaussian } from '../../../src/core/doubt/condition.ts';
import { cholesky } from '../../../src/core/math/cholesky.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';

const independent = (mean: readonly number[], u: readonly number[]): Gaussian => ({
  mean,
  covariance: u.map((one, i) => u.map((_, k) => (i === k ? one * one : 0))),
});

const number = fc.integer({ min: -3000, max: 3000 }).map((thousandths) => thousandths / 1000);
const three = fc.tuple(number, number, number);
const reading = fc.record({ slopes: three, value: number, u: fc.double({ min: 0.1, max: 2, noNaN: true }) });

describe('conditioning on a reading', () => {
  test('of one variable weighs prior and reading by their variances', () => {
    // Worked by hand: 10 +- 3 and 14 +- 4: weights 16 and 9 of 25, variance 9 16 / 25.
    const { mean, covariance } = condition(independent([10], [3]), { slopes: [1], value: 14, u: 4 });
    expect(nth(mean, 0)).toBeCloseTo((10 * 16 + 14 * 9) / 25, 12);
    expect(nth(nth(covariance, 0), 0)).toBeCloseTo(144 / 25, 12);
  });

  test('of a sum shares the surprise by variance and leaves the two against each other', () => {
    // Worked by hand: variances 1 and 4, sum read 5 over expectation without noise: shifts 1 and 4; what is left is 4 / 5 of one line.
    const { mean, covariance } = condition(independent([2, 3], [1, 2]), { slopes: [1, 1], value: 10, u: 0 });
    expect(mean).toEqual([3, 7]);
    expect(covariance.flat().map((s) => Math.round(s * 1e9) / 1e9)).toEqual([0.8, -0.8, -0.8, 0.8]);
  });

  test('gives the same after two readings in either order', () => {
    checkLaw(
      fc.property(reading, reading, (one, other) => {
        const prior = independent([1, -1, 0.5], [1, 2, 0.5]);
        const forth = condition(condition(prior, one), other);
        const back = condition(condition(prior, other), one);
        for (const i of [0, 1, 2]) {
          expect(nth(back.mean, i)).toBeCloseTo(nth(forth.mean, i), 9);
          for (const k of [0, 1, 2])
            expect(nth(nth(back.covariance, i), k)).toBeCloseTo(nth(nth(forth.covariance, i), k), 9);
        }
      }),
    );
  });

  test('never adds doubt, and leaves a covariance', () => {
    checkLaw(
      fc.property(reading, fc.boolean(), (one, isExact) => {
        const prior = independent([1, -1, 0.5], [1, 2, 0.5]);
        const { covariance } = condition(prior, isExact ? { ...one, u: 0 } : one);
        for (const i of [0, 1, 2])
          expect(nth(nth(covariance, i), i)).toBeLessThanOrEqual(nth(nth(prior.covariance, i), i) * (1 + 1e-14));
        expect(cholesky(covariance)).not.toBeNull();
      }),
    );
  });

  test('without noise makes a variable known', () => {
    const prior: Gaussian = {
      mean: [0.1, 0.2],
      covariance: [
        [0.3, 0.1],
        [0.1, 0.7],
      ],
    };
    const { mean, covariance } = condition(prior, { slopes: [3, 0], value: 0.9, u: 0 });
    expect(nth(mean, 0)).toBeCloseTo(0.3, 12);
    for (const row of [0, 1]) expect(nth(nth(covariance, row), 0)).toBeCloseTo(0, 14);
    expect(nth(nth(covariance, 1), 1)).toBeCloseTo(0.7 - 0.01 / 0.3, 12);
  });

  test('of something known exactly changes nothing', () => {
    const prior = independent([1, 2], [0, 1]);
    expect(condition(prior, { slopes: [1, 0], value: 5, u: 0 })).toEqual(prior);
    expect(condition(prior, { slopes: [1, 0], value: 5, u: 1 })).toEqual(prior);
  });
});
