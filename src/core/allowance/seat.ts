import type { LeatherModel } from '../leather/leatherModel.ts';
import { findLevel } from '../math/findLevel.ts';
import { type Mm, mm } from '../units/mm.ts';
import { excess, type ReverseCurve, reverseCurve } from './reverseCurve.ts';

/** Where a board edge comes to rest against the fore-edge seam. The outside lies flat, the pocket alone curves. */
export interface ForeEdgeSeat {
  /** c: from the seam line to the nearest place of the board edge. */
  readonly seat: Mm;
  readonly curve: ReverseCurve;
}

/**
 * Fore-edge seat: c = d(h = b) of the pocket leather. Its mouth is free, so the leather the curve takes is drawn from it.
 * @param board b, mm, over 0
 */
export function foreEdgeSeat(board: number, pocket: LeatherModel): ForeEdgeSeat {
  const curve = reverseCurve(board, pocket.seatRadius);
  return { seat: curve.run, curve };
}

/** Where a board edge comes to rest against the seam at head or tail, between two layers cut to one height. */
export interface BalancedSeat {
  /** From the seam line, where it ends up, to the board edge: the larger of the two runs. */
  readonly seat: Mm;
  /** Leather drawn in by the curves; the same for both layers. */
  readonly excess: Mm;
  /** Leather needed from board edge to seam line: seat + excess. */
  readonly needed: Mm;
  readonly outside: ReverseCurve;
  readonly pocket: ReverseCurve;
  /** Offset that the outside takes, h_o; the pocket takes b - h_o. */
  readonly outsideOffset: Mm;
}

/**
 * Head or tail seat: both layers start and end together, so L - d is the same for both, which fixes their shares of the
 * board thickness, h_o + h_p = b. Equal leathers share it evenly.
 * @param board b, mm, over 0
 */
export function balancedSeat(board: number, outside: LeatherModel, pocket: LeatherModel): BalancedSeat {
  const difference = (share: number): number =>
    excess(reverseCurve(share, outside.seatRadius)) - excess(reverseCurve(board - share, pocket.seatRadius));
  const outsideOffset = outside.seatRadius === pocket.seatRadius ? board / 2 : findLevel(difference, 0, 0, board);
  const outsideCurve = reverseCurve(outsideOffset, outside.seatRadius);
  const pocketCurve = reverseCurve(board - outsideOffset, pocket.seatRadius);
  const seat = Math.max(outsideCurve.run, pocketCurve.run);
  const drawnIn = excess(outsideCurve);
  return {
    seat: mm(seat),
    excess: drawnIn,
    needed: mm(seat + drawnIn),
    outside: outsideCurve,
    pocket: pocketCurve,
    outsideOffset: mm(outsideOffset),
  };
}
