import { type BookModel, bookModel, hasSameSection } from '../book/bookModel.ts';
import { CLOSED, FLAT } from '../book/bookOutline.ts';
import type { Job } from '../job/jobSchema.ts';
import { bendLength } from '../leather/bend.ts';
import { type CoverLeathers, coverLeathers, type RangePoint } from '../leather/leatherModel.ts';
import { type Mm, mm } from '../units/mm.ts';
import { type BalancedSeat, balancedSeat, type ForeEdgeSeat, foreEdgeSeat } from './seat.ts';
import { type Wrap, wrapAlong, wrapAt } from './wrap.ts';

/** What one end of the outside needs beyond the wrap. A seamed end has margin and seat, a turned end only the turn. */
interface ForeEdgeNeed {
  readonly margin: Mm;
  /** c, board edge to seam line. */
  readonly seat: Mm;
  /** Turned construction: leather taken round the board edge, b + pi K t. */
  readonly turn: Mm;
}

/** All that one book asks of a cover in leather of one thickness. */
export interface Needs {
  readonly book: BookModel;
  readonly leathers: CoverLeathers;
  readonly closed: Wrap;
  readonly flat: Wrap;
  readonly foreEdge: ForeEdgeNeed;
  /** The pocket's curve at the fore-edge seam; null where the end is turned. */
  readonly foreEdgeSeat: ForeEdgeSeat | null;
  /** Head and tail are alike. */
  readonly headTail: BalancedSeat;
}

/** Needs over the weight range. */
export type NeedsOverRange = Readonly<Record<RangePoint, Needs>>;

/** Derives the needs at the thin end, the middle and the thick end. */
export function needsOverRange(job: Job): NeedsOverRange {
  const nominal = needsAt(job, 'nominal');
  return { thin: needsAt(job, 'thin', nominal), nominal, thick: needsAt(job, 'thick', nominal) };
}

/** Whether every leather of a cover has one thickness, so that there is no thin and no thick end to tell apart. */
export const hasOneThickness = ({ thin, thick }: NeedsOverRange): boolean =>
  (['outside', 'pocket', 'lining'] as const).every(
    (leather) => thin.leathers[leather]?.thickness === thick.leathers[leather]?.thickness,
  );

/**
 * The seat that head and tail are cut for: the one that asks for most. That is the thick end's, except where two unequal
 * leathers share the board: a heavier pocket can then take more of the offset and spare the outside a little.
 */
export function largestHeadTail(needs: NeedsOverRange): BalancedSeat {
  return [needs.nominal, needs.thin].reduce(
    (largest, { headTail }) => (headTail.needed > largest.needed ? headTail : largest),
    needs.thick.headTail,
  );
}

/**
 * Derives the needs of a job at one point of its weight range.
 * @param job a parsed job
 * @param point thin end, middle or thick end of every leather in it
 * @param known as for `needsIn`
 */
export const needsAt = (job: Job, point: RangePoint, known?: Needs): Needs =>
  needsIn(job, coverLeathers(job, point), known);

/**
 * Derives the needs of a job in these leathers.
 * @param known needs of a job that differs in no more than its book and leathers: what follows from equal measures is taken from
 *   them and not computed again
 */
export function needsIn(job: Pick<Job, 'book' | 'pockets' | 'seam'>, leathers: CoverLeathers, known?: Needs): Needs {
  const { outside, pocket } = leathers;
  const book = bookModel(job.book, pocket.thickness);
  const turned = job.pockets.construction === 'turned';
  const wrap = (at: 'closed' | 'flat'): Wrap => {
    if (known === undefined || !hasSameSection(book, known.book, at)) return wrapAt(book, OPENINGS[at], leathers);
    return leathers === known.leathers ? known[at] : wrapAlong(known[at].path, leathers);
  };
  const [closed, flat] = [wrap('closed'), wrap('flat')];
  if (known !== undefined && leathers === known.leathers && book.board === known.book.board)
    return { ...known, book, closed, flat };
  const seat = turned ? null : foreEdgeSeat(book.board, pocket);
  return {
    book,
    leathers,
    closed,
    flat,
    foreEdge: {
      margin: turned ? mm(0) : job.seam.edgeMargin_mm,
      seat: seat?.seat ?? mm(0),
      turn: turned ? mm(book.board + bendLength(Math.PI, 0, outside.thickness, outside.neutral)) : mm(0),
    },
    foreEdgeSeat: seat,
    headTail: balancedSeat(book.board, outside, pocket),
  };
}

const OPENINGS = { closed: CLOSED, flat: FLAT } as const;

/** Length of leather that each end of the outside takes beyond the wrap, a turned end's depth not included. */
export const endNeed = ({ foreEdge }: Needs): Mm => mm(foreEdge.margin + foreEdge.seat + foreEdge.turn);
