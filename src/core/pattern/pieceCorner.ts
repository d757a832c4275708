import type { Job } from '../job/jobSchema.ts';
import { type Corner, SQUARE } from '../math/corner.ts';
import type { Pieces } from './pieces.ts';

/**
 * Corner of the outside, its full lining and the pockets' fore-edge, and whether it had to be made smaller than asked.
 *
 * A corner may take up at most half the height, and must leave two pitches of straight edge before the pocket mouth.
 */
export function pieceCorner(job: Job, pieces: Pieces): { readonly corner: Corner; readonly isLimited: boolean } {
  const { corners } = job.construction;
  const asked = job.seam.cornerRadius_mm;
  if (corners === 'square' || pieces.pocket.count === 0) return { corner: SQUARE, isLimited: false };
  const most = Math.max(
    0,
    Math.min(pieces.outside.height / 2, pieces.outside.width / 2, pieces.pocket.width - 2 * job.seam.pitch_mm),
  );
  return {
    corner: { style: corners === 'clipped' ? 'clipped' : 'rounded', size: Math.min(asked, most) },
    isLimited: asked > most,
  };
}

/**
 * The corner of the seam line, which runs a margin m inside the cut edge: radius r - m of a rounded corner, leg
 * q - (2 - sqrt 2) m of a clipped one, at least 0, where the two seam lines meet in a point.
 */
export function seamCorner({ style, size }: Corner, margin: number): Corner {
  const inner = style === 'rounded' ? size - margin : size - (2 - Math.SQRT2) * margin;
  return { style, size: Math.max(0, inner) };
}
