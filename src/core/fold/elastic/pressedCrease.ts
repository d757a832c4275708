import { bookOutline, symmetricOpening } from '../../book/bookOutline.ts';
import { tautPath } from '../../book/tautPath.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import type { CoverDesign } from '../coverDesign.ts';
import { spareWrap } from '../spareWrap.ts';
import { sectionInputAt } from './sectionInputAt.ts';

/** Angles kept of the pressed shape: over twice as many as the strip has edges. */
const PLACES = 501;

/**
 * Shape of the outside pressed round the closed book, as tangent angles at even spaces between the two held places, rad: what
 * casing under weights or the bone folder sets the crease to.
 *
 * The taut path on the mid-surface. A fold is centred where the taut path has it and has the inside radius
 * max(r, bendRatio t), r that of the book's own edge with the lining: leather pressed over a sharp edge turns no sharper than
 * its bend ratio. The spare wrap is pushed home.
 *
 * @param opening that of the book while it was pressed, radians: the least that the wrap allows
 */
export function pressedCrease(design: CoverDesign, point: RangePoint, opening: number): Float64Array {
  const { book, leathers } = design.needs[point];
  const { thickness, held } = sectionInputAt(design, point, opening);
  const lining = leathers.lining?.foldThickness ?? 0;
  const depth = lining + thickness / 2;
  let end = 0;
  const folds: { readonly middle: number; readonly length: number; readonly angle: number }[] = [];
  for (const piece of tautPath(bookOutline(book, symmetricOpening(opening))).pieces) {
    const length = piece.kind === 'line' ? piece.length : piece.angle * (piece.radius + depth);
    if (piece.kind === 'bend') {
      const pressed = Math.max(piece.radius + lining, leathers.outside.bendRatio * thickness) + thickness / 2;
      folds.push({ middle: end + length / 2, length: piece.angle * pressed, angle: piece.angle });
    }
    end += length;
  }
  const room = spareWrap(design, point).pushedHome;
  const start = held.front - room.front;
  const step = (end - held.back + room.back - start) / (PLACES - 1);
  return Float64Array.from({ length: PLACES }, (_, i) =>
    folds.reduce((sum, { middle, length, angle }) => {
      const share = (start + i * step - middle) / length + 1 / 2;
      return sum + angle * Math.max(0, Math.min(1, share));
    }, 0),
  );
}
