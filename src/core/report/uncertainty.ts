import { wrapAt } from '../allowance/wrap.ts';
import { bookModel } from '../book/bookModel.ts';
import { CLOSED } from '../book/bookOutline.ts';
import { riseError, riseOf } from '../book/rise.ts';
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

/** Stands for no rise, mm: a rounded spine that rises by 0 counts as not measured. */
const LEAST_RISE = 1e-6;

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
    const rise = riseOf(book);
    const by = riseError(book);
    // Either way, as far as there is room: a rise at its limit of half the thickness cannot grow.
    const either = [Math.max(LEAST_RISE, rise - by), Math.min(book.thickness_mm / 2, rise + by)].map((at) =>
      shifted({ spine: { ...book.spine, rise_mm: mm(at) } }),
    );
    shares.push(Math.max(...either.map(Math.abs)));
  }
  const half = band([error / 2]);
  return { foreEdge: band(shares), head: half, tail: half };
}
