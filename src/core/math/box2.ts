import { pointToSegment } from './polygonDistance.ts';
import type { Vec2 } from './vec2.ts';

/** A rectangle along the axes, from and to in each. */
export interface Box2 {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}

/** Distance of a point from a rectangle; 0 inside. */
const pointToBox = ([x, y]: Vec2, box: Box2): number =>
  Math.hypot(Math.max(box.x[0] - x, 0, x - box.x[1]), Math.max(box.y[0] - y, 0, y - box.y[1]));

/**
 * The shares of the way from a to b at which it enters and leaves a rectangle; entered after left where it misses it (Liang
 * and Barsky 1984, ACM Trans. Graph. 3(1), 1).
 */
export function stretchInside(a: Vec2, b: Vec2, box: Box2): readonly [enters: number, leaves: number] {
  let [enters, leaves] = [0, 1];
  for (const axis of [0, 1] as const) {
    const [from, to] = axis === 0 ? box.x : box.y;
    const step = b[axis] - a[axis];
    const [near, far] = [(from - a[axis]) / step, (to - a[axis]) / step];
    if (step === 0) {
      if (a[axis] < from || a[axis] > to) return [1, 0];
    } else {
      enters = Math.max(enters, Math.min(near, far));
      leaves = Math.min(leaves, Math.max(near, far));
    }
  }
  return [enters, leaves];
}

/** Least distance between the segment a b and a rectangle along the axes; 0 where they meet. */
export function segmentToBox(a: Vec2, b: Vec2, box: Box2): number {
  const [enters, leaves] = stretchInside(a, b, box);
  if (enters <= leaves) return 0;
  const corners = box.x.flatMap((x) => box.y.map((y): Vec2 => [x, y]));
  return Math.min(pointToBox(a, box), pointToBox(b, box), ...corners.map((corner) => pointToSegment(corner, a, b)));
}

/** The least rectangle that holds all lines; null where there is no point. */
export function reachOf(lines: readonly (readonly Vec2[])[]): Box2 | null {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const line of lines)
    for (const [x, y] of line) {
      left = Math.min(left, x);
      right = Math.max(right, x);
      bottom = Math.min(bottom, y);
      top = Math.max(top, y);
    }
  return left > right ? null : { x: [left, right], y: [bottom, top] };
}
