import { type Allowances, allowances, type StrideSizes } from '../allowance/allowances.ts';
import type { Ease } from '../allowance/ease.ts';
import { endNeed, type Needs, type NeedsOverRange } from '../allowance/needs.ts';
import { roundDown, roundUp, snap } from '../allowance/roundUp.ts';
import { pathLength } from '../book/tautPath.ts';
import type { Job } from '../job/jobSchema.ts';
import { cutStep } from '../job/workSchema.ts';
import { changeOf } from '../leather/changeOf.ts';
import { handOf } from '../leather/handOf.ts';
import type { Vec2 } from '../math/vec2.ts';
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
  /** Width of the finished cover over the same on these pieces: 1 for those of a finished cover. */
  readonly growth: number;
  /** What the tool would allow, whether or not a size was given by the maker. */
  readonly allowances: Allowances;
  readonly ease: Ease;
  /** What they were when the holes were punched; left out for pieces that have not changed since. */
  readonly cut?: Pieces;
}

/** How far a centre lining is tucked under each pocket mouth, mm. Common practice, no source. */
export const LINING_TUCK = 10;

/**
 * Sizes of the pieces for pockets of one depth and the thick end of the leather, each rounded to the cut step. Sizes that
 * the job gives are taken as they are.
 *
 * Outside: 2 W + P + 2 fore-edge allowances by H + head + tail allowance. Pocket: margin + length of its seat's curve +
 * depth beyond the seat. Centre lining: its longer wrap less the board in both pockets, plus a tuck under each mouth, 0 at
 * least. Full lining: the outside's size, or between turned ends what lies between their turns.
 */
export function piecesAt(
  job: Job,
  needs: NeedsOverRange,
  pocketDepth: Mm,
  ease: Ease,
  strides: StrideSizes = {},
): Pieces {
  const { book, leathers, closed, flat, foreEdge, foreEdgeSeat } = needs.thick;
  const step = cutStep(job);
  const turned = job.pockets.construction === 'turned';
  const allowed = allowances(job, needs, pocketDepth, ease, strides);
  const change = changeOf(job).width;
  const width =
    job.pattern.outsideWidth_mm ??
    strides.width ??
    snap(2 * book.width + book.spinePath + 2 * allowed.foreEdge.total, step);
  const height =
    job.pattern.outsideHeight_mm ?? strides.height ?? snap(book.height + allowed.head.total + allowed.tail.total, step);
  const pocketWidth = turned
    ? pocketDepth
    : roundUp((foreEdge.margin + (foreEdgeSeat?.curve.length ?? 0) + pocketDepth - foreEdge.seat) / (1 + change), step);
  const liningWidth = (neutralDepth: number): Mm => {
    if (job.construction.lining === 'full')
      return turned
        ? roundDown(Math.max(0, width - (2 * (pocketDepth + foreEdge.turn)) / (1 + change)), step)
        : mm(width);
    const [whenClosed, whenFlat] = [closed, flat].map(({ path }) => pathLength(path.pieces, neutralDepth));
    const covered = pocketDepth - foreEdge.seat - ease.foreEdge_mm;
    return roundUp(Math.max(0, Math.max(whenClosed!, whenFlat!) - 2 * covered + 2 * LINING_TUCK) / (1 + change), step);
  };
  return {
    outside: { width: mm(width), height: mm(height) },
    pocket: { width: mm(pocketWidth), height: mm(height), count: turned ? 0 : 2 },
    lining: leathers.lining && { width: liningWidth(leathers.lining.neutralDepth), height: mm(height) },
    pocketDepth,
    growth: 1 + change,
    allowances: allowed,
    ease,
  };
}

/** Size of the pieces over that of the leather when the holes were punched, in width and height. */
export const sincePunched = ({ outside, cut }: Pieces): Vec2 =>
  cut === undefined ? [1, 1] : [outside.width / cut.outside.width, outside.height / cut.outside.height];

/** Length between the places where the two board edges may seat: outside width less both ends. */
export function seatToSeat({ outside, pocket, pocketDepth }: Pieces, needs: Needs): Mm {
  return mm(outside.width - 2 * (endNeed(needs) + (pocket.count === 0 ? pocketDepth : 0)));
}

/** The outside as it measures once it is made and dry. */
export function outsideOnceDry({ job, pieces: { outside } }: { readonly job: Job; readonly pieces: Pieces }): Piece {
  const change = changeOf(job);
  return { width: mm(outside.width * (1 + change.width)), height: mm(outside.height * (1 + change.height)) };
}

/**
 * The pieces once the cover is made: changed in size by how the leather is worked, and by the maker's hand, as pieces whose margins are
 * those drawn. Those that do not change, as they are.
 */
export function madePieces(job: Job, pieces: Pieces): Pieces {
  const change = changeOf(job);
  const hand = handOf(job);
  if (change.width === 0 && change.height === 0 && hand.width === 0 && hand.height === 0) return pieces;
  const made = <Cut extends Piece>(piece: Cut, adds = 0): Cut => ({
    ...piece,
    width: mm(piece.width * (1 + change.width) + adds),
    height: mm(piece.height * (1 + change.height) + hand.height),
  });
  const { outside, pocket, lining } = pieces;
  const isFull = job.construction.lining === 'full';
  return {
    ...pieces,
    outside: made(outside, hand.width),
    pocket: made(pocket),
    lining: lining && made(lining, isFull ? hand.width : 0),
    growth: 1,
    cut: pieces,
  };
}
