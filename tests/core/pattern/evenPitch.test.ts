import { describe, expect, test } from 'vitest';
import { evenPitch } from '../../../src/core/pattern/evenPitch.ts';

describe('a side divided evenly', () => {
  test.each([
    [100, 4, 25, 4],
    [102, 4, 26, 102 / 26],
    [101.9, 4, 25, 101.9 / 25],
    [240, 4.76, 50, 4.8],
  ])('%d mm at %d mm takes %d', (length, pitch, intervals, actual) => {
    expect(evenPitch(length, pitch)).toMatchObject({ intervals, pitch: actual });
  });

  test('too short for the pitch takes the nearest number, at least one, and says how far it is off', () => {
    expect(evenPitch(6, 4)).toEqual({ intervals: 2, pitch: 3, off: -0.25 });
    expect(evenPitch(1, 4)).toEqual({ intervals: 1, pitch: 1, off: -0.75 });
  });

  test('takes the nearest number whose holes keep clear of the end of a layer', () => {
    // At 25 intervals of 4 mm a hole would stand at 40 mm, just where the layer ends.
    const { intervals, pitch } = evenPitch(100, 4, [{ at: 40, clear: 0.3 }]);
    const place = 40 / pitch;
    expect(Math.abs(place - Math.round(place))).toBeGreaterThanOrEqual(0.3);
    expect(Math.abs(intervals - 25)).toBe(1);
  });

  test('serves the first layer where it cannot serve all', () => {
    const steps = [
      { at: 6, clear: 0.45 },
      { at: 2, clear: 0.45 },
    ];
    const { pitch } = evenPitch(40, 4, steps);
    expect(Math.abs(6 / pitch - 1.5)).toBeLessThan(0.05);
  });
});
