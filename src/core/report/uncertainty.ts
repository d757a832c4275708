import { wrapAt } from '../allowance/wrap.ts';
import { bookModel } from '../book/bookModel.ts';
import { CLOSED } from '../book/bookOutline.ts';
import { riseError, riseOf } from '../book/rise.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import type { Job } from '../job/jobSchema.ts';
import { mm } from '../units/mm.ts';
import type { ErrorBand, Uncertainty } from './checkSchema.ts';

/** Rise in place of 0, mm: a rounded spine with a rise of 0 counts as not measured. */
const LEAST_RISE = 1e-6;

const sumOf = (shares: readonly number[]): number => shares.reduce((sum, share) => sum + Math.abs(share), 0);

const band = (shares: readonly number[], ruler = shares): ErrorBand => ({
  worst_mm: sumOf(shares),
  spread_mm: Math.hypot(...shares),
  ruler_mm: sumOf(ruler),
});

/**
 * Error of the gaps from the measuring error of width, thickness, rise and height: the closed wrap is recomputed with
 * each measure changed by its error. A gap is half of what two edges share, so it changes by half.
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
  const half = band([error / 2]);
  if (book.spine.shape === 'flat') return { foreEdge: band(shares), head: half, tail: half };
  const rise = riseOf(book);
  // Either way, within the limits: a rise of half the thickness cannot grow.
  const riseShare = (by: number): number => {
    const either = [Math.max(LEAST_RISE, rise - by), Math.min(book.thickness_mm / 2, rise + by)];
    return Math.max(...either.map((at) => Math.abs(shifted({ spine: { ...book.spine, rise_mm: mm(at) } }))));
  };
  const foreEdge = band([...shares, riseShare(riseError(book))], [...shares, riseShare(error)]);
  return { foreEdge, head: half, tail: half };
}
