import type { NeedsOverRange } from '../allowance/needs.ts';
import type { CoverDoubt } from '../doubt/coverDoubt.ts';
import { sizedEase } from '../doubt/sizedEase.ts';
import type { Job } from '../job/jobSchema.ts';
import type { Pieces } from './pieces.ts';
import { sizePieces } from './sizePieces.ts';
import { strideSizes } from './strideSizes.ts';

/** Rounds in which the depth of turned ends and the ease are found from each other. */
const MOST_ROUNDS = 3;

/**
 * Sizes the pieces with the ease that the job gives, or sized by the doubt where it is left open.
 *
 * Turned ends are rounded together with the width, so that their depth decides how much room the rounding adds. The depth
 * follows from the width in turn, for the mouth keeps clear of the holes. The two are found in rounds, from which the last
 * depth is taken where they do not settle. With an iron the outside then goes to whole strides, as far as the doubt leaves room.
 */
export function sizedPieces(job: Job, needs: NeedsOverRange, doubt: CoverDoubt): Pieces {
  const withDepth = (of: Job, depth?: number): Pieces => sizePieces(of, needs, sizedEase(job, needs, doubt, depth));
  let pieces = withDepth(job);
  if (job.seam.iron !== null) {
    const strides = strideSizes(job, doubt, pieces);
    if (strides.width !== undefined || strides.height !== undefined)
      return sizePieces(job, needs, pieces.ease, strides);
  }
  if (job.pockets.construction !== 'turned' || pieces.ease.sized.length === 0) return pieces;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { pocketDepth } = pieces;
    pieces = withDepth(job, pocketDepth);
    if (pieces.pocketDepth === pocketDepth) return pieces;
  }
  const { pocketDepth } = pieces;
  return withDepth({ ...job, pockets: { ...job.pockets, depth_mm: pocketDepth } }, pocketDepth);
}
