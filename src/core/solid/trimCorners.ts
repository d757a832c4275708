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
 * @param inset how far each column stands in from both edges, mm
 */
export function trimCorners(
  { grid, normals, uvs }: LaidSheet,
  height: number,
  inset: (column: number) => number,
): void {
  const { columns, rows, points } = grid;
  for (let i = 0; i < columns; i++) {
    const by = Math.min(inset(i), height / 2);
    if (by <= 0) continue;
    const at = (j: number): number => i * rows + j;
    const v = (j: number): number => uvs[2 * at(j) + 1]!;
    let low = 0;
    while (low + 1 < rows && v(low + 1) <= by) low++;
    let high = rows - 1;
    while (high > low + 1 && v(high - 1) >= height - by) high--;
    const mix = (from: number, to: number, share: number): readonly [number[], number[]] => {
      const read = (values: Float64Array): number[] =>
        [0, 1, 2].map((c) => values[3 * at(from) + c]! + share * (values[3 * at(to) + c]! - values[3 * at(from) + c]!));
      return [read(points), unit(read(normals))];
    };
    const tail = mix(low, low + 1, share(v(low), v(low + 1), by));
    const head = mix(high - 1, high, share(v(high - 1), v(high), height - by));
    const put = (j: number, [point, normal]: readonly [number[], number[]], place: number): void => {
      points.set(point, 3 * at(j));
      normals.set(normal, 3 * at(j));
      uvs[2 * at(j) + 1] = place;
    };
    for (let j = 0; j <= low; j++) put(j, tail, by);
    for (let j = rows - 1; j >= high; j--) put(j, head, height - by);
  }
}

const share = (from: number, to: number, at: number): number => (to > from ? (at - from) / (to - from) : 0);

function unit(a: number[]): number[] {
  const length = Math.hypot(...a) || 1;
  return a.map((c) => c / length);
}
