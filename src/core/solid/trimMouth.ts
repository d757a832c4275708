import { combine3, tripleAt, unit3 } from '../math/vec3.ts';
import type { LaidSheet } from './trimCorners.ts';

/**
 * Cuts the mouth of a pocket: columns that lie beyond it are drawn in to it, along the row. Normals are those of the whole
 * sheet, so a cut leaves the surface as it was.
 * @param mouth pattern place u of the mouth by v, both from the pocket's edges, mm
 */
export function trimMouth({ grid, normals, uvs }: LaidSheet, mouth: (v: number) => number): void {
  const { columns, rows, points } = grid;
  for (let j = 0; j < rows; j++) {
    const beyond = (i: number): number => uvs[2 * (i * rows + j)]! - mouth(uvs[2 * (i * rows + j) + 1]!);
    let last = columns - 1;
    while (last > 1 && beyond(last - 1) >= 0) last--;
    const [before, after] = [beyond(last - 1), beyond(last)];
    if (after < 0) continue;
    const share = before < 0 ? -before / (after - before) : 0;
    const [from, to] = [(last - 1) * rows + j, last * rows + j];
    const place = combine3(tripleAt(points, from), 1 - share, tripleAt(points, to), share);
    const normal = unit3(combine3(tripleAt(normals, from), 1 - share, tripleAt(normals, to), share));
    const uv = [0, 1].map((c) => (1 - share) * uvs[2 * from + c]! + share * uvs[2 * to + c]!);
    for (let i = last; i < columns; i++) {
      points.set(place, 3 * (i * rows + j));
      normals.set(normal, 3 * (i * rows + j));
      uvs.set(uv, 2 * (i * rows + j));
    }
  }
}
