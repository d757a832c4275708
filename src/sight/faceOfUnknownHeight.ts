import { type Photograph, type PrintScale, solveScene, type View } from '../core/index.ts';
import type { GreyPicture } from './greyPicture.ts';
import { type FaceHint, type ProposedFace, proposedFace } from './proposedFace.ts';

/** How far the height at which most fits may be off, as a share. By rendered scenes of this project. */
const ROUGHLY = 0.1;
/** The heights at spine and fore-edge are bettered so often. */
const ROUNDS = 2;

/**
 * Proposes the face of a book whose thickness nobody measured: sought at the height at which most fits, its corners then tell the heights at
 * spine and fore-edge, at which it is sought again.
 */
export function faceOfUnknownHeight(
  pictures: readonly GreyPicture[],
  photographs: readonly Photograph[],
  views: readonly (View | null)[],
  print: PrintScale,
  hint: FaceHint = {},
): ProposedFace | null {
  let face = proposedFace(pictures, photographs, views, null, hint);
  for (let round = 0; round < ROUNDS && face !== null; round++) {
    const { corners, heights } = face;
    const scene = solveScene(
      photographs.map((photograph, i) => ({
        ...photograph,
        points: (corners[i] ?? []).map(({ at, u }, point) => ({ point, seen: at, u })),
      })),
      print,
      { heightOf: [0, 1, 1, 0], heights: heights.map((value) => ({ value, u: ROUGHLY * value })) },
    );
    if (!scene.ok) return null;
    const [spine, fore] = scene.points;
    if (spine == null || fore == null) return null;
    face = proposedFace(pictures, photographs, views, [spine[2], fore[2]], hint);
  }
  return face;
}
