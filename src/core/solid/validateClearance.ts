import { TOLERANCE } from '../math/tolerance.ts';
import { squaredTriangleDistance } from '../math/triangleDistance.ts';
import { combine3, cross3, dot3, tripleAt, unit3, type Vec3 } from '../math/vec3.ts';
import type { MeshData } from './meshData.ts';
import { weld } from './validateSolid.ts';

/** How far one part reaches into another, and where it is deepest. */
export interface Penetration {
  /** Part that reaches in, and part reached into. */
  readonly a: MeshData['part'];
  readonly b: MeshData['part'];
  readonly depth: number;
  readonly at: Vec3;
}

/**
 * Depth up to which two parts count as touching, mm. Layers lie face to face; facets of 5 degrees stand off their arcs by
 * up to 0.005 mm on either side and single precision adds 1e-5.
 */
export const TOUCH_MM = 0.02;
/** Edges longer than this are probed between their ends as well, mm. */
const PROBE = 3;
/** Direction of the rays: skew to every face, so that none runs along an edge. */
const RAY = unit3([0.2907, 0.1713, 0.9413]);

/**
 * Finds where solids reach into one another.
 *
 * Every vertex of a, and points along its longer edges, is tested against every b: inside when a ray from it crosses b an
 * odd number of times, then as deep as the nearest triangle of b is far.
 * @param parts closed solids
 * @param tolerance mm
 * @returns the deepest place of every ordered pair that penetrates by more than `tolerance`; empty when all clear
 */
export function validateClearance(parts: readonly MeshData[], tolerance = TOUCH_MM): Penetration[] {
  const solids = parts.map((mesh) => solidOf(mesh));
  const found: Penetration[] = [];
  for (const a of solids)
    for (const b of solids) {
      if (a === b || !overlap(a.box, b.box, tolerance)) continue;
      let depth = tolerance;
      let at: Vec3 | null = null;
      for (let k = 0; k < a.probes.length / 3; k++) {
        const p = tripleAt(a.probes, k);
        if (!within(p, b.box)) continue;
        if (b.depthAlongRay(p) <= depth || b.distanceInBin(p) <= depth) continue;
        const exact = distanceTo(b.mesh, b.triangles, p);
        if (exact > depth) {
          depth = exact;
          at = p;
        }
      }
      if (at) found.push({ a: a.mesh.part, b: b.mesh.part, depth, at });
    }
  return found.sort((p, q) => q.depth - p.depth);
}

const AXES = [0, 1, 2] as const;

type Box = readonly [min: Vec3, max: Vec3];

interface Solid {
  readonly mesh: MeshData;
  readonly box: Box;
  readonly probes: Float64Array;
  /** Where each triangle begins in the mesh's indices. */
  readonly triangles: readonly number[];
  /** 0 for a point outside; inside, the distance to the nearer crossing of a line through it, an upper bound of the depth. */
  depthAlongRay(p: Vec3): number;
  /** Distance to the nearest of the triangles on the line through it; where faces touch, the depth without a full search. */
  distanceInBin(p: Vec3): number;
}

const overlap = (a: Box, b: Box, by: number): boolean =>
  AXES.every((i) => a[0][i] < b[1][i] - by && b[0][i] < a[1][i] - by);
const within = (p: Vec3, [min, max]: Box): boolean =>
  p[0] > min[0] && p[1] > min[1] && p[2] > min[2] && p[0] < max[0] && p[1] < max[1] && p[2] < max[2];

/** Two directions square to the ray, on which triangles are projected. */
const SIDE = unit3([RAY[1], -RAY[0], 0]);
const UP = cross3(RAY, SIDE);

/** Most bins across the shadow of a solid on the plane square to the ray; one of few triangles has fewer. */
const MOST_BINS = 96;

