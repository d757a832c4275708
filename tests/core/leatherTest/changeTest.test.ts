import { expect, test } from 'vitest';
import { changeTest } from '../../../src/core/leatherTest/changeTest.ts';
import { changeReadingSchema } from '../../../src/core/leatherTest/testSchema.ts';
import { defined } from '../../defined.ts';

test('marks 100 mm apart that are 98.5 mm apart when dried say that the leather shrinks by 1.5 %', () => {
  // By hand: 0.2 / 100 for each reading, the first times 0.985.
  const { value, u } = defined(
    changeTest(changeReadingSchema.parse({ before_mm: 100, after_mm: 98.5, error_mm: 0.4 })),
  );
  expect(value).toBeCloseTo(-0.015, 12);
  expect(u).toBeCloseTo(0.002 * Math.hypot(1, 0.985), 12);
});

test('says nothing until the strip is dry and read again', () => {
  expect(changeTest(changeReadingSchema.parse({ before_mm: 100 }))).toBeNull();
});
