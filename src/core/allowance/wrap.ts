import type { BookModel } from '../book/bookModel.ts';
import { bookOutline, type Opening } from '../book/bookOutline.ts';
import { pathLength, type TautPath, tautPath } from '../book/tautPath.ts';
import type { CoverLeathers } from '../leather/leatherModel.ts';
import { type Mm, mm } from '../units/mm.ts';

/** Depth of the outside's neutral line from the book: z = lining thickness (where it lies between) + K t. */
export function neutralOffset(leathers: CoverLeathers): Mm {
  return mm((leathers.lining?.foldThickness ?? 0) + leathers.outside.neutralDepth);
}

/** The wrap at one opening: the taut path and its length on the outside's neutral line. */
export interface Wrap {
  readonly path: TautPath;
  /** Front board's fore-edge to back board's, seats not included: hull + z turning (Steiner). */
  readonly length: Mm;
}

/**
 * Length of leather from fore-edge to fore-edge with the book at a given opening.
 * Closed and parallel it is 2 W + P + pi z; flat it is 2 W + P + 2 joint dips.
 */
export function wrapAt(book: BookModel, opening: Opening, leathers: CoverLeathers): Wrap {
  return wrapAlong(tautPath(bookOutline(book, opening)), leathers);
}

/** The wrap along a path that is known. */
export function wrapAlong(path: TautPath, leathers: CoverLeathers): Wrap {
  return { path, length: mm(pathLength(path.pieces, neutralOffset(leathers))) };
}
