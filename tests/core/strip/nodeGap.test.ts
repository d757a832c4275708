import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureNodeGap, type NodeGap, nearestEdge } from '../../../src/core/strip/nodeGap.ts';
import { growOutline } from '../../../src/core/strip/obstacle.ts';
import { checkLaw } from '../../laws.ts';

/** 4 wide and 2 high about the origin, counter-clockwise: edges bottom, right, top, left. */
const box = growOutline([-2, -1, 2, -1, 2, 1, -2, 1], true, 0, 1);
/** An open corner: along +x to (2, 0), then up; solid on the left. */
const corner = growOutline([0, 0, 2, 0, 2, 3], false, 0, 1);

function gapFrom(obstacle: typeof box, x: number, y: number, from: number) {
  const out: NodeGap = { gap: 7, nx: 0, ny: 0, past: true };
  const edge = measureNodeGap(obstacle, x, y, from, out);
  return { edge, ...out };
}

describe('the edge nearest to a point', () => {
  it.each([
    [0.5, -3, 0],
    [5, 0.2, 1],
    [0.5, 1.2, 2],
    [-2.5, 0, 3],
    [-1.9, 0, 3],
    [1.5, -0.9, 0],
  ])('(%d, %d) is number %d of a closed outline', (x, y, edge) => {
    expect(nearestEdge(box, x, y)).toBe(edge);
  });

  it('is one that an open outline has: none joins its last point to its first', () => {
    expect(nearestEdge(corner, 0.9, 1.6)).toBe(1);
    expect(nearestEdge(corner, 0.4, 0.3)).toBe(0);
    expect(nearestEdge(corner, -9, 0)).toBe(0);
    expect(nearestEdge(corner, 2, 9)).toBe(1);
  });
});

describe('the gap of a node', () => {
  it.each([
    ['below', 0.5, -3, { edge: 0, gap: 2, nx: 0, ny: -1 }],
    ['right of', 5, 0.2, { edge: 1, gap: 3, nx: 1, ny: 0 }],
    ['above', 0.5, 1.25, { edge: 2, gap: 0.25, nx: 0, ny: 1 }],
    ['left of', -2.5, 0, { edge: 3, gap: 0.5, nx: -1, ny: 0 }],
  ])('%s a box is its distance along the normal', (_, x, y, expected) => {
    const { nx, ny, ...rest } = gapFrom(box, x, y, expected.edge);
    expect(rest).toEqual({ edge: expected.edge, gap: expected.gap, past: false });
    expect([nx, ny]).toEqual([expect.closeTo(expected.nx, 12), expect.closeTo(expected.ny, 12)]);
  });

  it('inside is its depth, negative', () => {
    expect(gapFrom(box, 0.5, -0.75, 0)).toMatchObject({ edge: 0, gap: -0.25, past: false });
  });

  it('past a corner is the distance from the corner, 5 for 3 and 4, from either edge', () => {
    for (const from of [0, 1]) {
      const { edge, ...rest } = gapFrom(box, 5, -5, from);
      expect([0, 1]).toContain(edge);
      expect(rest).toEqual({ gap: 5, nx: 0.6, ny: -0.8, past: true });
    }
  });

  it('on the very corner takes a normal of the edge', () => {
    expect(gapFrom(box, 2, -1, 0)).toMatchObject({ gap: expect.closeTo(0, 12) });
  });

  it('past the ends of an open outline is none at all', () => {
    expect(gapFrom(corner, -1, -0.5, 0)).toMatchObject({ edge: 0, gap: Infinity, past: false });
    expect(gapFrom(corner, 2.5, 4, 1)).toMatchObject({ edge: 1, gap: Infinity, past: false });
  });

  it('of an open outline is found from its other edge', () => {
    expect(gapFrom(corner, 3, 1, 0)).toMatchObject({ edge: 1, gap: 1, nx: 1 });
    expect(gapFrom(corner, 1, -2, 1)).toMatchObject({ edge: 0, gap: 2, ny: -1 });
  });

  it('round a closed outline walks over its first and its last point', () => {
    expect(gapFrom(box, -3, 0.1, 0)).toMatchObject({ edge: 3, gap: 1 });
    expect(gapFrom(box, 0.1, -3, 3)).toMatchObject({ edge: 0, gap: 2 });
  });

  it('outside a convex outline is the same from the nearest edge and from those beside it', () => {
    const round = growOutline([-2, -1, 2, -1, 2, 1, -2, 1], true, 0.4, 0.3);
    const count = round.x.length;
    checkLaw(
      fc.property(
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        fc.double({ min: 3, max: 9, noNaN: true }),
        fc.integer({ min: -1, max: 1 }),
        (angle, radius, beside) => {
          const [x, y] = [radius * Math.cos(angle), radius * Math.sin(angle)];
          const edge = nearestEdge(round, x, y);
          const near = gapFrom(round, x, y, edge);
          const walked = gapFrom(round, x, y, (edge + beside + count) % count);
          expect(walked.gap).toBeCloseTo(near.gap, 9);
          expect(walked.nx).toBeCloseTo(near.nx, 9);
          expect(walked.ny).toBeCloseTo(near.ny, 9);
          expect(Math.hypot(walked.nx, walked.ny)).toBeCloseTo(1, 12);
        },
      ),
    );
  });
});
