import type { Corner } from '../math/corner.ts';
import { combine3, tripleAt, unit3, type Vec3 } from '../math/vec3.ts';
import type { Grid } from './gridSolid.ts';

/** A laid sheet: points, normals and pattern places, by columns and rows. */
export interface LaidSheet {
  readonly grid: Grid;
  readonly normals: Float64Array;
  readonly uvs: Float64Array;
}

/**
 * Takes the corners off a sheet: rows that lie nearer to the tail or head edge than a column's inset are drawn in to it,
 * along the column. Normals are those of the whole sheet, so a cut leaves the surface as it was.
 * @param fromEdge distance of each column from the cut edge that it runs along, mm
 */
export function trimCorners(
  { grid, normals, uvs }: LaidSheet,
  height: number,
  corner: Corner,
  fromEdge: (column: number) => number,
): void {
  const { columns, rows, points } = grid;
  for (let i = 0; i < columns; i++) {
    const by = Math.min(cornerInset(corner, fromEdge(i)), height / 2);
    if (by <= 0) continue;
    const at = (j: number): number => i * rows + j;
    const v = (j: number): number => uvs[2 * at(j) + 1]!;
    let low = 0;
    while (low + 1 < rows && v(low + 1) <= by) low++;
    let high = rows - 1;
    while (high > low + 1 && v(high - 1) >= height - by) high--;
    const mix = (from: number, to: number, share: number): readonly [point: Vec3, normal: Vec3] => {
      const between = (values: Float64Array): Vec3 =>
        combine3(tripleAt(values, at(from)), 1 - share, tripleAt(values, at(to)), share);
      return [between(points), unit3(between(normals))];
    };
    const tail = mix(low, low + 1, share(v(low), v(low + 1), by));
    const head = mix(high - 1, high, share(v(high - 1), v(high), height - by));
    const put = (j: number, [point, normal]: readonly [Vec3, Vec3], place: number): void => {
      points.set(point, 3 * at(j));
      normals.set(normal, 3 * at(j));
      uvs[2 * at(j) + 1] = place;
    };
    for (let j = 0; j <= low; j++) put(j, tail, by);
    for (let j = rows - 1; j >= high; j--) put(j, head, height - by);
  }
}

const share = (from: number, to: number, at: number): number => (to > from ? (at - from) / (to - from) : 0);

/** Columns over one rounded corner. */
const STEPS = 6;

/**
 * Distances from the cut edge at which a corner wants columns, mm: along its arc, and where the cut crosses a row.
 * @param rows distances of the rows near the edge from it, mm
 */
export function cornerStops(corner: Corner, rows: readonly number[]): number[] {
  const { style, size } = corner;
  if (size === 0) return [];
  const arc = Array.from({ length: STEPS }, (_, i) => size * (1 - Math.cos(((i + 1) * Math.PI) / 2 / STEPS)));
  // Both kinds of corner are symmetric in their diagonal.
  return [size, ...(style === 'rounded' ? arc : []), ...rows.map((v) => cornerInset(corner, v))];
}

/**
 * How far the end of a column stands in from the straight edge to follow the corner of the piece, mm.
 * @param fromEdge distance of the column from the cut edge it runs along, mm
 */
function cornerInset({ style, size }: Corner, fromEdge: number): number {
  if (fromEdge >= size) return 0;
  const rest = size - Math.max(0, fromEdge);
  return style === 'clipped' ? rest : size - Math.sqrt(Math.max(0, size * size - rest * rest));
}
