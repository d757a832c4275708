import type { FoldedHole } from '../meshData.ts';
import type { SeamCourse } from './seamCourse.ts';
import { movesAt } from './seamStrands.ts';
import { type SeamMesh, type StrandDetail, strandSweep } from './strandSweep.ts';

/**
 * Thread or lace of a seam in one position, as far as it is worked, as one mesh of triangles, mm.
 * @param seam the holes that the course goes through: those of a folded cover, or of a strap
 * @param share how far the seam is worked, 0 to 1, to the last whole move of the needle
 */
export function strandMesh(course: SeamCourse, seam: readonly FoldedHole[], detail: StrandDetail, share = 1): SeamMesh {
  const { uvs, indices, shownAfter, lay } = strandSweep(course, detail);
  return { ...lay(seam), uvs, indices: indices.subarray(0, shownAfter[movesAt(course, share)]) };
}
