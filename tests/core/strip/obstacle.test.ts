import { describe, expect, it } from 'vitest';
import { growOutline, type Obstacle } from '../../../src/core/strip/obstacle.ts';
import { nth } from '../../nth.ts';

const SQUARE = [0, 0, 3, 0, 3, 2, 0, 2];
const FACET = Math.PI / 12;

/** Points turned by one radian about the origin, so that no direction is a special one. */
const turned = (points: readonly number[]): number[] =>
  points.map((_, i) => {
    const [x, y] = [nth(points, i - (i % 2)), nth(points, i - (i % 2) + 1)];
    return i % 2 === 0 ? x * Math.cos(1) - y * Math.sin(1) : x * Math.sin(1) + y * Math.cos(1);
  });
const pointsOf = ({ x, y }: Obstacle): number[] => [...x].flatMap((v, i) => [v, nth(y, i)]);
const closeTo = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 12));

function perimeter({ x, y, closed }: Obstacle): number {
  let sum = 0;
  for (let i = closed ? 0 : 1; i < x.length; i++) {
    const before = (i + x.length - 1) % x.length;
    sum += Math.hypot(nth(x, i) - nth(x, before), nth(y, i) - nth(y, before));
  }
  return sum;
}

const heading = (angle: number): number[] => [Math.cos(angle), Math.sin(angle)];

/** Distance of a point from an open outline, by its edges one after the other. */
function distanceTo({ x, y }: Obstacle, px: number, py: number): number {
  let least = Infinity;
  for (let i = 1; i < x.length; i++) {
    const [ex, ey] = [nth(x, i) - nth(x, i - 1), nth(y, i) - nth(y, i - 1)];
    const share = ((px - nth(x, i - 1)) * ex + (py - nth(y, i - 1)) * ey) / (ex * ex + ey * ey);
    const at = Math.max(0, Math.min(1, share));
    least = Math.min(least, Math.hypot(px - nth(x, i - 1) - at * ex, py - nth(y, i - 1) - at * ey));
  }
  return least;
}

function turnAt({ x, y }: Obstacle, i: number): number {
  const before = Math.atan2(nth(y, i) - nth(y, i - 1), nth(x, i) - nth(x, i - 1));
  const after = Math.atan2(nth(y, i + 1) - nth(y, i), nth(x, i + 1) - nth(x, i));
  return Math.atan2(Math.sin(after - before), Math.cos(after - before));
}

