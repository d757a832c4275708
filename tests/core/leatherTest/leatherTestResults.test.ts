import { expect, test } from 'vitest';
import { leatherTestResults } from '../../../src/core/leatherTest/leatherTestResults.ts';
import { testsSchema } from '../../../src/core/leatherTest/testSchema.ts';

const fold = (fold_mm: number, of: object = {}) => ({ thickness_mm: 2, fold_mm, ...of });

test('pools by the way of the strip, by how it was worked and by the side outside; places are those of the list', () => {
  const tests = testsSchema.parse({
    folds: [
      fold(4.8, { way: 'along' }),
      fold(4.8),
      fold(5.2, { worked: 'cased' }),
      fold(5.6, { grain: 'in' }),
      fold(4.84),
      fold(6.4),
      fold(3.8, { way: 'along', grain: 'in' }),
    ],
    changes: [{ before_mm: 100, after_mm: 99, worked: 'cased' }],
    creases: [{ day_deg: 36 }, { fiveMinutes_deg: 20 }],
  });
  const dry = leatherTestResults(tests, { worked: 'dry' });
  expect(dry.bendRatio.along).toMatchObject({ value: expect.closeTo(0.2, 9), count: 1 });
  expect(dry.bendRatio.across).toMatchObject({ count: 3, again: [5] });
  expect(dry.grainIn.bendRatio.across).toMatchObject({ value: expect.closeTo(0.4, 9), count: 1 });
  expect(dry.change).toEqual({ along: null, across: null });
  // An angle after five minutes alone is no result yet.
  expect(dry.creaseSet.across).toMatchObject({ value: expect.closeTo(0.8, 9), count: 1 });
  expect(dry.creaseSetWeek.across).toBeNull();
  const cased = leatherTestResults(tests, { worked: 'cased' });
  expect(cased.bendRatio).toMatchObject({ along: null, across: { value: expect.closeTo(0.3, 9) } });
  expect(cased.change.across).toMatchObject({ value: expect.closeTo(-0.01, 9) });
});

test('a fold thinner than two layers gives no ratio below 0', () => {
  const tests = testsSchema.parse({ folds: [fold(3.8)] });
  expect(leatherTestResults(tests, { worked: 'dry' }).bendRatio.across?.value).toBe(0);
});

test('strips that hang give stiffness by way, and density by all of them; one without an answer is passed over', () => {
  const droop = { thickness_mm: 2, overhang_mm: 250, length_mm: 400, width_mm: 30, weight_g: 22.8 };
  const tests = testsSchema.parse({
    droops: [
      { ...droop, droop_mm: 150 },
      { ...droop, droop_mm: 249 },
      { ...droop, droop_mm: 120, way: 'along' },
    ],
  });
  const { modulus_MPa, density_kg_m3 } = leatherTestResults(tests, { worked: 'dry' });
  expect(modulus_MPa.across).toMatchObject({ count: 1 });
  expect(modulus_MPa.along?.value).toBeGreaterThan(modulus_MPa.across?.value ?? Infinity);
  expect(density_kg_m3).toMatchObject({ value: expect.closeTo(950, 6), count: 2 });
});
