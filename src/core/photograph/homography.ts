import type { Vec2 } from '../math/vec2.ts';

/** A projective map of the plane: nine numbers by rows, the last of them 1 or next to it. */
export type Homography = readonly number[];

/** Where a projective map takes a point. */
export function mapped(h: Homography, [x, y]: Vec2): Vec2 {
  const w = h[6]! * x + h[7]! * y + h[8]!;
  return [(h[0]! * x + h[1]! * y + h[2]!) / w, (h[3]! * x + h[4]! * y + h[5]!) / w];
}

/** The map that goes first through `b`, then through `a`. */
const product = (a: Homography, b: Homography): number[] =>
  Array.from({ length: 9 }, (_, i) => {
    const row = 3 * Math.floor(i / 3);
    return a[row]! * b[i % 3]! + a[row + 1]! * b[(i % 3) + 3]! + a[row + 2]! * b[(i % 3) + 6]!;
  });

/** Shift and scale that bring points to mean 0 and mean distance sqrt 2 (Hartley 1997, In defense of the eight-point algorithm). */
function normaliser(points: readonly Vec2[]): { by: (point: Vec2) => Vec2; map: Homography; back: Homography } {
  const n = points.length;
  const x = points.reduce((sum, point) => sum + point[0], 0) / n;
  const y = points.reduce((sum, point) => sum + point[1], 0) / n;
  const far = points.reduce((sum, point) => sum + Math.hypot(point[0] - x, point[1] - y), 0) / n;
  const k = far > 0 ? Math.SQRT2 / far : 1;
  return {
    by: (point) => [k * (point[0] - x), k * (point[1] - y)],
    map: [k, 0, -k * x, 0, k, -k * y, 0, 0, 1],
    back: [1 / k, 0, x, 0, 1 / k, y, 0, 0, 1],
  };
}

/**
 * The projective map that takes `from` to `to` with the least squares of the linear equations (direct linear transformation,
 * Hartley and Zisserman, Multiple View Geometry, 4.1), its last element 1 in normalised coordinates.
 *
 * @returns null for fewer than four points, or where they stand in a line on either side
 */
export function homographyBetween(from: readonly Vec2[], to: readonly Vec2[]): Homography | null {
  if (from.length < 4) return null;
  const [a, b] = [normaliser(from), normaliser(to)];
  const normal = Array.from({ length: 8 }, () => new Float64Array(9));
  const addRow = (row: readonly number[]): void => {
    for (let i = 0; i < 8; i++) for (let k = 0; k < 9; k++) normal[i]![k]! += row[i]! * row[k]!;
  };
  from.forEach((point, i) => {
    const [x, y] = a.by(point);
    const [u, v] = b.by(to[i]!);
    addRow([x, y, 1, 0, 0, 0, -u * x, -u * y, u]);
    addRow([0, 0, 0, x, y, 1, -v * x, -v * y, v]);
  });
  const h = eliminated(normal);
  if (h === null) return null;
  const [p, q, r, t, u, v, w, x] = h as [number, number, number, number, number, number, number, number];
  const determinant = p * (u - v * x) - q * (t - v * w) + r * (t * x - u * w);
  return Math.abs(determinant) < FLAT ? null : product(b.back, product([...h, 1], a.map));
}

/** Determinant, in normalised coordinates, of a map that lays the plane on a line. */
const FLAT = 1e-6;

/** Solves eight equations by elimination with pivots; null where they hang together. */
function eliminated(rows: readonly Float64Array[]): number[] | null {
  const n = rows.length;
  const open = [...rows];
  for (let i = 0; i < n; i++) {
    let best = i;
    for (let k = i + 1; k < n; k++) if (Math.abs(open[k]![i]!) > Math.abs(open[best]![i]!)) best = k;
    [open[i], open[best]] = [open[best]!, open[i]!];
    const pivot = open[i]![i]!;
    if (!(Math.abs(pivot) > 1e-10)) return null;
    for (let k = 0; k < n; k++) {
      if (k === i) continue;
      const factor = open[k]![i]! / pivot;
      for (let j = i; j <= n; j++) open[k]![j]! -= factor * open[i]![j]!;
    }
  }
  return open.map((row, i) => row[n]! / row[i]!);
}
