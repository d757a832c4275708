import { type NeedsOverRange, needsOverRange } from '../allowance/needs.ts';
import type { Job } from '../job/jobSchema.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import type { Pieces } from '../pattern/pieces.ts';
import { sizePieces } from '../pattern/sizePieces.ts';
import { coverFit, type Fit } from './coverFit.ts';

/** A job worked out: the pieces to cut, and what they meet at each point of the weight range. */
export interface CoverDesign {
  readonly job: Job;
  readonly pieces: Pieces;
  readonly needs: NeedsOverRange;
  readonly fits: Readonly<Record<RangePoint, Fit>>;
}

/** Works a job out: needs at every range point, pieces sized for the thick end, fit of those pieces at each point. */
export function coverDesign(job: Job): CoverDesign {
  const needs = needsOverRange(job);
  const cut = sizePieces(job, needs);
  return {
    job,
    pieces: cut,
    needs,
    fits: {
      thin: coverFit(job, cut, needs.thin),
      nominal: coverFit(job, cut, needs.nominal),
      thick: coverFit(job, cut, needs.thick),
    },
  };
}
