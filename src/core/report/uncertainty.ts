import { wrapAt } from '../allowance/wrap.ts';
import { bookModel } from '../book/bookModel.ts';
import { CLOSED } from '../book/bookOutline.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import type { Job } from '../job/jobSchema.ts';
import { type Mm, mm } from '../units/mm.ts';

/** How far a gap may be off because of the measures it comes from. */
export interface ErrorBand {
  /** All measures off by the full error in the unlucky direction. */
  readonly worst: Mm;
  /** Root of the sum of squares: errors that are independent. */
  readonly spread: Mm;
}

/** Bands of the gap at one fore-edge, and at head and at tail. */
export interface Uncertainty {
  readonly foreEdge: ErrorBand;
  readonly head: ErrorBand;
  readonly tail: ErrorBand;
}

const band = (shares: readonly number[]): ErrorBand => ({
  worst: mm(shares.reduce((sum, share) => sum + Math.abs(share), 0)),
  spread: mm(Math.hypot(...shares)),
});

/**
 * Carries the measuring error of width, thickness, rise and height through to the gaps, by recomputing the closed wrap
 * with each measure off by the error. A gap is half of what its two edges share, so it moves by half.
 */
export function uncertainty({ job, needs }: CoverDesign): Uncertainty {
  const error = job.book.measured.error_mm;
  const { leathers, closed } = needs.thick;
  const shifted = (change: Partial<Job['book']>): number => {
    const book = bookModel({ ...job.book, ...change }, leathers.pocket.thickness);
    return (wrapAt(book, CLOSED, leathers).length - closed.length) / 2;
  };
  const { book } = job;
  const shares = [
    shifted({ width_mm: mm(book.width_mm + error) }),
    shifted({
      thickness_mm: mm(book.thickness_mm + error),
      foreEdgeThickness_mm: mm(book.foreEdgeThickness_mm + error),
    }),
  ];
  if (book.spine.shape === 'rounded') {
    // Taken downward: a rise at its limit of half the thickness cannot grow.
    const rise = mm(Math.max(0, book.spine.rise_mm - error));
    shares.push(shifted({ spine: { ...book.spine, rise_mm: rise } }));
  }
  const half = band([error / 2]);
  return { foreEdge: band(shares), head: half, tail: half };
}
