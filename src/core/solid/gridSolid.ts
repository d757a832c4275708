import { TOLERANCE } from '../math/tolerance.ts';
import { combine3, cross3, tripleAt, unit3 } from '../math/vec3.ts';
import type { Face, MeshData, PartName } from './meshData.ts';

/** Points of a sheet in columns and rows: three coordinates each, row by row within a column. */
export interface Grid {
  readonly columns: number;
  readonly rows: number;
  readonly points: Float64Array;
}

export const gridOf = (columns: number, rows: number): Grid => ({
  columns,
  rows,
  points: new Float64Array(3 * columns * rows),
});

/** Columns no nearer than this on the pattern, mm: the same place twice makes triangles without area. */
const NEAREST = 1e-4;

/**
 * Places from `from` to `to` in rising order, `to` among them; of two that nearly coincide the later one is kept.
 * `to` is given by itself because a place that sums up to it may lie a rounding beyond.
 */
export function columnPlaces(places: readonly number[], from: number, to: number): number[] {
  const inside = [...places.filter((at) => at >= from && at <= to), to].sort((a, b) => a - b);
  return inside.filter((at, i) => i === inside.length - 1 || inside[i + 1]! - at > NEAREST);
}

/**
 * Unit normals of a grid, column direction x row direction.
 *
 * A tangent is the mean of the unit tangents to both neighbours, so uneven spacing does not tilt it.
 */
export function gridNormals({ columns, rows, points }: Grid): Float64Array {
  const normals = new Float64Array(points.length);
  const a: [number, number, number] = [0, 0, 0];
  const b: [number, number, number] = [0, 0, 0];
  /** Adds the unit vector between a place and the nearest one apart from it in steps of `stride`, drawn in that sense. */
  const add = (into: [number, number, number], at: number, stride: number, steps: number): void => {
    for (let k = 1; k <= steps; k++) {
      const other = at + k * stride;
      const x = points[other]! - points[at]!;
      const y = points[other + 1]! - points[at + 1]!;
      const z = points[other + 2]! - points[at + 2]!;
      const length = Math.sqrt(x * x + y * y + z * z);
      if (length < TOLERANCE.length) continue;
      const scale = stride > 0 ? 1 / length : -1 / length;
      into[0] += x * scale;
      into[1] += y * scale;
      into[2] += z * scale;
      return;
    }
  };
  for (let i = 0; i < columns; i++) {
    for (let j = 0; j < rows; j++) {
      const at = 3 * (i * rows + j);
      a.fill(0);
      b.fill(0);
      add(a, at, 3 * rows, columns - 1 - i);
      add(a, at, -3 * rows, i);
      add(b, at, 3, rows - 1 - j);
      add(b, at, -3, j);
      const [x, y, z] = cross3(a, b);
      const length = Math.sqrt(x * x + y * y + z * z) || 1;
      normals[at] = x / length;
      normals[at + 1] = y / length;
      normals[at + 2] = z / length;
    }
  }
  return normals;
}

/** A sheet with thickness: its two faces as grids of one shape, and the outward normal of the outer one. */
export interface Sheet {
  readonly part: PartName;
  readonly outer: Grid;
  readonly inner: Grid;
  readonly normals: Float64Array;
  /** Place of each point on the flat pattern, two each, mm. */
  readonly uvs: Float64Array;
  readonly faces: { readonly outer: Face; readonly inner: Face; readonly edge: Face };
}

/**
 * Closes a sheet to a solid: outer face, inner face and the four cut edges, each with vertices of its own so that edges
 * stay crisp. Column direction x row direction must point out of the outer face.
 */
