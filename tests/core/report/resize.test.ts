import { describe, expect, test } from 'vitest';
import { type EdgeGap, mendedEase, mendedSize } from '../../../src/core/report/checks/resize.ts';

/** An overrun of 1 mm in the heaviest leather, 2 mm of ease wished, up to 4 mm allowed. */
const short: EdgeGap = { least: -1, most: 0, ease: 2, error: 0.75, loosest: 4 };
const loose: EdgeGap = { ...short, least: 6, most: 7 };

describe('the size that mends an edge', () => {
  const size = (edge: Partial<EdgeGap>, step = 0.5) => mendedSize(400, [{ ...short, ...edge }], step);

  test('grows by twice what the gap lacks of the ease, or of the measuring error where that is more', () => {
    expect(size({})).toBe(406);
    expect(size({ ease: 0.5 })).toBe(403.5);
  });

  test('gives up the ease, then the measuring error, where the thinnest leather would be too loose', () => {
    // Room for 2 x loosest: the gaps asked for are 2, 0.75 and 0, at 406, 403.5 and 402 mm.
    expect([3, 2.99, 1.75, 1.74, 1, 0.99].map((loosest) => size({ loosest }))).toEqual([
      406,
      403.5,
      403.5,
      402,
      402,
      null,
    ]);
  });

  test('is a multiple of the step, rounded up, but for the noise of its sum', () => {
    expect(size({ least: -1.1 })).toBe(406.5);
    expect(size({ least: -1.1 }, 0)).toBeCloseTo(406.2, 9);
    expect(size({ loosest: 3 - 1e-10 })).toBe(406);
    expect(size({ loosest: 3 - 1e-6 })).toBe(403.5);
  });

  test('takes the edge that lacks most and the edge that is loosest', () => {
    expect(mendedSize(400, [short, { ...short, least: -2 }], 0.5)).toBe(408);
    expect(mendedSize(400, [short, { ...short, most: 2 }], 0.5)).toBe(403.5);
  });

  test('is smaller than now only where a gap is too loose', () => {
    expect(mendedSize(400, [loose], 0.5)).toBe(392);
    expect(size({ least: 3.5, most: 4 })).toBeNull();
    expect(size({ least: 2 + 1e-10, most: 3 }, 0)).toBeCloseTo(400, 9);
    expect(size({ least: 2 + 1e-6, most: 3 }, 0)).toBeNull();
  });
});

describe('the ease that mends an edge sized by the tool', () => {
  const ease = (edge: Partial<EdgeGap>, units: 'mm' | 'in' = 'mm') => mendedEase({ ...short, ...edge }, 0.5, units);

  test('that is too loose is less by what is over, and by half a step of the size, rounded down', () => {
    // 8 + 4 - 8.4 - 0.25 = 3.35 mm, which is 8.4 sixty-fourths of an inch.
    const wide = { ease: 8, least: 8, most: 8.4 };
    expect(ease(wide)).toBeCloseTo(3.3, 9);
    expect(ease(wide, 'in')).toBeCloseTo((8 * 25.4) / 64, 9);
    // toBeCloseTo(0) would take null for 0.
    expect([ease({ ...wide, most: 11.75 })]).toEqual([expect.closeTo(0, 9)]);
    expect(ease({ ...wide, most: 11.76 })).toBeNull();
  });

  test('that the measures may take away is more by what is lacking, rounded up', () => {
    // 0.5 + (0.75 - 0.3) = 0.95 mm, which is 1.2 thirty-seconds of an inch.
    const close = { ease: 0.5, least: 0.3, most: 1 };
    expect(ease(close)).toBe(1);
    expect(ease(close, 'in')).toBeCloseTo((2 * 25.4) / 32, 9);
    // Never under the measuring error itself.
    expect(ease({ ease: 0.1, least: 0.7, most: 1 })).toBe(1);
    expect(ease({ ease: 2, least: 3, most: 3.9 })).toBe(2);
  });

  test('is none where it would be too loose in the thinnest leather, but for the noise of its sum', () => {
    // Largest ease 0.5 + 4 - most - 0.25.
    const close = { ease: 0.5, least: 0.3 };
    expect(ease({ ...close, most: 3.25 + 1e-10 })).toBe(1);
    expect(ease({ ...close, most: 3.25 + 1e-6 })).toBeNull();
    expect(ease({ ease: 0.5, least: -3, most: 3 })).toBeNull();
  });

  test('is not taken for too loose by the noise of a sum', () => {
    expect(ease({ ease: 4, least: 3.9, most: 4 + 1e-10 })).toBe(4);
    expect(ease({ ease: 4, least: 3.9, most: 4 + 1e-6 })).toBeCloseTo(3.7, 9);
  });
});