function solidOf(mesh: MeshData): Solid {
  const { positions, indices } = mesh;
  const shadow = new Float64Array(positions.length);
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let v = 0; v < positions.length / 3; v++) {
    const p = tripleAt(positions, v);
    const q: Vec3 = [dot3(p, SIDE), dot3(p, UP), dot3(p, RAY)];
    shadow.set(q, 3 * v);
    for (const c of AXES) {
      min[c] = Math.min(min[c], p[c]);
      max[c] = Math.max(max[c], p[c]);
      low[c] = Math.min(low[c], q[c]);
      high[c] = Math.max(high[c], q[c]);
    }
  }
  const across = Math.min(MOST_BINS, Math.ceil(Math.sqrt(indices.length / 3)));
  const sizeOf = (c: 0 | 1): number => Math.max(TOLERANCE.length, (high[c] - low[c]) / across);
  const size = [sizeOf(0), sizeOf(1)] as const;
  const binOf = (value: number, c: 0 | 1): number =>
    Math.max(0, Math.min(across - 1, Math.floor((value - low[c]) / size[c])));
  const bins: number[][] = Array.from({ length: across * across }, () => []);
  const bin = (i: number, j: number): number[] => bins[i * across + j]!;
  for (let k = 0; k < indices.length; k += 3) {
    const [a, b, c] = tripleAt(indices, k / 3);
    const [p, q, r] = [tripleAt(shadow, a), tripleAt(shadow, b), tripleAt(shadow, c)];
    const range = (axis: 0 | 1): readonly [number, number] => [
      binOf(Math.min(p[axis], q[axis], r[axis]), axis),
      binOf(Math.max(p[axis], q[axis], r[axis]), axis),
    ];
    const [left, right] = range(0);
    const [bottom, top] = range(1);
    for (let i = left; i <= right; i++) for (let j = bottom; j <= top; j++) bin(i, j).push(k);
  }
  return {
    mesh,
    box: [min, max],
    probes: probesOf(mesh),
    triangles: Array.from({ length: indices.length / 3 }, (_, t) => 3 * t),
    depthAlongRay(p) {
      const x = dot3(p, SIDE);
      const y = dot3(p, UP);
      const z = dot3(p, RAY);
      if (x < low[0] || x > high[0] || y < low[1] || y > high[1]) return 0;
      let crossings = 0;
      let nearest = Number.POSITIVE_INFINITY;
      for (const k of bin(binOf(x, 0), binOf(y, 1))) {
        const a = 3 * indices[k]!;
        const b = 3 * indices[k + 1]!;
        const c = 3 * indices[k + 2]!;
        const ax = shadow[a]! - x;
        const ay = shadow[a + 1]! - y;
        const bx = shadow[b]! - x;
        const by = shadow[b + 1]! - y;
        const w = ax * by - ay * bx;
        const cx = shadow[c]! - x;
        const cy = shadow[c + 1]! - y;
        const u = bx * cy - by * cx;
        if (u * w <= 0) continue;
        const v = cx * ay - cy * ax;
        if (v * w <= 0) continue;
        const height = (u * shadow[a + 2]! + v * shadow[b + 2]! + w * shadow[c + 2]!) / (u + v + w) - z;
        nearest = Math.min(nearest, Math.abs(height));
        if (height > 0) crossings++;
      }
      return crossings % 2 === 1 ? nearest : 0;
    },
    distanceInBin: (p) => distanceTo(mesh, bin(binOf(dot3(p, SIDE), 0), binOf(dot3(p, UP), 1)), p),
  };
}

/** Distinct vertices, and places along longer edges. */
function probesOf(mesh: MeshData): Float64Array {
  const { positions, indices } = mesh;
  const out: number[] = [];
  weld(mesh).forEach((first, v) => {
    if (first === v) out.push(...tripleAt(positions, v));
  });
  for (let t = 0; t < indices.length / 3; t++) {
    const [i, j, k] = tripleAt(indices, t);
    for (const [from, to] of [
      [i, j],
      [j, k],
      [k, i],
    ] as const) {
      if (from > to) continue;
      const a = tripleAt(positions, from);
      const ab = combine3(tripleAt(positions, to), 1, a, -1);
      const parts = Math.floor(Math.hypot(...ab) / PROBE);
      for (let n = 1; n < parts; n++) out.push(...combine3(a, 1, ab, n / parts));
    }
  }
  return new Float64Array(out);
}

/** Distance from a point to the nearest of some triangles, each given by where it begins in `indices`. */
function distanceTo({ positions, indices }: MeshData, triangles: readonly number[], p: Vec3): number {
  const from = (vertex: number): Vec3 => combine3(tripleAt(positions, vertex), 1, p, -1);
  let best = Number.POSITIVE_INFINITY;
  for (const k of triangles) {
    const [a, b, c] = tripleAt(indices, k / 3);
    best = Math.min(best, squaredTriangleDistance(from(a), from(b), from(c)));
  }
  return Math.sqrt(best);
}
