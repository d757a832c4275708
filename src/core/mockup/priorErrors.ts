import { riseError } from '../book/rise.ts';
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

/** Standard uncertainties in a stated error "either way". An assumption. */
export const STATED = 2;

/**
 * What the job says of the errors of its measures, as standard uncertainties: half the error stated. A flat spine has no
 * error of rise; that it may be rounded is an explanation of its own.
 */
export function priorErrors({ book }: Job): PriorErrors {
  const ruler = book.measured.error_mm / STATED;
  const rise = book.spine.shape === 'rounded' ? riseError(book) / STATED : 0;
  return { width: ruler, thickness: ruler, rise, height: ruler, tape: ruler };
}
