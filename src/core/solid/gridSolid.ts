import { TOLERANCE } from '../math/tolerance.ts';
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

/** Square of the sine below which columns and rows run alike, as where a layer stands upright: there is no telling its normal. */
const PARALLEL = 0.03 ** 2;

/**
 * Unit normals of a grid, column direction x row direction.
 *
 * A tangent is the mean of the unit tangents to both neighbours, so uneven spacing does not tilt it.
 */
export function gridNormals({ columns, rows, points }: Grid): Float64Array {
  const across = tangents(points, 3 * rows, columns, 3, rows);
  const normals = tangents(points, 3, rows, 3 * rows, columns);
  const unsure: number[] = [];
  for (let at = 0; at < points.length; at += 3) {
    const [ax, ay, az] = [across[at]!, across[at + 1]!, across[at + 2]!];
    const [x, y, z] = [normals[at]!, normals[at + 1]!, normals[at + 2]!];
    const nx = ay * z - az * y;
    const ny = az * x - ax * z;
    const nz = ax * y - ay * x;
    const square = nx * nx + ny * ny + nz * nz;
    if (square < PARALLEL * (ax * ax + ay * ay + az * az) * (x * x + y * y + z * z)) unsure.push(at);
    const length = Math.sqrt(square) || 1;
    normals[at] = nx / length;
    normals[at + 1] = ny / length;
    normals[at + 2] = nz / length;
  }
  if (unsure.length > 0) borrowNormals(normals, unsure, 3 * rows);
  return normals;
}

/** At every place of all lines the sum of the unit vectors from the place before it and to the place after it. */
function tangents(points: Float64Array, stride: number, count: number, beside: number, lines: number): Float64Array {
  const sums = new Float64Array(points.length);
  for (let line = 0; line < lines; line++)
    for (let i = 1, at = line * beside; i < count; i++, at += stride) {
      const next = at + stride;
      const dx = points[next]! - points[at]!;
      const dy = points[next + 1]! - points[at + 1]!;
      const dz = points[next + 2]! - points[at + 2]!;
      const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
      if (length < TOLERANCE.length) {
        addApart(sums, points, at, stride, count - i);
        addApart(sums, points, next, -stride, i);
        continue;
      }
      const scale = 1 / length;
      sums[at]! += dx * scale;
      sums[at + 1]! += dy * scale;
      sums[at + 2]! += dz * scale;
      sums[next]! += dx * scale;
      sums[next + 1]! += dy * scale;
      sums[next + 2]! += dz * scale;
    }
  return sums;
}

/** Adds the unit vector between a place and the nearest one apart from it in steps of `stride`, drawn along the line. */
function addApart(sums: Float64Array, points: Float64Array, at: number, stride: number, steps: number): void {
  for (let k = 2, other = at + 2 * stride; k <= steps; k++, other += stride) {
    const dx = points[other]! - points[at]!;
    const dy = points[other + 1]! - points[at + 1]!;
    const dz = points[other + 2]! - points[at + 2]!;
    const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
    if (length < TOLERANCE.length) continue;
    const scale = stride > 0 ? 1 / length : -1 / length;
    sums[at]! += dx * scale;
    sums[at + 1]! += dy * scale;
    sums[at + 2]! += dz * scale;
    return;
  }
}

