import { segmentsMeet } from './simplePolygon.ts';
import { cross, distance, subtract, type Vec2 } from './vec2.ts';

/** Distance of a point from the segment a b. */
export function pointToSegment(p: Vec2, a: Vec2, b: Vec2): number {
  const [dx, dy] = subtract(b, a);
  const along = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy || 1);
  const t = Math.max(0, Math.min(1, along));
  return distance(p, [a[0] + t * dx, a[1] + t * dy]);
}

const sides = (polygon: readonly Vec2[]): [Vec2, Vec2][] =>
  polygon.map((point, i) => [point, polygon[(i + 1) % polygon.length]!]);

/** Least distance between the outlines of two closed polygons; 0 where they meet. Every pair of sides is compared. */
export function outlineDistance(first: readonly Vec2[], second: readonly Vec2[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [a, b] of sides(first))
    for (const [c, d] of sides(second)) {
      if (segmentsMeet(a, b, c, d)) return 0;
      least = Math.min(
        least,
        pointToSegment(a, c, d),
        pointToSegment(b, c, d),
        pointToSegment(c, a, b),
        pointToSegment(d, a, b),
      );
    }
  return least;
}

/** Whether a point lies inside a closed polygon; counted by the sides that a ray crosses. */
export function isInside([x, y]: Vec2, polygon: readonly Vec2[]): boolean {
  const crossed = sides(polygon).filter(([a, b]) => {
    if (a[1] > y === b[1] > y) return false;
    const [from, to] = a[1] < b[1] ? [a, b] : [b, a];
    return cross(subtract(to, from), subtract([x, y], from)) > 0;
  });
  return crossed.length % 2 === 1;
}
