import { tripleAt, type Vec3 } from '../../../src/core/math/vec3.ts';
import type { MeshData } from '../../../src/core/solid/meshData.ts';
import { flatLookup } from '../../../src/output/glb/flatLookup.ts';
import { nth } from '../../nth.ts';

/** The grain side of a leather that lies flat, seen square with the head up. */
export interface FlatPiece {
  /** Width and height, mm. */
  readonly size: readonly [number, number];
  /** What the vertices round a place have, weighted: the place from the lower left corner of what is seen, mm. */
  at(x: number, y: number, values: ArrayLike<number>, size: number): number[];
  /** How far a place stands off the plane of the piece, mm: on the outside where the lining under it ends. */
  offPlane(x: number, y: number): number;
}

/** How far a piece laid out flat may stand off its plane, mm: it is drawn over the end of its lining. */
const WAVES = 2;

/** The triangles of a mesh's grain side. */
export function grainOf({ faces, indices }: Pick<MeshData, 'faces' | 'indices'>): Uint32Array {
  const grain = faces.filter(({ face }) => face === 'grain');
  return Uint32Array.from(grain.flatMap(({ start, count }) => [...indices.subarray(start, start + count)]));
}

/**
 * A flat surface as its viewer sees it. Only positions and normals are used: no uv.
 * @param up toward the head
 * @param rightOf direction to the viewer's right, from the normal out of the surface
 */
export function flatPiece(
  { positions, normals }: Pick<MeshData, 'positions' | 'normals'>,
  triangles: Uint32Array,
  up: Vec3,
  rightOf: (out: Vec3) => Vec3,
): FlatPiece {
  const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  const out = tripleAt(normals, nth(triangles, 0));
  const right = rightOf(out);
  const level = dot(tripleAt(positions, nth(triangles, 0)), out);
  const places = new Float32Array((positions.length / 3) * 2);
  let [left, foot, end, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const vertex of new Set(triangles)) {
    const [x, y] = [dot(tripleAt(positions, vertex), right), dot(tripleAt(positions, vertex), up)];
    [left, foot, end, top] = [Math.min(left, x), Math.min(foot, y), Math.max(end, x), Math.max(top, y)];
    const off = Math.abs(dot(tripleAt(positions, vertex), out) - level);
    if (off > WAVES) throw new Error(`This side of the leather does not lie flat: ${off} mm off its plane.`);
  }
  for (const vertex of new Set(triangles)) {
    const at = tripleAt(positions, vertex);
    places.set([dot(at, right) - left, dot(at, up) - foot], 2 * vertex);
  }
  const find = flatLookup(places, triangles);
  const at: FlatPiece['at'] = (x, y, values, size) => {
    const found = find(x, y);
    if (found === null) throw new Error('A surface without triangles.');
    return Array.from({ length: size }, (_, c) =>
      found.corners.reduce((sum, corner, k) => sum + nth(found.shares, k) * nth(values, size * corner + c), 0),
    );
  };
  return {
    size: [end - left, top - foot],
    at,
    offPlane: (x, y) => Math.abs(dot(at(x, y, positions, 3) as [number, number, number], out) - level),
  };
}
