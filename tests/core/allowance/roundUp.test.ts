import { expect, test } from 'vitest';
import { roundDown, roundUp, snap } from '../../../src/core/allowance/roundUp.ts';

const SIXTEENTH = 25.4 / 16;

test.each([
  [382.5, 0.5, 382.5],
  [382.51, 0.5, 383],
  // 3 * 0.1 is 0.30000000000000004: noise of a sum, which is no reason to cut a step larger.
  [3 * 0.1, 0.1, 0.3],
  [241 * SIXTEENTH, SIXTEENTH, 382.5875],
  [241 * SIXTEENTH + 1e-12, SIXTEENTH, 382.5875],
  [241 * SIXTEENTH + 1e-3, SIXTEENTH, 242 * SIXTEENTH],
  [382.123, 0, 382.123],
])('%f mm rounded up to a step of %f mm is %f mm', (size, step, rounded) => {
  expect(roundUp(size, step)).toBeCloseTo(rounded, 9);
});

test.each([
  [382.5, 0.5, 382.5],
  [382.49, 0.5, 382],
  [3 * 0.1, 0.3, 0.3],
  // 0.7 / 0.1 is 6.999999999999999 in floating point.
  [0.7, 0.1, 0.7],
  [382.123, 0, 382.123],
])('%f mm rounded down to a step of %f mm is %f mm', (size, step, rounded) => {
  expect(roundDown(size, step)).toBeCloseTo(rounded, 9);
});

test('a size of step 0 stays as it is, and one that lies on a step but for noise is put on it', () => {
  expect([roundUp(330.123, 0), roundDown(330.123, 0), snap(330.123, 0)]).toEqual([330.123, 330.123, 330.123]);
  expect(snap(0.1 + 0.2, 0.1)).toBe(3 * 0.1);
  expect(snap(329.99999999, 0.5)).toBe(330);
});

test('a real excess, however small, goes up a whole step', () => expect(roundUp(330 + 1e-6, 0.5)).toBe(330.5));
