import { cross, subtract, type Vec2 } from './vec2.ts';

/** Twice the signed area of a closed polygon; positive where it runs counterclockwise. Shoelace formula. */
export const doubleArea = (polygon: readonly Vec2[]): number =>
  polygon.reduce((sum, point, i) => sum + cross(point, polygon[(i + 1) % polygon.length]!), 0);

/** Whether p, known to lie on the line through a and b, lies between them. */
const isBetween = (p: Vec2, a: Vec2, b: Vec2): boolean =>
  Math.min(a[0], b[0]) <= p[0] &&
  p[0] <= Math.max(a[0], b[0]) &&
  Math.min(a[1], b[1]) <= p[1] &&
  p[1] <= Math.max(a[1], b[1]);

/** Whether the extents of two segments overlap along one axis. */
const overlap = (a: number, b: number, c: number, d: number): boolean =>
  Math.max(a, b) >= Math.min(c, d) && Math.max(c, d) >= Math.min(a, b);

/**
 * Whether two segments have a point in common, by the signs of four turns; touching counts. Boxes that lie apart are
 * excluded first, since the signs are noise where both segments lie on one line.
 */
export function segmentsMeet(a: Vec2, b: Vec2, c: Vec2, d: Vec2): boolean {
  if (!overlap(a[0], b[0], c[0], d[0]) || !overlap(a[1], b[1], c[1], d[1])) return false;
  const turn = (p: Vec2, q: Vec2, r: Vec2): number => Math.sign(cross(subtract(q, p), subtract(r, p)));
  const [abc, abd, cda, cdb] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
  if (abc !== abd && cda !== cdb) return true;
  return (
    (abc === 0 && isBetween(c, a, b)) ||
    (abd === 0 && isBetween(d, a, b)) ||
    (cda === 0 && isBetween(a, c, d)) ||
    (cdb === 0 && isBetween(b, c, d))
  );
}

/** Gives each two sides of a closed polygon that cross or touch, but neighbours at their common corner, by the indices of their first corners. */
export function* meetings(polygon: readonly Vec2[]): Generator<readonly [number, number]> {
  const n = polygon.length;
  const at = (i: number): Vec2 => polygon[i % n]!;
  for (let i = 0; i < n; i++) {
    const [a, b, c] = [at(i), at(i + 1), at(i + 2)];
    const [ab, bc] = [subtract(b, a), subtract(c, b)];
    if (cross(ab, bc) === 0 && ab[0] * bc[0] + ab[1] * bc[1] <= 0) yield [i, (i + 1) % n];
    for (let j = i + 2; j < n; j++) if (j + 1 !== n + i && segmentsMeet(a, b, at(j), at(j + 1))) yield [i, j];
  }
}

/**
 * Whether a closed polygon bounds one area: three corners or more, no two alike in a row, no side crossing or touching
 * another but its neighbours at their common corner.
 */
export const isSimplePolygon = (polygon: readonly Vec2[]): boolean =>
  polygon.length >= 3 && doubleArea(polygon) !== 0 && meetings(polygon).next().done === true;
