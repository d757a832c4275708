import type { StrideSizes } from '../allowance/allowances.ts';
import type { Ease } from '../allowance/ease.ts';
import type { NeedsOverRange } from '../allowance/needs.ts';
import { snap } from '../allowance/roundUp.ts';
import type { Job } from '../job/jobSchema.ts';
import { cutStep } from '../job/workSchema.ts';
import { type Mm, mm } from '../units/mm.ts';
import { type EndRow, endRow, isClearOf, middleBetweenHoles } from './endRow.ts';
import { type Pieces, piecesAt } from './pieces.ts';
import { depthSteps, type PocketDepths, pocketDepths } from './pocketDepth.ts';
import { type SeamLayering, seamLayering } from './seamLayering.ts';

/** Step of a lining whose width is not rounded, mm. */
const FINE_STEP = 0.1;

/**
 * Sizes every cut piece so that pocket mouths and lining end between two holes of the seam.
 *
 * The holes follow from the pieces, and the pieces from the holes. With D the pocket depth and L the lining's width:
 *
 *     pieces = piecesAt(D)                    sums of needs and allowances
 *     row    = endRow(pieces)                 pitch p of head and tail, chosen for the mouths (`evenPitch`)
 *     |mouth(pieces) - nearest hole| >= c p   c the share of the pitch to keep clear (`seamLayering`)
 *     |(w - L) / 2 - nearest hole|   >= c p   w the width of the outside
 *
 * The row does not depend on L, so D is found first, then L. Its distance to the holes jumps with their number, so D is not
 * solved for but searched: the usual depth D0, then D0 + k s and D0 - k s for k = 1, 2, ... up to two pitches (three steps
 * if s is coarse), s first the coarse step, then the fine, within the least and the most depth. The first D that fits is
 * taken; if none does, or if the pockets meet, D0, and the seam leaves the holes that are too near out of that layer
 * and says so (`seamNotes`). A depth that the job gives is taken as it is.
 *
 * L is searched likewise from its size in `piecesAt`: a centre lining is widened by under two pitches, else narrowed; a full
 * one between turned ends is only narrowed. If no step fits, it ends in the middle between two holes.
 * @param job a parsed job
 * @param needs what the book asks over the weight range
 * @param ease of every edge
 * @param strides sizes of the outside that whole strides of an iron lead to
 */
export function sizePieces(job: Job, needs: NeedsOverRange, ease: Ease, strides: StrideSizes = {}): Pieces {
  const at = (depth: Mm): Candidate => {
    const pieces = piecesAt(job, needs, depth, ease, strides);
    const layering = seamLayering({ job, pieces, needs });
    return { pieces, layering, row: layering.meets ? null : endRow({ job, pieces, needs }, layering) };
  };
  const given = job.pockets.depth_mm;
  if (given !== null) return lined(job, at(given));
  const depths = pocketDepths(job, needs.thick, ease);
  const usual = at(depths.usual);
  if (isMouthClear(usual)) return lined(job, usual);
  for (const depth of otherDepths(job, depths)) {
    const moved = at(depth);
    if (isMouthClear(moved)) return lined(job, moved);
  }
  return lined(job, usual);
}

/** The pieces for one depth, and the row that their layers must end clear of: null where there is none or pockets meet. */
interface Candidate {
  readonly pieces: Pieces;
  readonly layering: SeamLayering;
  readonly row: EndRow | null;
}

const isMouthClear = ({ layering, row }: Candidate): boolean =>
  row === null || isClearOf(row, layering.mouth, layering.clear);

/** Depths beside the usual one, in the order in which they are tried. */
function* otherDepths(job: Job, { least, usual, most }: PocketDepths): Generator<Mm> {
  // A pocket is cut in steps, so it may miss the place between the first two holes and find it between the next two.
  for (const step of depthSteps(job))
    for (let k = 1; k * step <= Math.max(2 * job.seam.pitch_mm, 3 * step); k++)
      for (const depth of [usual + k * step, usual - k * step])
        if (depth >= least && depth <= most) yield mm(Math.round(depth * 1e9) / 1e9);
}

/** The pieces with the lining cut to a width that ends between two holes; one as wide as the outside stays. */
function lined(job: Job, { pieces, layering, row }: Candidate): Pieces {
  const { lining, outside } = pieces;
  if (lining === null || row === null || lining.width >= outside.width) return pieces;
  const step = cutStep(job) || FINE_STEP;
  const endOf = (width: number): number => (outside.width - width) / 2;
  const cutTo = (width: number): Pieces => ({ ...pieces, lining: { ...lining, width: mm(width) } });
  for (const way of job.construction.lining === 'full' ? [-1] : [1, -1]) {
    const most = way === 1 ? 2 * job.seam.pitch_mm : lining.width;
    for (let by = 0; by < most; by += step) {
      const width = lining.width + way * by;
      if (isClearOf(row, endOf(width), layering.clear)) return cutTo(width);
    }
  }
  const middle = outside.width - 2 * middleBetweenHoles(row, endOf(lining.width));
  return cutTo(Math.max(0, job.work.units === 'in' ? snap(middle, step) : middle));
}
