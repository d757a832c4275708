import type { Job } from '../job/jobSchema.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { type Mm, mm } from '../units/mm.ts';
import type { CoverDesign } from './coverDesign.ts';

/**
 * The spare wrap of a closed cover, mm: what is left between the two seats of the length that the wrap needs. Where it sits
 * is not settled by the pattern: behind the spine and off the boards, at one fore-edge, or shared between both.
 */
export interface SpareWrap {
  /** Negative where the wrap is short; the figures below are then 0. */
  readonly wrap: Mm;
  /** Gap at each fore-edge where the spare wrap is pushed out of spine and boards, shared as the job's seating says. */
  readonly pushedHome: { readonly front: Mm; readonly back: Mm };
  /** The largest gap that there can be at either fore-edge: all of it on one side. */
  readonly toOneSide: Mm;
}

/** Finds the largest gaps that the spare wrap can make; the least is none at all. Readings of a finished cover are `pushedHome`. */
export function spareWrap({ job, fits }: CoverDesign, point: RangePoint): SpareWrap {
  const { closedSlack: wrap } = fits[point];
  const spare = Math.max(0, wrap);
  const front = spare * FRONT_SHARE[job.seating];
  return { wrap, pushedHome: { front: mm(front), back: mm(spare - front) }, toOneSide: mm(spare) };
}

/** Share of the spare wrap at the front fore-edge. Boards that sit at the spine are pushed home to both sides alike: nothing taut is behind the spine. */
export const FRONT_SHARE: Readonly<Record<Job['seating'], number>> = { centred: 0.5, spine: 0.5, front: 0, back: 1 };

/** Friction of the leather that lies on the book: of the lining where there is one. */
export const frictionOnBook = ({ leather }: Job): number => (leather.lining ?? leather.outside).friction;
