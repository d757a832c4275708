import type { MeshData } from '../../../core/index.ts';

/**
 * Depth of each vertex of a sheet of leather in its cut edges, 0 on the grain side and 1 on the flesh side; 0 for all others.
 * The solid of a sheet (`gridSolid` of the core) lists the vertices of its edges by pairs across the thickness, the outer
 * face's first, and that face before the inner one.
 */
export function cutDepth({ positions, indices, faces }: MeshData): Float32Array {
  const depth = new Float32Array(positions.length / 3);
  const isGrainOuter =
    faces.findIndex(({ face }) => face === 'grain') <= faces.findIndex(({ face }) => face === 'flesh');
  for (const { face, start, count } of faces) {
    if (face !== 'cutEdge') continue;
    const first = indices.subarray(start, start + count).reduce((least, k) => Math.min(least, k), depth.length);
    for (let k = start; k < start + count; k++) {
      const vertex = indices[k]!;
      depth[vertex] = (vertex - first) % 2 === (isGrainOuter ? 1 : 0) ? 1 : 0;
    }
  }
  return depth;
}
