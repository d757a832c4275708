import { type Photograph, type PrintScale, solveScene, type View } from '../core/index.ts';
import type { GreyPicture } from './greyPicture.ts';
import { type FaceHint, type ProposedFace, proposedFace } from './proposedFace.ts';

/** How far the height at which most fits may be off, as a share. By rendered scenes of this project. */
const ROUGHLY = 0.1;
/** Heights are bettered so often at most, and are right where they change by less than this, mm. */
const MOST_ROUNDS = 4;
const SAME = 0.2;

/**
 * Proposes the face of a book whose thickness nobody measured: sought at the height at which most fits, its corners then tell the heights at
 * spine and fore-edge, at which it is sought again, until they stay.
 */
export function faceOfUnknownHeight(
  pictures: readonly GreyPicture[],
  photographs: readonly Photograph[],
  views: readonly (View | null)[],
  print: PrintScale,
  hint: FaceHint = {},
): ProposedFace | null {
  let face = proposedFace(pictures, photographs, views, null, hint);
  for (let round = 0; round < MOST_ROUNDS && face !== null; round++) {
    const { corners, heights }: ProposedFace = face;
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
    const known = [spine[2], fore[2]] as const;
    face = proposedFace(pictures, photographs, views, known, hint);
    if (known.every((height, i) => Math.abs(height - heights[i]!) < SAME)) return face;
  }
  return face === null ? null : { ...face, found: face.found.map(() => false) };
}
