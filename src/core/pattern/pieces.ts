import { type Allowances, allowances } from '../allowance/allowances.ts';
import { endNeed, type Needs, type NeedsOverRange } from '../allowance/needs.ts';
import { roundUp } from '../allowance/roundUp.ts';
import { pathLength } from '../book/tautPath.ts';
import type { Job } from '../job/jobSchema.ts';
import { type Mm, mm } from '../units/mm.ts';

export interface Piece {
  readonly width: Mm;
  readonly height: Mm;
}

/** The cut pieces of a cover, and the pocket depth they were cut for. */
export interface Pieces {
  readonly outside: Piece;
  readonly pocket: Piece & { readonly count: 0 | 2 };
  readonly lining: Piece | null;
  /** Fore-edge seam (or turn) to pocket mouth on the assembled cover. */
  readonly pocketDepth: Mm;
  /** What the tool would allow, whether or not a size was given by the maker. */
  readonly allowances: Allowances;
}

/** Board length that pockets cover when the maker leaves it open: half, the shallow end of common practice (no source). */
const USUAL_COVERAGE = 0.5;

/** How far a centre lining is tucked under each pocket mouth, mm. Common practice, no source. */
export const LINING_TUCK = 10;

/**
 * Pocket depth where the maker leaves it open: half a board beyond the seat, but never less than the holding depth asks
 * once the boards have travelled, nor, above that, more than lets the second board be loaded.
 */
export function usualPocketDepth(job: Job, thick: Needs): Mm {
  const { book, foreEdge, closed, flat } = thick;
  const travel = Math.max(0, (closed.length - flat.length) / 2);
  const holding = foreEdge.seat + job.ease.foreEdge_mm + job.pattern.rounding_mm / 2 + travel + job.pockets.hold_mm;
  const loading = foreEdge.seat + book.width * (1 - Math.cos(Math.min(book.foldBack, Math.PI)));
  const usual = foreEdge.seat + USUAL_COVERAGE * book.width;
  const longest = foreEdge.seat + book.width;
  return mm(Math.min(longest, roundUp(Math.max(holding, Math.min(usual, loading)), 0.5)));
}

/**
 * Derives every cut piece, sized for the thick end of the leather; sizes that the job gives are taken as they are.
 * @param job a parsed job
 * @param needs what the book asks over the weight range
 */
export function pieces(job: Job, needs: NeedsOverRange): Pieces {
  const { thick } = needs;
  const { book, leathers, foreEdge, foreEdgeSeat } = thick;
  const step = job.pattern.rounding_mm;
  const turned = job.pockets.construction === 'turned';
  const pocketDepth = job.pockets.depth_mm ?? usualPocketDepth(job, thick);
  const allowed = allowances(job, needs, pocketDepth);

  const width = job.pattern.outsideWidth_mm ?? snap(2 * book.width + book.spinePath + 2 * allowed.foreEdge.total, step);
  const height = job.pattern.outsideHeight_mm ?? snap(book.height + allowed.head.total + allowed.tail.total, step);
  const pocketWidth = turned
    ? pocketDepth
    : roundUp(foreEdge.margin + (foreEdgeSeat?.curve.length ?? 0) + pocketDepth - foreEdge.seat, step);

  const { lining } = leathers;
  const covered = pocketDepth - foreEdge.seat - job.ease.foreEdge_mm;
  const liningWrap =
    lining === null
      ? 0
      : Math.max(
          pathLength(thick.closed.path.pieces, lining.neutralDepth),
          pathLength(thick.flat.path.pieces, lining.neutralDepth),
        );
  return {
    outside: { width: mm(width), height: mm(height) },
    pocket: { width: mm(pocketWidth), height: mm(height), count: turned ? 0 : 2 },
    lining: lining === null ? null : { width: liningWidth(), height: mm(height) },
    pocketDepth,
    allowances: allowed,
  };

  /** A full lining is cut like the outside, but lies between the turns of turned ends; a centre lining spans the mouths. */
  function liningWidth(): Mm {
    if (job.construction.lining === 'centre') return roundUp(liningWrap - 2 * covered + 2 * LINING_TUCK, step);
    return mm(turned ? Math.max(0, width - 2 * (pocketDepth + foreEdge.turn)) : width);
  }
}

/** The sum with its rounding part already in it, freed of floating-point noise. */
const snap = (size: number, step: number): number => (step === 0 ? size : Math.round(size / step) * step);

/** Length between the places where the two board edges may seat, as cut: outside width less both ends. */
export function seatToSeat({ outside, pocketDepth }: Pieces, needs: Needs, turned: boolean): Mm {
  return mm(outside.width - 2 * (endNeed(needs) + (turned ? pocketDepth : 0)));
}
