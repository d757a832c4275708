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
  const bounds = new Box3();
  const matrix = benchMatrix(cover.benchTurn);
  const point = new Vector3();
  for (const mesh of cover.parts) {
    if (!only(mesh)) continue;
    for (let i = 0; i < mesh.positions.length; i += 3) {
      bounds.expandByPoint(point.fromArray(mesh.positions, i).applyMatrix4(matrix));
    }
  }
  return bounds;
}
