import { expect, test } from 'vitest';
import { foldTest } from '../../../src/core/leatherTest/foldTest.ts';
import { foldReadingSchema } from '../../../src/core/leatherTest/testSchema.ts';

const reading = (of: object) => foldReadingSchema.parse(of);

test('a fold of F = 2 t (1 + ratio) gives back the ratio', () => {
  expect(foldTest(reading({ thickness_mm: 1.8, fold_mm: 2 * 1.8 * 1.25, error_mm: 0.1 })).value).toBeCloseTo(0.25, 12);
});

test('its uncertainty is that of a fold and a thickness read with half the error each', () => {
  // By hand: 0.05 / 4 = 0.0125 for the fold and 4.8 x 0.05 / 8 = 0.03 for the thickness.
  expect(foldTest(reading({ thickness_mm: 2, fold_mm: 4.8, error_mm: 0.1 })).u).toBeCloseTo(
    Math.hypot(0.0125, 0.03),
    12,
  );
});

test('a fold thinner than two layers gives less than 0', () => {
  expect(foldTest(reading({ thickness_mm: 1.8, fold_mm: 3.5, error_mm: 0.1 })).value).toBeLessThan(0);
});
