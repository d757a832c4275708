import { cross3, unit3, type Vec3 } from '../math/vec3.ts';
import type { CoverGrid } from './coverGrid.ts';

/** A place on a face of the outside, with the surface's directions there. */
export interface CoverPlace {
  readonly at: Vec3;
  /** Unit vectors: out of the grain side, toward rising s, toward rising v. */
  readonly out: Vec3;
  readonly alongS: Vec3;
  readonly alongV: Vec3;
}

/** Where a place of the pattern lies on the grid: in the cell between two columns and two rows. */
interface Cell {
  column: number;
  row: number;
  /** Shares of the way to the next column and to the next row. */
  across: number;
  up: number;
}

/**
 * Finds places of the pattern on the folded outside: s from the front cut edge, v from the tail cut edge, mm.
 * @param face grain side, flesh side, or the inner face, which board and pocket see
 */
export function coverSampler(
  grid: CoverGrid,
  face: 'grain' | 'flesh' | 'inner' = 'grain',
): (s: number, v: number) => CoverPlace {
  const { normals } = grid;
  const { rows, points } = grid[face];
  const cell: Cell = { column: 0, row: 0, across: 0, up: 0 };
  return (s, v) => {
    find(grid, s, v, cell);
    const out = unit3(mixed(normals, rows, cell));
    const at = 3 * ((cell.column + Math.round(cell.across)) * rows + cell.row);
    const up: Vec3 = [
      points[at + 3]! - points[at]!,
      points[at + 4]! - points[at + 1]!,
      points[at + 5]! - points[at + 2]!,
    ];
    const along = up[0] * out[0] + up[1] * out[1] + up[2] * out[2];
    const alongV = unit3([up[0] - along * out[0], up[1] - along * out[1], up[2] - along * out[2]]);
    return { at: mixed(points, rows, cell), out, alongS: cross3(alongV, out), alongV };
  };
}

/** Finds only where places of the pattern lie on the folded outside, as `coverSampler` does. */
export function placeSampler(grid: CoverGrid, face: 'grain' | 'inner'): (s: number, v: number) => Vec3 {
  const { rows, points } = grid[face];
  const cell: Cell = { column: 0, row: 0, across: 0, up: 0 };
  return (s, v) => {
    find(grid, s, v, cell);
    return mixed(points, rows, cell);
  };
}

function find({ s, uvs, inner: { columns, rows } }: CoverGrid, along: number, v: number, cell: Cell): void {
  // Places are mostly asked for in rows: the last cell is the first guess.
  let low = cell.column;
  if (!(s[low]! <= along && along < s[low + 1]!)) {
    low = 0;
    let high = columns - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (s[middle]! <= along) low = middle;
      else high = middle;
    }
  }
  cell.column = low;
  cell.across = within((along - s[low]!) / (s[low + 1]! - s[low]!));
  // Rows do not run level: their heights are those between the two columns.
  const height = (row: number): number => {
    const from = uvs[2 * (low * rows + row) + 1]!;
    return from + (uvs[2 * ((low + 1) * rows + row) + 1]! - from) * cell.across;
  };
  let below = cell.row;
  if (!(height(below) <= v && v < height(below + 1))) {
    below = 0;
    let above = rows - 1;
    while (above - below > 1) {
      const middle = (below + above) >> 1;
      if (height(middle) <= v) below = middle;
      else above = middle;
    }
  }
  const [a, b] = [height(below), height(below + 1)];
  cell.row = below;
  cell.up = b > a ? within((v - a) / (b - a)) : 0;
}

const within = (share: number): number => Math.max(0, Math.min(1, share));

function mixed(from: Float64Array, rows: number, { column, row, across, up }: Cell): Vec3 {
  const a = 3 * (column * rows + row);
  const b = a + 3 * rows;
  const [i, j, k, l] = [(1 - across) * (1 - up), (1 - across) * up, across * (1 - up), across * up];
  return [
    i * from[a]! + j * from[a + 3]! + k * from[b]! + l * from[b + 3]!,
    i * from[a + 1]! + j * from[a + 4]! + k * from[b + 1]! + l * from[b + 4]!,
    i * from[a + 2]! + j * from[a + 5]! + k * from[b + 2]! + l * from[b + 5]!,
  ];
}
