import { describe, expect, test } from 'vitest';
import { evenPitch, placeOfHole, wholeStrides } from '../../../src/core/pattern/evenPitch.ts';

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
    expect(evenPitch(10, 4)).toMatchObject({ intervals: 3, pitch: 10 / 3 });
    expect(evenPitch(5, 4)).toEqual({ intervals: 1, pitch: 5, off: 0.25 });
    expect(evenPitch(1, 4)).toEqual({ intervals: 1, pitch: 1, off: -0.75 });
  });

  test('takes the wider of two pitches that are as near', () => {
    expect(evenPitch(4, 3)).toMatchObject({ intervals: 1, pitch: 4 });
  });

  test('takes the nearest number whose holes keep clear of the end of a layer', () => {
    // At 25 intervals of 4 mm a hole would stand at 40 mm, just where the layer ends.
    const { intervals, pitch } = evenPitch(100, 4, { at: 40, clear: 0.3 });
    const place = 40 / pitch;
    expect(Math.abs(place - Math.round(place))).toBeGreaterThanOrEqual(0.3);
    expect(Math.abs(intervals - 25)).toBe(1);
  });

  test('keeps the nearest number where its holes are clear enough, though another clears the layer by more', () => {
    // 9.4 mm is 2.35 intervals of 25 in 100 mm and 2.444 of 26.
    expect(evenPitch(100, 4, { at: 9.4, clear: 0.3 }).intervals).toBe(25);
    expect(evenPitch(100, 4, { at: 9.4, clear: 0.4 }).intervals).toBe(26);
  });

  test('keeps clear of a hole on either side', () => {
    // 39.5 mm is 9.875 intervals of 25 in 100 mm, 10.27 of 26, 9.48 of 24; 40.5 mm is 10.125, 10.53 and 9.72.
    expect(evenPitch(100, 4, { at: 39.5, clear: 0.3 }).intervals).toBe(24);
    expect(evenPitch(100, 4, { at: 40.5, clear: 0.3 }).intervals).toBe(26);
  });

  test('goes to both ends of the tolerance of 5 %, and no farther', () => {
    // A hole of the nearest number would stand just at the layer's end, halfway between two of the other.
    expect(evenPitch(42, 4, { at: (5 * 42) / 11, clear: 0.3 })).toMatchObject({ intervals: 10, pitch: 4.2 });
    expect(evenPitch(57, 4, { at: (7 * 57) / 14, clear: 0.3 })).toMatchObject({ intervals: 15, pitch: 3.8 });
    expect(evenPitch(42.02, 4, { at: (5 * 42.02) / 11, clear: 0.3 }).intervals).toBe(11);
    expect(evenPitch(56.98, 4, { at: (7 * 56.98) / 14, clear: 0.3 }).intervals).toBe(14);
  });
});

describe('the strides of an iron', () => {
  test('fill a side that they go into', () => {
    expect(wholeStrides(300, 3)).toEqual({ intervals: 100, pitch: 3, off: 0 });
    expect(wholeStrides(0.1 * 3, 0.1)).toEqual({ intervals: 3, pitch: 0.1, off: 0 });
  });

  test('share what is left among the fewest that stay within 5 % by it, in the middle', () => {
    // 1 mm over 100 strides of 3: at most 0.15 mm each, so 7; an even number to lie in the middle of 100.
    expect(wholeStrides(301, 3).uneven).toEqual({ first: 46, count: 8, pitch: 3 + 1 / 8 });
    // 1 mm short of 101.
    expect(wholeStrides(302, 3)).toMatchObject({ intervals: 101, uneven: { first: 47, count: 7, pitch: 3 - 1 / 7 } });
  });

  test('are all shared by a side too short for that', () => {
    expect(wholeStrides(7, 3)).toMatchObject({ intervals: 2, uneven: { first: 0, count: 2, pitch: 3.5 } });
    expect(wholeStrides(1, 3)).toMatchObject({ intervals: 1, uneven: { first: 0, count: 1, pitch: 1 } });
  });

  test('lead from both corners in whole strides to the uneven ones', () => {
    const side = wholeStrides(301, 3);
    expect([0, 1, 46].map((k) => placeOfHole(side, k))).toEqual([0, 3, 138]);
    expect([54, 99, 100].map((k) => 301 - placeOfHole(side, k))).toEqual([138, 3, 0]);
    expect(placeOfHole(side, 47.5)).toBeCloseTo(138 + 1.5 * 3.125, 12);
  });
});
