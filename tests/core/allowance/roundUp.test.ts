import { describe, expect, test } from 'vitest';
import { roundUp } from '../../../src/core/allowance/roundUp.ts';

describe('a cut size rounded up', () => {
  test.each([
    [330, 0.5, 330],
    [330.001, 0.5, 330.5],
    [330.5, 0.5, 330.5],
    [239.999, 2, 240],
  ])('%d mm in steps of %d mm is %d mm', (size, step, expected) => {
    expect(roundUp(size, step)).toBe(expected);
  });

  test('does not go up a whole step for the noise of a sum, and never below an excess that is real', () => {
    // In floating point (0.1 + 0.2) / 0.1 is over 3.
    expect(roundUp(0.1 + 0.2, 0.1)).toBeCloseTo(0.3, 12);
    expect(roundUp(330 + 1e-6, 0.5)).toBe(330.5);
  });

  test('of step 0 stays as it is', () => expect(roundUp(330.123, 0)).toBe(330.123));
});
