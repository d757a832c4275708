import type { Needs } from '../allowance/needs.ts';
import { wrapAt } from '../allowance/wrap.ts';
import { symmetricOpening } from '../book/bookOutline.ts';
import type { Job } from '../job/jobSchema.ts';
import { findLevel } from '../math/findLevel.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { type Pieces, seatToSeat } from '../pattern/pieces.ts';
import { type Mm, mm } from '../units/mm.ts';
import { type Radians, radians } from '../units/radians.ts';

/** How a cut pattern fits the book in leather of one thickness. Gap is positive, overrun negative. */
export interface Fit {
  readonly foreEdge: { readonly front: Mm; readonly back: Mm };
  /** Spare length between the two seats with the book closed; shared out to front, back or spine by the seating. */
  readonly closedSlack: Mm;
  /** The same with the book flat. */
  readonly flatSlack: Mm;
  readonly head: Mm;
  readonly tail: Mm;
  readonly closes: boolean;
  /** Smallest opening that the wrap allows: 0 when it closes, null when even flat is too long for it. */
  readonly staysOpen: Radians | null;
  /** How much wider than closed the fore-edges stand at that opening (chord). */
  readonly gape: Mm;
  /** Largest opening up to flat that the wrap allows; null when it allows none. */
  readonly opensTo: Radians | null;
  /** How far each board moves in its pocket between closed and flat. */
  readonly boardTravel: Mm;
  readonly pocket: PocketFit;
  /** How the boards go in at head and tail and from seam to seam: false where an edge overruns. */
  readonly seats: boolean;
}

interface PocketFit {
  readonly depth: Mm;
  /** Board length in the pocket at the worst of closed and flat, with the fore-edge gap taken by that board. */
  readonly held: Mm;
  /** Fold-back from flat needed to get the second board past its pocket mouth. */
  readonly loadingAngle: Radians;
  readonly loads: boolean;
}

/** Openings tried between closed and flat to bracket where the wrap just reaches; its length changes gently between them. */
const OPENING_STEPS = 12;

/**
 * Compares a cut pattern with the needs of the book (each function below states its rule).
 * @param job gives seating and construction
 * @param pieces the cut pieces
 * @param needs what the book asks at one thickness of the leather
 */
export function coverFit(job: Job, pieces: Pieces, needs: Needs): Fit {
  const between = seatToSeat(pieces, needs);
  const { wrap: closedSlack, height: heightSlack } = spareWhenClosed(job, pieces, needs);
  const foreEdge = shareSlack(closedSlack, job.seating);
  const [head, tail] = shareHeight(heightSlack, pieces.ease);
  const staysOpen = smallestOpening(needs, between);
  const boardTravel = Math.abs(needs.closed.length - needs.flat.length) / 2;
  return {
    foreEdge,
    closedSlack: mm(closedSlack),
    flatSlack: mm(between - needs.flat.length),
    head,
    tail,
    closes: isEnough(closedSlack),
    staysOpen,
    gape: mm(gapeAt(needs, staysOpen ?? Math.PI)),
    opensTo: largestOpening(needs, between, staysOpen),
    boardTravel: mm(boardTravel),
    pocket: pocketFit(needs, pieces.pocketDepth, foreEdge),
    seats: staysOpen !== null && isEnough(heightSlack),
  };
}

/** Spare wrap between the two seats, and spare height between head and tail, with the book closed, mm. */
export const spareWhenClosed = (
  job: Job,
  pieces: Pieces,
  needs: Needs,
): { readonly wrap: number; readonly height: number } => ({
  wrap: seatToSeat(pieces, needs) - needs.closed.length,
  height: pieces.outside.height - 2 * job.seam.edgeMargin_mm - needs.book.height - 2 * needs.headTail.needed,
});

/** Whether leather with this much to spare, mm, is long enough. */
const isEnough = (spare: number): boolean => spare >= -TOLERANCE.length;

/** Shares the spare wrap between the two fore-edges by where the boards sit. An overrun is never at the spine. */
function shareSlack(slack: number, seating: Job['seating']): Fit['foreEdge'] {
  if (seating === 'front') return { front: mm(0), back: mm(slack) };
  if (seating === 'back') return { front: mm(slack), back: mm(0) };
  if (seating === 'spine' && slack > 0) return { front: mm(0), back: mm(0) };
  return { front: mm(slack / 2), back: mm(slack / 2) };
}

/** Head and tail share the spare height so that both keep the difference of the eases wished. */
function shareHeight(slack: number, ease: Pieces['ease']): [Mm, Mm] {
  const lean = (ease.head_mm - ease.tail_mm) / 2;
  const fits = slack >= 2 * Math.abs(lean);
  return [mm(slack / 2 + (fits ? lean : 0)), mm(slack / 2 - (fits ? lean : 0))];
}

const wrapLength = (needs: Needs, opening: number): number =>
  wrapAt(needs.book, symmetricOpening(opening), needs.leathers).length;

/**
 * Smallest opening at which the wrap reaches from seat to seat. A wrap short by s leaves turning pi - s/z, so a book
 * with parallel boards and no joint dip stays open by s/z.
 */
function smallestOpening(needs: Needs, between: number): Radians | null {
  if (isEnough(between - needs.closed.length)) return radians(0);
  for (let i = 1; i <= OPENING_STEPS; i++) {
    const opening = (Math.PI * i) / OPENING_STEPS;
    if (isEnough(between - wrapLength(needs, opening))) {
      const before = (Math.PI * (i - 1)) / OPENING_STEPS;
      return radians(findLevel((angle) => -wrapLength(needs, angle), -between, before, opening));
    }
  }
  return null;
}

/** Largest opening up to flat for which the wrap suffices, going up from the smallest one. */
function largestOpening(needs: Needs, between: number, from: Radians | null): Radians | null {
  if (from === null) return null;
  if (isEnough(between - needs.flat.length)) return radians(Math.PI);
  let reached: number = from;
  for (let i = 1; i <= OPENING_STEPS; i++) {
    const opening = (Math.PI * i) / OPENING_STEPS;
    if (opening <= from) continue;
    if (!isEnough(between - wrapLength(needs, opening)))
      return radians(findLevel((angle) => wrapLength(needs, angle), between, reached, opening));
    reached = opening;
  }
  return radians(reached);
}

/** Chord between the fore-edges beyond the closed book's: 2 W (sin(w + phi/2) - sin w), w the wedge. */
function gapeAt({ book }: Needs, opening: number): number {
  return 2 * book.width * (Math.sin(book.wedge + opening / 2) - Math.sin(book.wedge));
}

/**
 * Whether the pockets hold the boards, and whether the second board can be loaded: folded back by theta from flat, its
 * tip clears the mouth when cos(theta) <= 1 - (depth - seat - gap) / W.
 */
function pocketFit(needs: Needs, depth: Mm, gaps: Fit['foreEdge']): PocketFit {
  const { book, closed, flat, foreEdge } = needs;
  const covered = (gap: number): number => depth - foreEdge.seat - Math.max(0, gap);
  const drawnOut = Math.max(0, (closed.length - flat.length) / 2);
  const held = covered(Math.max(gaps.front, gaps.back)) - drawnOut;
  const cosine = 1 - covered(Math.min(gaps.front, gaps.back)) / book.width;
  const loadingAngle = Math.acos(Math.max(-1, Math.min(1, cosine)));
  return {
    depth,
    held: mm(Math.max(0, Math.min(held, book.width))),
    loadingAngle: radians(loadingAngle),
    loads: loadingAngle <= book.foldBack + TOLERANCE.angle,
  };
}
