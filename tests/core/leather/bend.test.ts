import { expect, test } from 'vitest';
import { outerStrain } from '../../../src/core/leather/bend.ts';

test('the strain of the grain side falls with the radius and rises as the neutral line moves in', () => {
  expect(outerStrain(0.4, 2, 0.5)).toBeCloseTo(0.5 / 0.7, 12);
  expect(outerStrain(4, 2, 0.5)).toBeLessThan(outerStrain(0.4, 2, 0.5));
  expect(outerStrain(0.4, 2, 0.4)).toBeGreaterThan(outerStrain(0.4, 2, 0.5));
});
