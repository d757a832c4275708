import { areaD, differenceD, EndType, FillRule, inflatePathsD, JoinType } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import { flattened } from '../../../src/core/math/contour.ts';
import { COUPON, COUPON_ROW, couponKerf, kerfCoupon, withKerf } from '../../../src/output/machine/kerfCoupon.ts';
import { nth } from '../../nth.ts';
import { soundMachine } from './machines.ts';

/** The test burnt by a beam of some width: what the ten strips of each row measure pushed together. */
function burnt(kerf: number): { across: number; along: number } {
  const strokes = nth(kerfCoupon(soundMachine({})).beds, 0).passes.flatMap(({ strokes }) => strokes);
  const paths = strokes.map(({ path }) => flattened(path, 0.001).map(([x, y]) => ({ x, y })));
  const gone = paths.flatMap((path) => inflatePathsD([path], kerf / 2, JoinType.Miter, EndType.Square, 2, 6));
  const blocks = strokes.flatMap(({ isClosed }, i) => (isClosed ? [nth(paths, i)] : []));
  const [across, along] = blocks.map((block) => {
    const strips = differenceD([block], gone, FillRule.NonZero, 6).filter((strip) => Math.abs(areaD(strip)) > 1);
    expect(strips.length).toBe(COUPON.strips);
    return strips.reduce((sum, strip) => {
      const side = (axis: 'x' | 'y') => Math.max(...strip.map((p) => p[axis])) - Math.min(...strip.map((p) => p[axis]));
      return sum + Math.min(side('x'), side('y'));
    }, 0);
  });
  return { across: across!, along: along! };
}

describe('the kerf test', () => {
  test.each([0.08, 0.2, 0.35])('burnt by a beam of %d mm reads as that kerf', (kerf) => {
    const { kerf: read, differs } = couponKerf({ ...burnt(kerf), error: 0.05 });
    expect(read).toBeCloseTo(kerf, 4);
    expect(differs).toBe(false);
  });

  test('doubts the kerf by a tenth of the error of reading, over the root of two readings', () => {
    const readings = { across: 77.9, along: 78.1, error: 0.1 };
    expect(couponKerf(readings)).toMatchObject({ kerf: expect.closeTo(0.2, 12), differs: false });
    expect(couponKerf(readings).doubt).toBeCloseTo(0.1 / 10 / Math.SQRT2, 12);
    expect(couponKerf({ ...readings, across: 77 }).differs).toBe(true);
  });

  test('refuses readings that are no row of ten strips', () => {
    for (const across of [59.9, COUPON_ROW + 0.1, Number.NaN])
      expect(() => couponKerf({ across, along: 78, error: 0.1 })).toThrow(/allowed: 60 to 80 mm\. Push the ten strips/);
    expect(() => couponKerf({ across: 78, along: 78, error: 0 })).toThrow(/allowed: above 0/);
  });

  test('cuts between the strips before it cuts a row free', () => {
    const depths = nth(kerfCoupon(soundMachine({})).beds, 0).passes.flatMap(({ strokes }) =>
      strokes.map(({ depth }) => depth),
    );
    expect(depths).toEqual([...Array(18).fill(2), 3, 3]);
  });

  test('says where a bed is too small, and where nothing cuts', () => {
    expect(() => kerfCoupon(soundMachine({ bed: { width_mm: 100, height_mm: 100 } }))).toThrow(
      /120 × 80 mm; the bed has room for 88 × 88 mm/,
    );
    expect(() => kerfCoupon(soundMachine({ words: 'none', passes: [{ name: 'a', layers: ['MARK'] }] }))).toThrow(
      /No pass of Bench laser takes the layer CUT/,
    );
  });

  test('goes into the table in place of the older reading of that leather', () => {
    const rows = withKerf(soundMachine({}), ' Shoulder', 2, 0.20004).kerfs;
    expect(rows).toEqual([{ leather: 'Shoulder', thickness_mm: 2, kerf_mm: 0.2 }]);
    expect(withKerf(soundMachine({}), 'shoulder', 1.5, 0.2).kerfs.length).toBe(2);
  });
});