describe('an outline grown by an offset', () => {
  it('is as long as the outline plus offset times turning, less what the facets cut (Steiner)', () => {
    const grown = growOutline(SQUARE, true, 0.5, FACET);
    const facets = 24 * 2 * 0.5 * Math.sin(FACET / 2);
    expect(perimeter(grown)).toBeCloseTo(10 + facets, 12);
    expect(perimeter(growOutline(SQUARE, true, 0.5, 0.001))).toBeCloseTo(10 + Math.PI, 6);
  });

  it('keeps every vertex at the offset from the corner it came from', () => {
    const grown = growOutline(SQUARE, true, 0.5, FACET);
    grown.x.forEach((x, v) => {
      const corner = nth(grown.source, v);
      expect(Math.hypot(x - nth(SQUARE, 2 * corner), nth(grown.y, v) - nth(SQUARE, 2 * corner + 1))).toBeCloseTo(
        0.5,
        12,
      );
    });
  });

  it('meets moved edges at an inside corner', () => {
    const grown = growOutline([0, 0, 2, 0, 2, -2], false, 0.5, FACET);
    expect([grown.x[1], grown.y[1]].map((v) => Math.round(v! * 1e12) / 1e12)).toEqual([1.5, -0.5]);
  });

  it('ends square on an open outline, and rounds an outside corner by facets whose corners lie on the arc', () => {
    const grown = growOutline(turned([0, 0, 2, 0, 2, 2]), false, 0.5, Math.PI / 4);
    const half = 0.5 * Math.SQRT1_2;
    expect(pointsOf(grown)).toEqual(closeTo(turned([0, -0.5, 2, -0.5, 2 + half, -half, 2.5, 0, 2.5, 2])));
    expect([...grown.source]).toEqual([0, 1, 1, 1, 2]);
  });

  it('has one vertex where a corner turns by up to half a facet, where the moved edges meet, and more beyond', () => {
    const bend = (turn: number) => turned([0, 0, 1, 0, 1 + Math.cos(turn), Math.sin(turn)]);
    const reach = 0.5 / Math.cos(0.1);
    const [x, y] = [1 + reach * Math.sin(0.1), -reach * Math.cos(0.1)];
    expect(pointsOf(growOutline(bend(0.2), false, 0.5, 0.5)).slice(2, 4)).toEqual(closeTo(turned([x, y])));
    expect([0.2, 0.3, 0.6].map((turn) => growOutline(bend(turn), false, 0.5, 0.5).x.length)).toEqual([3, 4, 5]);
  });

  it('stays within ten offsets of an inside corner, however sharp', () => {
    const { x, y } = growOutline([0, 0, 1, 0, 0, -0.01], false, 0.5, FACET);
    expect(Math.hypot(nth(x, 1) - 1, nth(y, 1))).toBeCloseTo(5, 9);
  });

  it('drops what a hollow leaves no room for: no vertex is nearer than the offset, and no edge runs backward', () => {
    // A round back with boards folded back on both sides, and the same with a back that is flat and narrower than its growth.
    const board = (swing: number): number[] => [5 * Math.cos(swing), 1 + 5 * Math.sin(swing)];
    const round = Array.from({ length: 49 }, (_, i) => heading(Math.PI / 2 + (Math.PI * i) / 48)).flat();
    const between = (swing: number, back: readonly number[]): number[] => {
      const [x, y] = board(swing);
      return turned([x!, y!, ...back, x!, -y!]);
    };
    for (const swing of [0.05, 0.6, 1.5, 2.2]) {
      for (const back of [round, [0, 1, 0, -1]]) {
        const outline = between(swing, back);
        const grown = growOutline(outline, false, 1.2, FACET);
        const last = grown.x.length - 1;
        const dense = growOutline(outline, false, 0, FACET);
        grown.x.forEach((x, i) => {
          const least = distanceTo(dense, x, nth(grown.y, i));
          if (i > 0 && i < last) expect(least).toBeGreaterThan(1.2 * Math.cos(FACET / 2) - 1e-9);
          if (i > 0 && i < last) expect(least).toBeLessThan(1.2 / Math.cos(FACET / 4) + 1e-9);
        });
        for (let i = 1; i < last; i++) expect(Math.abs(turnAt(grown, i))).toBeLessThan(2.5);
      }
    }
  });

  it('rounds a step that is lower than the offset only as far as its foot lies clear of the arc', () => {
    // A step of 0.1 under leather of 0.5: on its arc round the corner down to the height of the lower floor's own growth.
    const { x, y } = growOutline([9, 0, 0, 0, 0, -0.1, -9, -0.1], false, 0.5, 0.01);
    const foot = x.findIndex((_, i) => i > 1 && nth(y, i) < 0.4 + 1e-9);
    expect(nth(x, foot)).toBeCloseTo(-0.3, 4);
    x.forEach((vx, i) => {
      if (i > 0) expect(vx).toBeLessThan(nth(x, i - 1));
      expect(nth(y, i)).toBeGreaterThan(0.4 - 1e-9);
    });
  });

  it('takes points that differ by rounding alone as one, whose direction means nothing', () => {
    const noisy = [0, 0, 2, 0, 2, 1e-16, 2 - 1e-16, -1e-16, 2, 2];
    expect(pointsOf(growOutline(noisy, false, 0.5, FACET))).toEqual(
      closeTo(pointsOf(growOutline([0, 0, 2, 0, 2, 2], false, 0.5, FACET))),
    );
  });

  it('keeps points that share only one coordinate with their neighbour or with the first', () => {
    expect(growOutline([0, 0, 2, 0, 2, 1, 0, 1], true, 0, FACET).x.length).toBe(4);
    expect(growOutline([0, 0, 2, 1, 0, 1, -2, 0], true, 0, FACET).x.length).toBe(4);
    expect(growOutline([0, 0, 2, 0, 0, 0], false, 0, FACET).x.length).toBe(3);
    expect(growOutline([0, 0, 2, 0, 0, 0], true, 0, FACET).x.length).toBe(2);
    expect(growOutline([3, 3], true, 0, FACET).x.length).toBe(1);
  });

  it('is the outline itself at offset 0', () => {
    const grown = growOutline(SQUARE, true, 0, FACET);
    expect(Array.from(grown.x)).toEqual([0, 3, 3, 0]);
    expect(Array.from(grown.y)).toEqual([0, 0, 2, 2]);
  });

  it('ignores points that repeat, also the first at the end of a closed outline', () => {
    const repeated = [0, 0, 0, 0, 3, 0, 3, 2, 3, 2, 0, 2, 0, 0];
    expect(growOutline(repeated, true, 0.5, FACET).x).toEqual(growOutline(SQUARE, true, 0.5, FACET).x);
  });

  it('has nothing to grow from fewer than two points, and says so by being short', () => {
    expect(growOutline([], true, 1, FACET).x.length).toBe(0);
    expect(growOutline([1, 1, 1, 1], false, 1, FACET).x.length).toBe(1);
  });
});
