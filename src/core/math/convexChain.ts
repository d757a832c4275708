import { cross, subtract, type Vec2 } from './vec2.ts';

/**
 * Pulls a string taut from the first point of a chain to the last, keeping every point on its left.
 *
 * The chain's points are the pegs, in the order in which the string passes them; a peg is kept only where the string
 * turns left round it. One pass with a stack, as in Graham's scan (Graham 1972, Inf. Proc. Letters 1(4), 132), which
 * needs no sorting here because the chain is already in order.
 *
 * @param points chain of two or more points; neighbours that coincide, and pegs on a straight run, are dropped
 * @returns indices of the pegs that the taut string touches, the first and last point always among them
 */
export function convexChain(points: readonly Vec2[]): number[] {
  const kept: number[] = [];
  points.forEach((point, index) => {
    while (kept.length >= 2) {
      const last = points[kept[kept.length - 1]!]!;
      const before = points[kept[kept.length - 2]!]!;
      if (cross(subtract(last, before), subtract(point, last)) > 0) break;
      kept.pop();
    }
    kept.push(index);
  });
  return kept;
}
