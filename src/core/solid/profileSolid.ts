import { TOLERANCE } from '../math/tolerance.ts';
import type { Vec2 } from '../math/vec2.ts';
import { gridOf, gridSolid, type Sheet } from './gridSolid.ts';
import type { MeshData } from './meshData.ts';

/**
 * The solid between two profiles of the section, `height` mm along the spine about z = 0.
 * @param outer front to back, with the outside on its right
 * @param inner as many points, each opposite that of the outer profile
 * @param along place of each point across the pattern, mm
 */
export function profileSolid(
  outer: readonly Vec2[],
  inner: readonly Vec2[],
  along: readonly number[],
  height: number,
  { part, faces }: Pick<Sheet, 'part' | 'faces'>,
): MeshData {
  const [outerGrid, innerGrid] = [outer, inner].map((profile) => {
    const grid = gridOf(profile.length, 2);
    grid.points.set(profile.flatMap(([x, y]) => [x, y, -height / 2, x, y, height / 2]));
    return grid;
  }) as [Sheet['outer'], Sheet['inner']];
  const solid = gridSolid({
    part,
    outer: outerGrid,
    inner: innerGrid,
    normals: profileNormals(outer),
    uvs: Float64Array.from(along.flatMap((at) => [at, 0, at, height])),
    faces,
  });
  // The two faces need not be parallel: the inner one has normals of its own.
  const own = profileNormals(inner);
  for (let k = 0; k < own.length; k++) solid.normals[own.length + k] = -own[k]!;
  return solid;
}

/** Normal to the right of a profile, the mean over both neighbours, once for each row of its grid. */
function profileNormals(profile: readonly Vec2[]): Float64Array {
  const normals = new Float64Array(6 * profile.length);
  profile.forEach((point, i) => {
    let [nx, ny] = [0, 0];
    for (const [a, b] of [
      [profile[Math.max(0, i - 1)]!, point],
      [point, profile[Math.min(profile.length - 1, i + 1)]!],
    ] as const) {
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (length < TOLERANCE.length) continue;
      nx += (b[1] - a[1]) / length;
      ny -= (b[0] - a[0]) / length;
    }
    const length = Math.hypot(nx, ny) || 1;
    normals.set([nx / length, ny / length, 0, nx / length, ny / length, 0], 6 * i);
  });
  return normals;
}
