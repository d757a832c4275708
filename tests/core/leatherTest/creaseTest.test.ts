import { expect, test } from 'vitest';
import { creaseTest } from '../../../src/core/leatherTest/creaseTest.ts';
import { defined } from '../../defined.ts';

const figures = (fiveMinutes_deg: number | null, day_deg: number | null) =>
  creaseTest({ fiveMinutes_deg, day_deg, error_deg: 3.6 });

test('legs at 36 degrees have kept four fifths of the fold', () => {
  expect(figures(null, 36).day).toEqual({ value: 0.8, u: 0.01 });
  expect(figures(36, null)).toMatchObject({ fiveMinutes: { value: 0.8 }, day: null, lostPerDecade: null, week: null });
});

test('what is lost from five minutes to a day goes on with the logarithm of time to a week', () => {
  const { lostPerDecade, week } = figures(27, 45);
  // By hand: 0.1 lost over log10(288) = 2.459 tenfolds; a week is log10(7) = 0.845 more.
  expect(defined(lostPerDecade).value).toBeCloseTo(0.1 / 2.4594, 5);
  expect(defined(lostPerDecade).u).toBeCloseTo((Math.SQRT2 * 0.01) / 2.4594, 6);
  expect(defined(week).value).toBeCloseTo(0.75 - (0.1 / 2.4594) * 0.8451, 5);
  expect(defined(week).u).toBeCloseTo(0.01 * Math.hypot(1.3436, 0.3436), 5);
});
