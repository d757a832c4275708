import { describe, expect, it } from 'vitest';
import { growOutline, type Obstacle } from '../../../src/core/strip/obstacle.ts';

const SQUARE = [0, 0, 3, 0, 3, 2, 0, 2];
const FACET = Math.PI / 12;

function perimeter({ x, y, closed }: Obstacle): number {
  let sum = 0;
  for (let i = closed ? 0 : 1; i < x.length; i++) {
    const before = (i + x.length - 1) % x.length;
    sum += Math.hypot(x[i]! - x[before]!, y[i]! - y[before]!);
  }
  return sum;
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
      const corner = grown.source[v]!;
      expect(Math.hypot(x - SQUARE[2 * corner]!, grown.y[v]! - SQUARE[2 * corner + 1]!)).toBeCloseTo(0.5, 12);
    });
  });

  it('meets moved edges at an inside corner', () => {
    const grown = growOutline([0, 0, 2, 0, 2, -2], false, 0.5, FACET);
    expect([grown.x[1], grown.y[1]].map((v) => Math.round(v! * 1e12) / 1e12)).toEqual([1.5, -0.5]);
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
