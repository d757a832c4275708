import {
  type CoverDesign,
  type Face,
  type FoldedHole,
  foldedCover,
  type MeshData,
  movesAt,
  type PartName,
  type Pose,
  type RangePoint,
  type ResultOrigin,
  type SeamCourse,
  seamCourse,
  strandSweep,
  strapCourse,
} from '../../core/index.ts';

/** A part of a file: those of the folded cover, and what its seam and that of a strap are worked with. */
export type ModelPart = PartName | 'seam' | 'strapSeam';

/** Parts of thread or lace. */
export const isSeam = (part: ModelPart): part is 'seam' | 'strapSeam' => part === 'seam' || part === 'strapSeam';

export type ModelFace = Face | 'thread' | 'lace';

/** A mesh of a file, as `MeshData`. */
export interface ModelMesh extends Omit<MeshData, 'part' | 'faces'> {
  readonly part: ModelPart;
  readonly faces: readonly { readonly face: ModelFace; readonly start: number; readonly count: number }[];
}

/** Where the shape of a file comes from: it is folded without the springy model. Said in the file. */
export const MODEL_ORIGIN: ResultOrigin = 'quick model';

/**
 * Folds a cover for a file: its parts, and thread or lace as far as it is worked. A strap is sewn on once it is in its place.
 * @returns a function of the pose
 */
export function modelParts(design: CoverDesign, point: RangePoint): (pose: Pose) => ModelMesh[] {
  const ofCover = seamParts('seam', seamCourse(design, point));
  const sewn = strapCourse(design, point);
  const ofStrap = sewn && seamParts('strapSeam', sewn);
  return (pose) => {
    const { parts, seam, strapSeam, film } = foldedCover(design, pose, point);
    const { sewn: share, fitted } = film.movements;
    const strap = ofStrap && fitted === 1 && strapSeam.length > 0 ? ofStrap(strapSeam, 1) : [];
    return [...parts, ...ofCover(seam, share), ...strap];
  };
}

/**
 * Thread or lace of one seam on its holes, as far as it is worked, to a share of it. What is not worked yet lies in its holes,
 * so that the vertices are the same in every pose.
 */
function seamParts(part: ModelPart, course: SeamCourse): (seam: readonly FoldedHole[], share: number) => ModelMesh[] {
  const sweep = strandSweep(course, 'coarse');
  const face = course.slit === null ? 'thread' : 'lace';
  let holes: Uint32Array | null = null;
  return (seam, share) => {
    const shown = sweep.shownAfter[movesAt(course, share)]!;
    if (shown === 0) return [];
    const { positions, normals } = sweep.lay(seam);
    holes ??= nearest(
      positions,
      seam.map(({ at }) => at),
    );
    const worked = new Set(sweep.indices.subarray(0, shown));
    for (let v = 0; v < holes.length; v++) if (!worked.has(v)) positions.set(seam[holes[v]!]!.at, 3 * v);
    const faces = [{ face, start: 0, count: sweep.indices.length } as const];
    return [{ part, positions, normals, uvs: sweep.uvs, indices: sweep.indices, faces }];
  };
}

/** Which of some points is nearest to each vertex. */
const nearest = (positions: Float32Array, points: readonly (readonly [number, number, number])[]): Uint32Array =>
  Uint32Array.from({ length: positions.length / 3 }, (_, v) => {
    let [least, found] = [Number.POSITIVE_INFINITY, 0];
    points.forEach(([x, y, z], i) => {
      const off = (positions[3 * v]! - x) ** 2 + (positions[3 * v + 1]! - y) ** 2 + (positions[3 * v + 2]! - z) ** 2;
      if (off < least) [least, found] = [off, i];
    });
    return found;
  });
