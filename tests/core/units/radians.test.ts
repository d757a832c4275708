import { expect, test } from 'vitest';
import { degreesFromRadians, radiansFromDegrees } from '../../../src/core/units/radians.ts';

test('60 degrees are a third of pi, and back', () => {
  expect(radiansFromDegrees(60)).toBeCloseTo(Math.PI / 3, 15);
  expect(degreesFromRadians(radiansFromDegrees(60))).toBeCloseTo(60, 12);
});
