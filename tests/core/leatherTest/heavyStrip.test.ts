import { expect, test } from 'vitest';
import { heavyStrip, MOST_DROOP, stripOfDroop } from '../../../src/core/leatherTest/heavyStrip.ts';
import { hangingStrip } from './hangingStrip.ts';

test('a strip of a droop has that droop, and as it is found from its held end', () => {
  for (const share of [1e-4, 0.01, 0.2, 0.5, 0.8, MOST_DROOP]) {
    const { length, droop } = stripOfDroop(share);
    expect(droop / length / share).toBeCloseTo(1, 9);
    expect(hangingStrip(length ** 3).droop / share).toBeCloseTo(1, 4);
  }
});

test('a small droop is w L^4 / 8 EI, and the tip points down by w L^3 / 6 EI', () => {
  const { length, droop, reach } = heavyStrip(1e-4);
  expect(droop / (length ** 4 / 8)).toBeCloseTo(1, 6);
  expect(length ** 3 / 6 / 1e-4).toBeCloseTo(1, 6);
  expect(reach / length).toBeCloseTo(1, 7);
});
