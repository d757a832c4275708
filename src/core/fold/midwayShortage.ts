import { wrapAt } from '../allowance/wrap.ts';
import { symmetricOpening } from '../book/bookOutline.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { seatToSeat } from '../pattern/pieces.ts';
import { type Mm, mm } from '../units/mm.ts';
import { type Radians, radians } from '../units/radians.ts';
import type { CoverDesign } from './coverDesign.ts';

/** Openings looked at between closed and flat. */
const STEPS = 36;

/**
 * How far the wrap is short at the opening that needs most, where that is neither closed nor flat: over a rounded back a joint
 * can lengthen the wrap sooner than unbending shortens it. Allowances serve the closed and the flat book alone.
 * @returns null where the wrap is long enough all the way, or is short at one of the two ends, which have rows of their own
 */
export function midwayShortage(
  { fits, needs, pieces }: CoverDesign,
  point: RangePoint,
): { readonly short: Mm; readonly opening: Radians } | null {
  const { closedSlack, flatSlack } = fits[point];
  if (Math.min(closedSlack, flatSlack) < -TOLERANCE.length) return null;
  const { book, leathers } = needs[point];
  const between = seatToSeat(pieces, needs[point]);
  let worst = { short: mm(TOLERANCE.length), opening: radians(0) };
  for (let i = 1; i < STEPS; i++) {
    const opening = radians((Math.PI * i) / STEPS);
    const short = mm(wrapAt(book, symmetricOpening(opening), leathers).length - between);
    if (short > worst.short) worst = { short, opening };
  }
  return worst.opening > 0 ? worst : null;
}
