import { describe, expect, test } from 'vitest';
import { covarianceOf, estimate, onceKnown, slopesAt } from '../../../src/core/mockup/estimate.ts';
import { nth } from '../../nth.ts';

describe('estimate', () => {
  test('shares one reading of a sum by the variances of its terms', () => {
    // y = 2 a + b, prior errors 1 and 1, an almost perfect reading: the surprise of 5 goes 2 : 1.
    const prior = { mean: [10, 20], error: [1, 1] };
    const predict = ([a, b]: readonly number[]): number => 2 * a! + b!;
    const { mean, covariance, status, iterations } = estimate(prior, [{ value: 45, error: 1e-6, predict }]);
    expect(status).toBe('converged');
    expect(iterations).toBeLessThanOrEqual(2);
    expect(mean[0]).toBeCloseTo(12, 6);
    expect(mean[1]).toBeCloseTo(21, 6);
    // The sum is fixed by the reading, the difference is not: var(a) = 1 - 4/5, var(b) = 1 - 1/5.
    expect(nth(covariance, 0)[0]).toBeCloseTo(0.2, 6);
    expect(nth(covariance, 1)[1]).toBeCloseTo(0.8, 6);
    expect(nth(covariance, 0)[1]).toBeCloseTo(-0.4, 6);
  });

  test('agrees with the normal equations solved by Cramer for two unknowns and three readings', () => {
    const prior = { mean: [3, -1], error: [0.7, 1.3] };
    const rows = [
      { a: 1, b: 0.5, value: 2.2, error: 0.4 },
      { a: -0.3, b: 2, value: -1.1, error: 0.9 },
      { a: 0.8, b: -1, value: 4.4, error: 0.2 },
    ];
    const sums = rows.reduce(
      (sum, { a, b, value, error }) => {
        const weight = 1 / error ** 2;
        const surprise = value - (3 * a - b);
        return {
          aa: sum.aa + weight * a * a,
          ab: sum.ab + weight * a * b,
          bb: sum.bb + weight * b * b,
          ay: sum.ay + weight * a * surprise,
          by: sum.by + weight * b * surprise,
        };
      },
      { aa: 1 / 0.49, ab: 0, bb: 1 / 1.69, ay: 0, by: 0 },
    );
    const determinant = sums.aa * sums.bb - sums.ab ** 2;
    const { mean, covariance } = estimate(
      prior,
      rows.map(({ a, b, value, error }) => ({ value, error, predict: ([x, y]) => a * x! + b * y! })),
    );
    expect(mean[0]).toBeCloseTo(3 + (sums.ay * sums.bb - sums.by * sums.ab) / determinant, 9);
    expect(mean[1]).toBeCloseTo(-1 + (sums.by * sums.aa - sums.ay * sums.ab) / determinant, 9);
    expect(nth(covariance, 0)[0]).toBeCloseTo(sums.bb / determinant, 9);
  });

  test('finds the minimum of a nonlinear problem', () => {
    const observation = { value: 30, error: 0.5, predict: ([x]: readonly number[]) => x! ** 2 };
    const { mean, status } = estimate({ mean: [5], error: [0.5] }, [observation]);
    const cost = (x: number): number => ((x - 5) / 0.5) ** 2 + ((30 - x * x) / 0.5) ** 2;
    expect(status).toBe('converged');
    for (const step of [-1e-3, 1e-3]) expect(cost(nth(mean, 0) + step)).toBeGreaterThan(cost(nth(mean, 0)));
    // There the slope is zero: (x - 5) - 2 x (30 - x^2) = 0.
    expect(2 * nth(mean, 0) ** 3 - 59 * nth(mean, 0)).toBeCloseTo(5, 5);
  });

  test('gives the deviation of a reading from all others', () => {
    const prior = { mean: [10], error: [0.6] };
    const { deviations } = estimate(prior, [{ value: 13, error: 0.8, predict: ([x]) => x! }]);
    expect(deviations[0]).toBeCloseTo(3, 9);
  });

  test('judges a reading by all others but itself', () => {
    // Prior 10 +- 1 with a reading of 12 +- 1 is 11, variance 1/2; one of 14 with variance 1/2 is 3 off, with an error
    // of 1. The other way round: 10 +- 1 with 14, variance 1/2, is (10 + 28) / 3, variance 1/3.
    const readings = [12, 14].map((value) => ({
      value,
      error: value === 12 ? 1 : Math.SQRT1_2,
      predict: ([x]: readonly number[]) => x!,
    }));
    const { deviations } = estimate({ mean: [10], error: [1] }, readings);
    expect(deviations[1]).toBeCloseTo(3, 9);
    expect(deviations[0]).toBeCloseTo((12 - 38 / 3) / Math.sqrt(4 / 3), 9);
  });

  test('keeps an unknown without prior error, and asks for no prediction elsewhere', () => {
    const predict = ([a, b]: readonly number[]): number => (a === 10 ? a + b! : Number.NaN);
    const sum = { value: 36, error: 1e-6, predict };
    const { mean, covariance } = estimate({ mean: [10, 20], error: [0, 1] }, [sum]);
    expect(mean[0]).toBe(10);
    expect(mean[1]).toBeCloseTo(26, 6);
    expect(covariance[0]).toEqual([0, 0]);
  });

  test('takes slopes over steps so wide that a prediction rounded to 1e-4 does not spoil them', () => {
    const rounded = { value: 0.5, error: 1e-3, predict: ([x]: readonly number[]) => Math.round(1.3e4 * x!) / 1e4 };
    const { mean, covariance } = estimate({ mean: [0], error: [1] }, [rounded]);
    expect(mean[0]).toBeCloseTo(0.5 / 1.3, 3);
    expect(Math.sqrt(nth(nth(covariance, 0), 0)) / (1e-3 / 1.3)).toBeCloseTo(1, 1);
  });

  test('asks for predictions a hundredth of the prior error to either side', () => {
    const asked = new Set<number>();
    const predict = ([x]: readonly number[]): number => {
      asked.add(x!);
      return x!;
    };
    estimate({ mean: [4], error: [0.5] }, [{ value: 4, error: 1, predict }]);
    expect([...asked].sort((a, b) => a - b)).toEqual([3.995, 4, 4.005]);
  });

  test('says when it does not converge', () => {
    const jump = { value: 0, error: 1e-3, predict: ([x]: readonly number[]) => Math.cbrt(x!) };
    expect(estimate({ mean: [1], error: [100] }, [jump])).toMatchObject({ status: 'notConverged', iterations: 30 });
  });

  test('takes the best share of a step, so that it converges where whole steps swing ever wider', () => {
    // Minimise (x - 3)^2 + (x^2 + 1)^2 / 0.5^2: whole Gauss-Newton steps from 3 end in a cycle. At the least sum the slope is 0.
    const square = { value: -1, error: 0.5, predict: ([x]: readonly number[]) => x! * x! };
    const { mean, status } = estimate({ mean: [3], error: [1] }, [square]);
    expect(status).toBe('converged');
    const x = nth(mean, 0);
    expect(2 * (x - 3) + (2 * (x * x + 1) * 2 * x) / 0.25).toBeCloseTo(0, 2);
  });
});

