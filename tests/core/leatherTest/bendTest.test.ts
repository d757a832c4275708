import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bendLength } from '../../../src/core/leather/bend.ts';
import { bendTest } from '../../../src/core/leatherTest/bendTest.ts';
import { bendReadingSchema } from '../../../src/core/leatherTest/testSchema.ts';
import { checkLaw } from '../../laws.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test('a bend gives back the K that made its length', () => {
  checkLaw(
    fc.property(between(0.4, 0.8), between(0.8, 4), between(1, 20), between(45, 180), (k, t, r, angle_deg) => {
      const length_mm = bendLength((angle_deg * Math.PI) / 180, r, t, k);
      const bend = { thickness_mm: t, radius_mm: r, angle_deg, length_mm, error_mm: 0.2, callipers_mm: 0.1 };
      expect(bendTest(bendReadingSchema.parse(bend)).value).toBeCloseTo(k, 9);
    }),
  );
});

test('its uncertainty is that of the length by rule, and of radius and thickness by callipers', () => {
  const bend = {
    thickness_mm: 2,
    radius_mm: 5,
    angle_deg: 180,
    length_mm: Math.PI * 6.2,
    error_mm: 0.2,
    callipers_mm: 0.1,
  };
  // By hand, K = 0.6: 0.1 / 2 pi, 0.05 / 2 and 0.6 x 0.05 / 2.
  expect(bendTest(bendReadingSchema.parse(bend)).u).toBeCloseTo(Math.hypot(0.05 / Math.PI, 0.025, 0.015), 12);
});