export function gridSolid({ part, outer, inner, normals, uvs, faces }: Sheet): MeshData {
  const { columns, rows } = outer;
  const count = columns * rows;
  const rim = 2 * (columns + rows);
  const vertices = 2 * count + 2 * rim;
  const positions = new Float32Array(3 * vertices);
  const normal = new Float32Array(3 * vertices);
  const uv = new Float32Array(2 * vertices);
  const quads = (columns - 1) * (rows - 1);
  const rimQuads = 2 * (columns - 1 + rows - 1);
  const indices = new Uint32Array(6 * (2 * quads + rimQuads));

  positions.set(outer.points, 0);
  positions.set(inner.points, 3 * count);
  normal.set(normals, 0);
  normal.set(
    normals.map((component) => -component),
    3 * count,
  );
  uv.set(uvs, 0);
  uv.set(uvs, 2 * count);

  let n = 0;
  const quad = (a: number, b: number, c: number, d: number): void => {
    indices[n++] = a;
    indices[n++] = b;
    indices[n++] = c;
    indices[n++] = a;
    indices[n++] = c;
    indices[n++] = d;
  };
  for (let i = 0; i + 1 < columns; i++)
    for (let j = 0; j + 1 < rows; j++) {
      const at = i * rows + j;
      quad(at, at + rows, at + rows + 1, at + 1);
    }
  const innerStart = n;
  for (let i = 0; i + 1 < columns; i++)
    for (let j = 0; j + 1 < rows; j++) {
      const at = count + i * rows + j;
      quad(at, at + 1, at + rows + 1, at + rows);
    }
  const rimStart = n;
  // Walked with the sheet on the left as seen from outside: tail edge, last column, head edge, first column.
  const sides = [
    Array.from({ length: columns }, (_, i) => i * rows),
    Array.from({ length: rows }, (_, j) => (columns - 1) * rows + j),
    Array.from({ length: columns }, (_, i) => (columns - 1 - i) * rows + rows - 1),
    Array.from({ length: rows }, (_, j) => rows - 1 - j),
  ];
  let at = 2 * count;
  for (const side of sides) {
    side.forEach((point, k) => {
      const before = tripleAt(outer.points, side[k - 1] ?? point);
      const after = tripleAt(outer.points, side[k + 1] ?? point);
      const outward = unit3(cross3(combine3(after, 1, before, -1), tripleAt(normals, point)));
      for (const [grid, offset] of [
        [outer, 0],
        [inner, 1],
      ] as const) {
        const v = at + 2 * k + offset;
        positions.set(tripleAt(grid.points, point), 3 * v);
        normal.set(outward, 3 * v);
        uv.set(uvs.subarray(2 * point, 2 * point + 2), 2 * v);
      }
      if (k > 0) {
        const v = at + 2 * k;
        quad(v - 2, v - 1, v + 1, v);
      }
    });
    at += 2 * side.length;
  }
  return {
    part,
    positions,
    normals: normal,
    uvs: uv,
    indices,
    faces: [
      { face: faces.outer, start: 0, count: innerStart },
      { face: faces.inner, start: innerStart, count: rimStart - innerStart },
      { face: faces.edge, start: rimStart, count: n - rimStart },
    ],
  };
}

/** A grid displaced along normals by a distance of its own in each column, mm. */
export function displaced(grid: Grid, normals: Float64Array, distance: (column: number) => number): Grid {
  const out = gridOf(grid.columns, grid.rows);
  for (let i = 0; i < grid.columns; i++) {
    const by = distance(i);
    for (let k = 3 * i * grid.rows; k < 3 * (i + 1) * grid.rows; k++)
      out.points[k] = grid.points[k]! + by * normals[k]!;
  }
  return out;
}

/** The mirror image of a solid in the plane where one coordinate is 0, y (1) or z (2), under another part's name. */
export function mirrored(mesh: MeshData, part: PartName, axis: 1 | 2 = 1): MeshData {
  const positions = mesh.positions.slice();
  const normals = mesh.normals.slice();
  for (let k = axis; k < positions.length; k += 3) {
    positions[k] = -positions[k]!;
    normals[k] = -normals[k]!;
  }
  const indices = mesh.indices.slice();
  for (let k = 0; k < indices.length; k += 3) {
    indices[k + 1] = mesh.indices[k + 2]!;
    indices[k + 2] = mesh.indices[k + 1]!;
  }
  return { ...mesh, part, positions, normals, indices };
}

/** A solid moved by a vector, mm. */
export function moved(mesh: MeshData, x: number, y: number, z: number): MeshData {
  if (x === 0 && y === 0 && z === 0) return mesh;
  const positions = mesh.positions.slice();
  for (let k = 0; k < positions.length; k += 3) {
    positions[k]! += x;
    positions[k + 1]! += y;
    positions[k + 2]! += z;
  }
  return { ...mesh, positions };
}
