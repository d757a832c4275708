import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureVertexGap, newVertexGap } from '../../../src/core/strip/vertexGap.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';

/** Nodes 0.5 apart along +x from the origin. */
const straight = Float64Array.from({ length: 22 }, (_, i) => (i % 2 === 0 ? i / 4 : 0));
const COUNT = 11;

const gapOf = (nodes: Float64Array, x: number, y: number, from: number) => {
  const out = newVertexGap();
  return { i: measureVertexGap(nodes, nodes.length / 2, x, y, from, out), ...out };
};

describe('a vertex beside a straight strip', () => {
  it('stands off it on the left, and its foot is between the middles of two edges', () => {
    // Node 4 lies at 2, its piece runs from 1.75 to 2.25; 2.1 is a fifth of the way from node to end of the piece.
    for (const from of [1, 4, 9])
      expect(gapOf(straight, 2.1, 0.3, from)).toEqual({
        i: 4,
        gap: expect.closeTo(0.3, 12),
        nx: expect.closeTo(0, 12),
        ny: expect.closeTo(1, 12),
        tx: expect.closeTo(1, 12),
        ty: expect.closeTo(0, 12),
        speed: expect.closeTo(0.5, 12),
        curvature: expect.closeTo(0, 12),
        u: expect.closeTo(0.2, 9),
      });
  });

  it('pokes through on the right', () => {
    expect(gapOf(straight, 2.1, -0.3, 4).gap).toBeCloseTo(-0.3, 12);
  });

  it('makes no contact beyond the first and the last piece', () => {
    expect(gapOf(straight, 0.24, 0.1, 5).i).toBe(-1);
    expect(gapOf(straight, 0.26, 0.1, 5).i).toBe(1);
    expect(gapOf(straight, 0.25, 0.1, 5).i).toBe(1);
    expect(gapOf(straight, 4.75, 0.1, 5).i).toBe(COUNT - 2);
    expect(gapOf(straight, 4.74, 0.1, 5).i).toBe(COUNT - 2);
    expect(gapOf(straight, 4.76, 0.1, 5).i).toBe(-1);
  });
});

describe('a vertex inside a strip bent to a circle', () => {
  const nodes = Float64Array.from({ length: 62 }, (_, i) => {
    const angle = (Math.floor(i / 2) * Math.PI) / 40;
    return 2 * (i % 2 === 0 ? Math.cos(angle) : Math.sin(angle));
  });

  it('stands 0.5 off the curve of curvature 1/2, on its left', () => {
    const { gap, curvature, nx, ny, tx, ty, speed } = gapOf(nodes, 1.5 * Math.cos(1), 1.5 * Math.sin(1), 3);
    expect(gap).toBeCloseTo(0.5, 2);
    expect(curvature).toBeCloseTo(0.5, 2);
    expect([nx, ny]).toEqual([expect.closeTo(-Math.cos(1), 4), expect.closeTo(-Math.sin(1), 4)]);
    expect([tx, ty]).toEqual([expect.closeTo(-Math.sin(1), 4), expect.closeTo(Math.cos(1), 4)]);
    expect(speed).toBeCloseTo((2 * Math.PI) / 40, 3);
  });

  it('has its foot where the curve runs square to the way to it, down to rounding, the same from every piece', () => {
    // A thousand times as large, so that an error of 1e-12 of a piece would show.
    const large = nodes.map((v) => 1000 * v);
    checkLaw(
      fc.property(
        fc.double({ min: 0.2, max: 2.1, noNaN: true }),
        fc.double({ min: 1200, max: 2900, noNaN: true }),
        fc.integer({ min: 1, max: 29 }),
        (angle, radius, from) => {
          const [x, y] = [radius * Math.cos(angle), radius * Math.sin(angle)];
          const { i, u, gap, nx, ny, tx, ty } = gapOf(large, x, y, from);
          const at = (c: number): number =>
            0.5 * (0.5 - u) ** 2 * nth(large, 2 * i - 2 + c) +
            (0.75 - u * u) * nth(large, 2 * i + c) +
            0.5 * (0.5 + u) ** 2 * nth(large, 2 * i + 2 + c);
          const [dx, dy] = [x - at(0), y - at(1)];
          expect(Math.abs(dx * tx + dy * ty)).toBeLessThan(1e-11);
          expect(dx * nx + dy * ny).toBeCloseTo(gap, 9);
          expect(Math.abs(u)).toBeLessThanOrEqual(0.5);
          expect([nx, ny]).toEqual([-ty, tx]);
        },
      ),
    );
  });

  it('lies in the middle of the curve round a right angle for a vertex on its bisector', () => {
    const bent = Float64Array.of(-3, 0, -2, 0, -1, 0, 0, 0, 0, 1, 0, 2, 0, 3);
    for (const from of [1, 3, 5]) {
      const { i, u, gap } = gapOf(bent, -0.3, 0.3, from);
      expect(i).toBe(3);
      expect(u).toBeCloseTo(0, 12);
      // The curve passes 3/4 (0, 0) + 1/8 (-1, 0) + 1/8 (0, 1) = (-0.125, 0.125).
      expect(gap).toBeCloseTo(0.175 * Math.SQRT2, 12);
    }
  });

  it("has its foot found where Newton's method leaves the piece, near the centre of the bend", () => {
    // In the piece of the bend p = (1, 1)/2 and q = (-1, 1), so (C - v) . C' = m . p + (1/2 + m . q) u + u^3; a vertex at
    // (-0.485, 0.365) makes it 0.06 - 0.1 u + u^3, whose slope at 0 points away from its one root, -0.4756.
    const bent = Float64Array.of(-3, 0, -2, 0, -1, 0, 0, 0, 0, 1, 0, 2, 0, 3);
    const { i, u } = gapOf(bent, -0.485, 0.365, 3);
    expect(i).toBe(3);
    expect(u).toBeCloseTo(-0.4756, 4);
    expect(0.06 - 0.1 * u + u ** 3).toBeCloseTo(0, 14);
    // The mirror image.
    expect(gapOf(bent, -0.365, 0.485, 3).u).toBeCloseTo(-u, 12);
  });

  it("has its foot found where Newton's method alone would go to and fro between two places", () => {
    // As above with c - 0.1 u + u^3, c = 0.1^1.5 / sqrt 2: from 0 to c / 0.1, and from there back to 0.
    const c = 0.1 ** 1.5 / Math.SQRT2;
    const bent = Float64Array.of(-3, 0, -2, 0, -1, 0, 0, 0, 0, 1, 0, 2, 0, 3);
    // m = (0.3 + c, c - 0.3) gives m . p = c and 1/2 + m . q = -0.1; the vertex is (-0.125, 0.125) - m.
    const { i, u } = gapOf(bent, -0.425 - c, 0.425 - c, 3);
    expect(i).toBe(3);
    expect(c - 0.1 * u + u ** 3).toBeCloseTo(0, 14);
    expect(gapOf(bent, -0.425 + c, 0.425 + c, 3).u).toBeCloseTo(-u, 12);
  });
});
