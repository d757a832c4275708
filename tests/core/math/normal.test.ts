import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { normalDensity, normalDistribution, normalQuantile } from '../../../src/core/math/normal.ts';
import { checkLaw } from '../../laws.ts';

const relative = (got: number, right: number): number => Math.abs(got / right - 1);

describe('the standard normal distribution', () => {
  // Source: erfc(-z / sqrt 2) / 2 in arithmetic of 50 digits (mpmath 1.3), each range of the approximation and its borders.
  test.each([
    [-37, 5.725571222524577e-300],
    [-30.3, 5.731723503315619e-202],
    [-20.1, 3.6896808637214952e-90],
    [-10, 7.619853024160525e-24],
    [-6.1, 5.30342326294883e-10],
    [-5.7, 5.9903714010635345e-9],
    [-5.6, 1.0717590258310907e-8],
    [-4.2, 1.334574901590634e-5],
    [-2.5, 0.006209665325776135],
    [-1.3, 0.09680048458561033],
    [-0.7, 0.241963652223073],
    [-0.66, 0.25462691467133614],
    [-0.3, 0.3820885778110474],
    [0, 0.5],
    [0.2, 0.579259709439103],
    [3.5, 0.9997673709209645],
    [6, 0.9999999990134123],
  ])('has the share of 50 digits below %d to 1e-13 of itself', (z, share) => {
    expect(relative(normalDistribution(z), share)).toBeLessThan(1e-13);
  });

  // Source: JCGM 100:2008, table G.1: level of confidence p in percent and coverage factor k.
  test.each([
    [68.27, 1, 2],
    [90, 1.645, 3],
    [95, 1.96, 3],
    [95.45, 2, 3],
    [99, 2.576, 3],
    [99.73, 3, 2],
  ])('covers %d %% within %d standard deviations, as table G.1 prints it', (percent, k, decimals) => {
    expect(100 * (2 * normalDistribution(k) - 1)).toBeCloseTo(percent, 1);
    expect(Number(normalQuantile(0.5 + percent / 200).toFixed(decimals))).toBe(k);
  });

  // Source: the root of log(share) in arithmetic of 50 digits (mpmath 1.3).
  test.each([
    [1e-300, -37.0470962993612],
    [1e-100, -21.273453560965326],
    [1e-20, -9.262340089798407],
    [1e-11, -6.706023155495136],
    [1e-6, -4.753424308822899],
    [0.001, -3.0902323061678136],
    [0.025, -1.9599639845400543],
    [0.074, -1.4466320671589785],
    [0.076, -1.4325027208258116],
    [0.25, -0.6744897501960817],
    [0.6, 0.2533471031357998],
    [0.975, 1.9599639845400543],
  ])('has the quantile of 50 digits of %d', (p, z) => {
    expect(relative(normalQuantile(p), z)).toBeLessThan(2e-15);
  });

  test('reaches its ends at infinity and has no quantile outside 0 to 1', () => {
    expect([-Infinity, Infinity, -41].map(normalDistribution)).toEqual([0, 1, 0]);
    expect([0, 1].map(normalQuantile)).toEqual([-Infinity, Infinity]);
    expect([-0.1, 1.1, Number.NaN].map(normalQuantile)).toEqual([Number.NaN, Number.NaN, Number.NaN]);
    expect(normalDistribution(Number.NaN)).toBeNaN();
  });

  test('is symmetric', () => {
    checkLaw(
      fc.property(fc.double({ min: -8, max: 8, noNaN: true }), (z) => {
        expect(normalDistribution(z) + normalDistribution(-z)).toBeCloseTo(1, 14);
        expect(normalDensity(z)).toBe(normalDensity(-z));
      }),
    );
  });

  test('has its density as slope, also where two approximations meet', () => {
    const edges = [0.66291, Math.sqrt(32)].flatMap((edge) => [edge, -edge]);
    const step = 1e-4;
    for (const z of [...edges, -2, 0, 1.7]) {
      const slope = (normalDistribution(z + step) - normalDistribution(z - step)) / (2 * step);
      expect(Math.abs(slope - normalDensity(z))).toBeLessThan(1e-8 * normalDensity(0));
    }
  });

  test('has the quantile as its inverse', () => {
    checkLaw(
      fc.property(fc.double({ min: -37, max: 5, noNaN: true }), (z) => {
        expect(normalQuantile(normalDistribution(z))).toBeCloseTo(z, 9);
      }),
    );
  });
});