describe('the evidence of the readings', () => {
  const sum = (value: number, error: number) => ({ value, error, predict: ([a, b]: readonly number[]) => a! + b! });

  test('of one reading is its normal density about what the prior predicts', () => {
    // Variance 3^2 + 4^2 + 12^2 = 13^2, a surprise of 13: ln(exp(-1/2) / (13 sqrt(2 pi))).
    const { logEvidence } = estimate({ mean: [1, 2], error: [3, 4] }, [sum(16, 12)]);
    expect(logEvidence).toBeCloseTo(-0.5 - Math.log(13) - Math.log(2 * Math.PI) / 2, 9);
  });

  test('of two readings is their joint density, whatever their order', () => {
    // y = x + noise twice, x variance 1, noise 1: covariance [[2, 1], [1, 2]], determinant 3. At (1, -1): y' C^-1 y = 2.
    const read = [1, -1].map((value) => ({ value, error: 1, predict: ([x]: readonly number[]) => x! }));
    const expected = -1 - Math.log(3) / 2 - Math.log(2 * Math.PI);
    for (const readings of [read, read.toReversed()])
      expect(estimate({ mean: [0], error: [1] }, readings).logEvidence).toBeCloseTo(expected, 9);
    expect(estimate({ mean: [0], error: [1] }, []).logEvidence).toBe(0);
  });
});

describe('slopes and covariances', () => {
  const prior = { mean: [2, 5, 7], error: [0.1, 0, 0.3] };

  test('are taken along what has an error', () => {
    const slopes = slopesAt(prior, [2, 5, 7])(([a, b, c]) => a! * a! + 10 * b! - 3 * c!);
    expect(slopes).toEqual([expect.closeTo(4, 9), 0, expect.closeTo(-3, 9)]);
  });

  test('give the covariance of two lengths, and none with a length once it is known', () => {
    const covariance = [
      [4, 1],
      [1, 9],
    ];
    // var(a + b) = 4 + 9 + 2, cov(a + b, a - b) = 4 - 9.
    expect(covarianceOf([1, 1], covariance, [1, 1])).toBe(15);
    expect(covarianceOf([1, 1], covariance, [1, -1])).toBe(-5);
    const known = onceKnown(covariance, [1, 1]);
    expect(covarianceOf([1, 1], known, [1, -1])).toBeCloseTo(0, 12);
    expect(covarianceOf([1, -1], known, [1, -1])).toBeCloseTo(11 - 25 / 15, 12);
    expect(onceKnown(known, [0, 0])).toEqual(known);
  });
});
