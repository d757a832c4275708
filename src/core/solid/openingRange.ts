import { boardDirections, symmetricOpening } from '../book/bookOutline.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import { type ReachRange, reachRange } from '../fold/section/reachRange.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { findLevel } from '../math/findLevel.ts';
import { remembered } from '../math/remembered.ts';
import { standingAt } from './standing.ts';

/** Openings between which the cover can stand on its book, radians. */
export interface OpeningRange extends ReachRange {
  /** Opening that the pockets force on a book too thin for them; 0 for most books. */
  readonly forced: number;
}

/** Smallest and largest opening shown: where the cover reaches, and the boards stay apart by the pockets between them. */
export const openingRange = remembered((design: CoverDesign, point: RangePoint): OpeningRange | null => {
  const { seats, staysOpen } = design.fits[point];
  if (!seats || staysOpen === null) return null;
  const forced = forcedOpening(design, point);
  const range = reachRange(design, point, forced);
  return range && { ...range, forced };
});

/** Least half thickness of pages between the pockets, mm. */
const LEAST_LEAVES = 0.1;

/** Opening at which the two pockets just clear each other at their mouths and at the fore-edge. */
function forcedOpening(design: CoverDesign, point: RangePoint): number {
  const { book, leathers } = design.needs[point];
  const depth = book.board + leathers.pocket.thickness + LEAST_LEAVES;
  const room = (opening: number, along: number): number => {
    const tilt = boardDirections(book, symmetricOpening(opening)).front;
    return book.thickness / 2 + along * Math.sin(tilt) - depth * Math.cos(tilt);
  };
  if (room(0, 0) >= 0 && room(0, book.width) >= 0) return 0;
  const { mouths } = standingAt(design, point, 0);
  const mouth = Math.max(0, Math.min(mouths.front, mouths.back));
  return findLevel((opening) => Math.min(room(opening, mouth), room(opening, book.width)), 0, 0, Math.PI / 2);
}
