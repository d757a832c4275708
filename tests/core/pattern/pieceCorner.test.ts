import { describe, expect, test } from 'vitest';
import { pieceCorner, seamCorner } from '../../../src/core/pattern/pieceCorner.ts';
import { coverOf } from './coverOf.ts';

/** The corner of a cover cut to 300 x 200 mm with pockets 60 mm wide at a pitch of 4 mm, with parts of its job changed. */
function cornerOf(asked: number, change: { seam?: object; construction?: object; cut?: [number, number] } = {}) {
  const [outsideWidth_mm, outsideHeight_mm] = change.cut ?? [300, 200];
  const { job, pieces } = coverOf({
    seam: {
      method: 'stitching',
      style: 'saddle',
      edgeMargin_mm: 4,
      pitch_mm: 4,
      cornerRadius_mm: asked,
      ...change.seam,
    },
    construction: change.construction ?? {},
    pockets: { depth_mm: 60 },
    pattern: { outsideWidth_mm, outsideHeight_mm },
  });
  return pieceCorner(job, { ...pieces, pocket: { ...pieces.pocket, width: 60 as typeof pieces.pocket.width } });
}

describe('the corner of a piece', () => {
  test('is as asked where there is room for it', () => {
    expect(cornerOf(12)).toEqual({ corner: { style: 'rounded', size: 12 }, isLimited: false });
    expect(cornerOf(12, { construction: { corners: 'clipped' } })).toEqual({
      corner: { style: 'clipped', size: 12 },
      isLimited: false,
    });
  });

  test('is none where none is asked, where it is square, and at turned ends', () => {
    const none = { corner: { style: 'rounded', size: 0 }, isLimited: false };
    expect(cornerOf(0)).toEqual(none);
    expect(cornerOf(12, { construction: { corners: 'square' } })).toEqual(none);
    const turned = coverOf({ seam: { cornerRadius_mm: 12 }, pockets: { construction: 'turned', depth_mm: 60 } });
    expect(pieceCorner(turned.job, turned.pieces)).toEqual(none);
  });

  test.each([
    ['leaves two pitches straight before a mouth at 60 mm', 60, {}, 52],
    ['leaves two pitches of 7 mm', 60, { seam: { pitch_mm: 7 } }, 46],
    ['takes no more than half the height', 60, { cut: [300, 80] as [number, number] }, 40],
    ['takes no more than half the width', 60, { cut: [90, 200] as [number, number] }, 45],
    ['goes where two pitches of 25 mm are all the pocket has but 10', 60, { seam: { pitch_mm: 25 } }, 10],
  ])('%s, and says so', (_, asked, change, size) => {
    expect(cornerOf(asked, change)).toEqual({ corner: { style: 'rounded', size }, isLimited: true });
    // Asked for exactly what there is room for, it is not made smaller.
    expect(cornerOf(size, change)).toEqual({ corner: { style: 'rounded', size }, isLimited: false });
  });

  test('is none in a pocket narrower than two pitches', () => {
    const { job, pieces } = coverOf({
      seam: { pitch_mm: 25, cornerRadius_mm: 5 },
      pockets: { depth_mm: 20 },
    });
    expect(pieces.pocket.width).toBeLessThan(50);
    expect(pieceCorner(job, pieces)).toEqual({ corner: { style: 'rounded', size: 0 }, isLimited: true });
  });
});

describe('the corner of the seam line, a margin inside', () => {
  test('of a rounded corner is on the same centre', () => {
    expect(seamCorner({ style: 'rounded', size: 14 }, 4)).toEqual({ style: 'rounded', size: 10 });
  });

  test('of a clipped corner is parallel to the cut', () => {
    const { style, size } = seamCorner({ style: 'clipped', size: 12 }, 4);
    expect(style).toBe('clipped');
    // From (4, 4) the seam line runs along y = 4 to (4 + size, 4), which stands 4 mm from the cut x + y = 12.
    expect((4 + size + 4 - 12) / Math.SQRT2).toBeCloseTo(4, 12);
  });

  test('is a point where the corner is smaller than the margin takes', () => {
    expect(seamCorner({ style: 'rounded', size: 3 }, 4)).toEqual({ style: 'rounded', size: 0 });
    expect(seamCorner({ style: 'clipped', size: 2 }, 4)).toEqual({ style: 'clipped', size: 0 });
  });
});
