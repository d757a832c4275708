import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bendLength, outerStrain } from '../../../src/core/leather/bend.ts';
import { calibrateBendRatio, calibrateNeutral } from '../../../src/core/leather/calibrate.ts';
import { defined } from '../../defined.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('a test bend', () => {
  test('gives back the neutral fraction that made its length', () => {
    expect(
      calibrateNeutral({ length: bendLength(Math.PI, 5, 2, 0.6), angle: Math.PI, radius: 5, thickness: 2, error: 0 }),
    ).toEqual({
      value: expect.closeTo(0.6, 12),
      low: expect.closeTo(0.6, 12),
      high: expect.closeTo(0.6, 12),
    });
  });

  test('bounds the true neutral fraction whatever the errors within their limit', () => {
    checkLaw(
      fc.property(
        between(0.4, 0.8),
        between(0.8, 4),
        between(0, 20),
        between(0.5, 3.2),
        fc.array(between(-1, 1), { minLength: 3, maxLength: 3 }),
        (k, t, r, angle, off) => {
          const error = 0.2;
          const bend = {
            length: bendLength(angle, r, t, k) + nth(off, 0) * error,
            angle,
            radius: Math.max(0, r + nth(off, 1) * error),
            thickness: t + nth(off, 2) * error,
            error,
          };
          const found = defined(calibrateNeutral(bend));
          expect(found.low).toBeLessThanOrEqual(k + 1e-9);
          expect(found.high).toBeGreaterThanOrEqual(k - 1e-9);
        },
      ),
    );
  });

  test('of leather thinner than the error tells nothing', () => {
    expect(calibrateNeutral({ length: 5, angle: 1, radius: 1, thickness: 0.3, error: 0.5 })).toBeNull();
  });
});

describe('a hard fold', () => {
  test('of F = 2 t (1 + ratio) gives back the ratio', () => {
    expect(calibrateBendRatio(2 * 1.8 * 1.25, 1.8, 0)?.value).toBeCloseTo(0.25, 12);
  });

  test('no thicker than two layers gives 0, and its bounds hold the value', () => {
    expect(calibrateBendRatio(3.5, 1.8, 0.1)).toMatchObject({ value: 0, low: 0 });
    const { value, low, high } = defined(calibrateBendRatio(4.5, 1.8, 0.1));
    expect(low).toBeLessThan(value);
    expect(high).toBeGreaterThan(value);
  });
});

describe('the strain of the grain side', () => {
  test('falls with the radius and rises as the neutral line moves in', () => {
    expect(outerStrain(0.4, 2, 0.5)).toBeCloseTo(0.5 / 0.7, 12);
    expect(outerStrain(4, 2, 0.5)).toBeLessThan(outerStrain(0.4, 2, 0.5));
    expect(outerStrain(0.4, 2, 0.4)).toBeGreaterThan(outerStrain(0.4, 2, 0.5));
  });
});
