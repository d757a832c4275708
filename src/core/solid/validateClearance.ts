import { type TriangleTree, triangleTree } from '../math/triangleTree.ts';
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
const RAY = unit3([0.7986, 0.6018, 0.0137]);

/**
 * Finds where solids reach into one another.
 *
 * Every vertex of a, and points along its longer edges, is tested against every b: inside when a ray from it crosses b an
 * odd number of times, then as deep as the nearest triangle of b is far.
 * @param parts closed solids
 * @param tolerance mm
 * @param most parts in which one edge is probed at most: few are enough for a survey of many covers, where an edge is met from
 *   the other part as well
 * @returns the deepest place of every ordered pair that penetrates by more than `tolerance`; empty when all clear
 */
export function validateClearance(
  parts: readonly MeshData[],
  tolerance = TOUCH_MM,
  most = Number.POSITIVE_INFINITY,
): Penetration[] {
  const solids = parts.map((mesh) => solidOf(mesh, most));
  const found: Penetration[] = [];
  for (const a of solids)
    for (const b of solids) {
      if (a === b || !overlap(a.box, b.box, tolerance)) continue;
      let depth = tolerance;
      let at: Vec3 | null = null;
      for (let k = 0; k < a.probes.length / 3; k++) {
        const p = tripleAt(a.probes, k);
        if (!within(p, b.box)) continue;
        const q = turned(p);
        if (b.tree.depthAlong(...q) <= depth) continue;
        const exact = b.tree.distance(...q, depth);
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
  /** Its triangles in a frame whose third axis is the ray. */
  readonly tree: TriangleTree;
}

const overlap = (a: Box, b: Box, by: number): boolean =>
  AXES.every((i) => a[0][i] < b[1][i] - by && b[0][i] < a[1][i] - by);
const within = (p: Vec3, [min, max]: Box): boolean =>
  p[0] > min[0] && p[1] > min[1] && p[2] > min[2] && p[0] < max[0] && p[1] < max[1] && p[2] < max[2];

/** Two directions square to the ray. */
const SIDE = unit3([RAY[1], -RAY[0], 0]);
const UP = cross3(RAY, SIDE);
const turned = (p: Vec3): Vec3 => [dot3(p, SIDE), dot3(p, UP), dot3(p, RAY)];

function solidOf(mesh: MeshData, most: number): Solid {
  const { positions, indices } = mesh;
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let v = 0; v < positions.length; v++) {
    const c = AXES[v % 3]!;
    min[c] = Math.min(min[c], positions[v]!);
    max[c] = Math.max(max[c], positions[v]!);
  }
  const corners = new Float64Array(3 * indices.length);
  indices.forEach((vertex, k) => {
    corners.set(turned(tripleAt(positions, vertex)), 3 * k);
  });
  return { mesh, box: [min, max], probes: probesOf(mesh, most), tree: triangleTree(corners) };
}

/** Distinct vertices, and places along longer edges. */
function probesOf(mesh: MeshData, most: number): Float64Array {
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
      const parts = Math.min(most, Math.floor(Math.hypot(...ab) / PROBE));
      for (let n = 1; n < parts; n++) out.push(...combine3(a, 1, ab, n / parts));
    }
  }
  return new Float64Array(out);
}
