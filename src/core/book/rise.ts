import type { Job } from '../job/jobSchema.ts';
import { type Mm, mm } from '../units/mm.ts';

/**
 * Rise of a rounded spine that nobody has measured, as a share of the thickness: an arc of a third of a circle on the
 * chord T rises T/2 tan(30 deg) = 0.2887 T.
 *
 * Source: Zaehnsdorf, The Art of Bookbinding (1890), ch. XI, "about a third of a circle"; Roberts and Etherington,
 * Bookbinding and the Conservation of Books, s.v. rounding, "approximately one-third of a circle".
 */
const USUAL_RISE = Math.tan(Math.PI / 6) / 2;

/** Standard uncertainty of that estimate, as a share of the thickness. An assumption. */
export const USUAL_RISE_DOUBT = 0.08;

type Spined = Pick<Job['book'], 'spine' | 'thickness_mm'>;

/** Whether the rise of a rounded spine has to be estimated, for want of a measure. */
export const isRiseEstimated = ({ spine }: Spined): boolean => spine.shape === 'rounded' && spine.rise_mm === null;

/** Rise of the spine, mm: as typed, 0 where it is flat, else the estimate for the thickness. */
export function riseOf({ spine, thickness_mm }: Spined): Mm {
  if (spine.shape === 'flat') return mm(0);
  return spine.rise_mm ?? mm(USUAL_RISE * thickness_mm);
}