/** Gives places where columns and rows run alike the normal of the nearest column on which they do not. */
function borrowNormals(normals: Float64Array, unsure: readonly number[], stride: number): void {
  const left = new Set(unsure);
  for (const at of unsure) {
    let [before, after] = [at - stride, at + stride];
    while (before >= 0 && left.has(before)) before -= stride;
    while (after < normals.length && left.has(after)) after += stride;
    const from = before >= 0 && (at - before <= after - at || after >= normals.length) ? before : after;
    if (from < normals.length) normals.copyWithin(at, from, from + 3);
  }
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
 * stay crisp. Column direction x row direction must point out of the outer face. Sheets of one shape share their triangles.
 */
export function gridSolid({ part, outer, inner, normals, uvs, faces }: Sheet): MeshData {
  const { columns, rows } = outer;
  const count = columns * rows;
  const { rim, indices, ends } = topologyOf(columns, rows);
  const vertices = 2 * count + 2 * rim.length;
  const positions = new Float32Array(3 * vertices);
  const normal = new Float32Array(3 * vertices);
  const uv = new Float32Array(2 * vertices);
  positions.set(outer.points, 0);
  positions.set(inner.points, 3 * count);
  normal.set(normals, 0);
  for (let k = 0, to = 3 * count; k < 3 * count; k++, to++) normal[to] = -normals[k]!;
  uv.set(uvs, 0);
  uv.set(uvs, 2 * count);
  const { points } = outer;
  for (let k = 0; k < rim.length; k++) {
    const { at, before, after } = rim[k]!;
    const dx = points[3 * after]! - points[3 * before]!;
    const dy = points[3 * after + 1]! - points[3 * before + 1]!;
    const dz = points[3 * after + 2]! - points[3 * before + 2]!;
    const [nx, ny, nz] = [normals[3 * at]!, normals[3 * at + 1]!, normals[3 * at + 2]!];
    const x = dy * nz - dz * ny;
    const y = dz * nx - dx * nz;
    const z = dx * ny - dy * nx;
    const length = Math.sqrt(x * x + y * y + z * z) || 1;
    for (let face = 0; face < 2; face++) {
      const from = face === 0 ? points : inner.points;
      const v = 2 * count + 2 * k + face;
      for (let c = 0; c < 3; c++) positions[3 * v + c] = from[3 * at + c]!;
      normal[3 * v] = x / length;
      normal[3 * v + 1] = y / length;
      normal[3 * v + 2] = z / length;
      uv[2 * v] = uvs[2 * at]!;
      uv[2 * v + 1] = uvs[2 * at + 1]!;
    }
  }
  return {
    part,
    positions,
    normals: normal,
    uvs: uv,
    indices,
    faces: [
      { face: faces.outer, start: 0, count: ends[0] },
      { face: faces.inner, start: ends[0], count: ends[1] - ends[0] },
      { face: faces.edge, start: ends[1], count: indices.length - ends[1] },
    ],
  };
}

/** What all sheets of one shape have in common. */
interface Topology {
  /** Grid points round the four cut edges, each edge from corner to corner, with their neighbours on it. */
  readonly rim: readonly { readonly at: number; readonly before: number; readonly after: number }[];
  /** Never changed: many solids hold it. */
  readonly indices: Uint32Array;
  /** Where the outer face ends in `indices`, and the inner one. */
  readonly ends: readonly [number, number];
}

const topologies = new Map<string, Topology>();
/** Shapes kept: those of one cover in all its positions, and some to spare. */
const MOST_SHAPES = 64;

function topologyOf(columns: number, rows: number): Topology {
  const key = `${columns} ${rows}`;
  const known = topologies.get(key);
  if (known) return known;
  if (topologies.size >= MOST_SHAPES) topologies.clear();
  const found = sheetTopology(columns, rows);
  topologies.set(key, found);
  return found;
}

function sheetTopology(columns: number, rows: number): Topology {
  const count = columns * rows;
  const quads = (columns - 1) * (rows - 1);
  const indices = new Uint32Array(6 * (2 * quads + 2 * (columns - 1 + rows - 1)));
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
  const outerEnd = n;
  for (let i = 0; i + 1 < columns; i++)
    for (let j = 0; j + 1 < rows; j++) {
      const at = count + i * rows + j;
      quad(at, at + 1, at + rows + 1, at + rows);
    }
  const innerEnd = n;
  // Walked with the sheet on the left as seen from outside: tail edge, last column, head edge, first column.
  const sides = [
    Array.from({ length: columns }, (_, i) => i * rows),
    Array.from({ length: rows }, (_, j) => (columns - 1) * rows + j),
    Array.from({ length: columns }, (_, i) => (columns - 1 - i) * rows + rows - 1),
    Array.from({ length: rows }, (_, j) => rows - 1 - j),
  ];
  let first = 2 * count;
  for (const side of sides) {
    for (let v = first + 2; v < first + 2 * side.length; v += 2) quad(v - 2, v - 1, v + 1, v);
    first += 2 * side.length;
  }
  const rim = sides.flatMap((side) =>
    side.map((at, k) => ({ at, before: side[k - 1] ?? at, after: side[k + 1] ?? at })),
  );
  return { rim, indices, ends: [outerEnd, innerEnd] };
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
  return { ...mesh, part, positions, normals, indices: turnedRound(mesh.indices) };
}

const roundOnes = new WeakMap<Uint32Array, Uint32Array>();

/** The same triangles, each the other way round. */
function turnedRound(indices: Uint32Array): Uint32Array {
  const known = roundOnes.get(indices);
  if (known) return known;
  const round = indices.slice();
  for (let k = 0; k < round.length; k += 3) {
    round[k + 1] = indices[k + 2]!;
    round[k + 2] = indices[k + 1]!;
  }
  roundOnes.set(indices, round);
  return round;
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
