import { doubtOf } from '../doubt/doubtOf.ts';
import type { DoubtPath } from '../job/doubtSchema.ts';
import type { Job } from '../job/jobSchema.ts';

/** Standard uncertainty of each measure of the book, mm. */
export interface PriorErrors {
  readonly width: number;
  readonly thickness: number;
  readonly rise: number;
  readonly height: number;
  /** A paper strip round the book, or the book rolled on card. */
  readonly tape: number;
}

/** Standard uncertainties in an error of a reading that is stated "either way". An assumption. */
export const STATED = 2;

/**
 * What the job says of the doubt of its measures. A flat spine has no error of rise; that it may be rounded is an explanation
 * of its own.
 */
export function priorErrors(job: Job): PriorErrors {
  const u = (path: DoubtPath): number => doubtOf(job, path).u;
  return {
    width: u('book.width_mm'),
    thickness: u('book.thickness_mm'),
    rise: job.book.spine.shape === 'rounded' ? u('book.spine.rise_mm') : 0,
    height: u('book.height_mm'),
    tape: u('book.measured.closedWrap_mm'),
  };
}
