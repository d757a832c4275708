import { areaD, EndType, inflatePathsD, JoinType } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import { contourArea, contourLength, flattened } from '../../src/core/math/contour.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { kerfed } from '../../src/output/kerf.ts';
import { coverOf } from '../core/pattern/coverOf.ts';
import { boundsOf, toChain } from './outlineDistance.ts';

const stitched = { method: 'stitching', style: 'saddle', edgeMargin_mm: 4, pitch_mm: 4 };
const drawing = patternDrawing(
  coverOf({ seam: { ...stitched, cornerRadius_mm: 12 }, construction: { mouth: 'curved', strap: {} } }),
);

describe('a piece with the kerf of a laser allowed for', () => {
  test.each([0.1, 0.2, 0.4])('of %d mm is cut half a kerf outside its edge, all round', (kerf) => {
    for (const piece of drawing.pieces) {
      const cut = kerfed(piece, kerf);
      const edge = flattened(piece.outline, 1e-4);
      for (const point of flattened(cut.outline, 1e-4)) {
        expect(toChain(point, edge)).toBeGreaterThan(kerf / 2 - 0.0011);
        // A mitred corner stands out farther: at a right angle by the square root of two, at a scooped mouth by under two.
        expect(toChain(point, edge)).toBeLessThan(kerf);
      }
      const straight = flattened(cut.outline, 1e-4).filter((point) => toChain(point, edge) < kerf / 2 + 0.0011);
      expect(straight.length).toBeGreaterThanOrEqual(cut.outline.length - 4);
    }
  });

  test('grows a square-cornered piece by exactly one kerf each way', () => {
    const square = patternDrawing(coverOf({ seam: stitched })).pieces[0]!;
    const { width, height } = boundsOf(flattened(kerfed(square, 0.3).outline, 1e-4));
    expect(width).toBeCloseTo(square.width + 0.3, 4);
    expect(height).toBeCloseTo(square.height + 0.3, 4);
  });

  test('has the area of A + L k/2 and its corners (Steiner), and that of the polygon library shrunk back', () => {
    for (const piece of drawing.pieces) {
      const kerf = 0.3;
      const area = contourArea(kerfed(piece, kerf).outline);
      const steiner = contourArea(piece.outline) + (contourLength(piece.outline) * kerf) / 2;
      // Corners add at most a square of the kerf each; arcs are chords that stray by a thousandth.
      expect(Math.abs(area - steiner)).toBeLessThan(4 * kerf ** 2 + 0.001 * contourLength(piece.outline));
      const ring = flattened(kerfed(piece, kerf).outline, 1e-4).map(([x, y]) => ({ x, y }));
      const back = inflatePathsD([ring.slice(0, -1)], -kerf / 2, JoinType.Miter, EndType.Polygon, 4, 6);
      expect(Math.abs(areaD(back[0]!) / contourArea(piece.outline) - 1)).toBeLessThan(1e-5);
    }
  });

  test('has its holes smaller by the kerf, and still the same number', () => {
    const [piece] = drawing.pieces;
    const cut = kerfed(piece!, 0.2);
    expect(cut.layers.hole.length).toBe(piece!.holes);
    for (const hole of cut.layers.hole) expect(hole.kind === 'arc' && hole.radius).toBeCloseTo(0.4, 12);
  });

  test('of nothing is the piece itself, and out of range is refused', () => {
    expect(kerfed(drawing.pieces[0]!, 0)).toBe(drawing.pieces[0]);
    for (const kerf of [-0.1, 3, Number.NaN])
      expect(() => kerfed(drawing.pieces[0]!, kerf)).toThrow(/allowed: 0 to 2 mm/);
  });
});
