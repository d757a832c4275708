import { Box3, Matrix4, Vector3 } from 'three';
import type { FoldedCover, MeshData } from '../../../core/index.ts';

/**
 * From assembly to bench: turned so that the back board lies flat, then mirrored along the spine. In the assembly front
 * is +y, fore-edge +x and head +z; a book whose spine is on the left has its head at -z there, hence the mirror.
 */
export const benchMatrix = (benchTurn: number): Matrix4 =>
  new Matrix4().makeScale(1, 1, -1).multiply(new Matrix4().makeRotationZ(benchTurn));

/** Extent of the assembly on the bench, or of the parts that `only` lets through; empty where there is none. */
export function boundsOnBench(cover: FoldedCover, only: (mesh: MeshData) => boolean = () => true): Box3 {
  const [c, s] = [Math.cos(cover.benchTurn), Math.sin(cover.benchTurn)];
  const [low, high] = [
    new Vector3().setScalar(Number.POSITIVE_INFINITY),
    new Vector3().setScalar(Number.NEGATIVE_INFINITY),
  ];
  // By numbers alone: this runs over every vertex in every frame of the film.
  for (const mesh of cover.parts) {
    if (!only(mesh)) continue;
    const { positions } = mesh;
    for (let i = 0; i < positions.length; i += 3) {
      const x = c * positions[i]! - s * positions[i + 1]!;
      const y = s * positions[i]! + c * positions[i + 1]!;
      const z = -positions[i + 2]!;
      if (x < low.x) low.x = x;
      if (x > high.x) high.x = x;
      if (y < low.y) low.y = y;
      if (y > high.y) high.y = y;
      if (z < low.z) low.z = z;
      if (z > high.z) high.z = z;
    }
  }
  return new Box3(low, high);
}
