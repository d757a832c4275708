import { distance, type Vec2 } from './vec2.ts';

/** A rectangle along the axes, from and to in each. */
export interface Box2 {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}

/** Distance of a point from a rectangle; 0 inside. */
const pointToBox = ([x, y]: Vec2, box: Box2): number =>
  Math.hypot(Math.max(box.x[0] - x, 0, x - box.x[1]), Math.max(box.y[0] - y, 0, y - box.y[1]));

/** Least distance between the segment a b and a rectangle along the axes; 0 where they meet. */
export function segmentToBox(a: Vec2, b: Vec2, box: Box2): number {
  // Clipped to the slabs of the rectangle (Liang and Barsky 1984): what is left of it lies inside.
  const step: Vec2 = [b[0] - a[0], b[1] - a[1]];
  let [from, to] = [0, 1];
  for (const axis of [0, 1] as const) {
    const [low, high] = axis === 0 ? box.x : box.y;
    const ends = [(low - a[axis]) / step[axis], (high - a[axis]) / step[axis]] as const;
    if (step[axis] === 0) {
      if (a[axis] < low || a[axis] > high) to = -1;
      continue;
    }
    from = Math.max(from, Math.min(...ends));
    to = Math.min(to, Math.max(...ends));
  }
  if (from <= to) return 0;
  const length2 = step[0] ** 2 + step[1] ** 2;
  const corners: Vec2[] = box.x.flatMap((x) => box.y.map((y): Vec2 => [x, y]));
  return Math.min(
    pointToBox(a, box),
    pointToBox(b, box),
    ...corners.map((corner) => {
      const along = length2 === 0 ? 0 : ((corner[0] - a[0]) * step[0] + (corner[1] - a[1]) * step[1]) / length2;
      const t = Math.max(0, Math.min(1, along));
      return distance(corner, [a[0] + t * step[0], a[1] + t * step[1]]);
    }),
  );
}
