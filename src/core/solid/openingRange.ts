import { boardDirections, symmetricOpening } from '../book/bookOutline.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import { wrapSection } from '../fold/section/wrapSection.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { findLevel } from '../math/findLevel.ts';
import { standingAt } from './standing.ts';

/** Openings between which the cover can stand on its book, radians. */
export interface OpeningRange {
  readonly least: number;
  readonly most: number;
  /** Opening that the pockets force on a book too thin for them; 0 for most books. */
  readonly forced: number;
}

/** Spare length that counts as none, mm: floating-point noise of sums of a few hundred mm. */
const TOUCH = 1e-6;
/** Openings tried, from the widest down, to find one at which the cover reaches. */
const STEPS = 12;

/**
 * Smallest and largest opening shown; null where the boards do not go in, or the cover reaches its seats at none.
 *
 * The fit gives both from the length of the wrap. Here the cover must also reach while it is held flat to the boards as
 * far as the pockets go, which over a rounded back takes more than the taut path, and the boards stay apart by the pockets
 * between them.
 */
export function openingRange(design: CoverDesign, point: RangePoint): OpeningRange | null {
  const { staysOpen, opensTo, seats } = design.fits[point];
  if (!seats || staysOpen === null || opensTo === null) return null;
  const forced = forcedOpening(design, point);
  const least = Math.max(staysOpen, forced);
  const widest = Math.max(least, Math.min(Math.PI, opensTo));
  // What thinned layers cost is pressed out of the seats.
  const spare = (angle: number): number => {
    const { slack, slanted } = wrapSection(design.job, design.made, design.needs[point], angle);
    return slack + slanted;
  };
  if (spare(widest) >= -TOUCH) return { least, most: widest, forced };
  for (let i = 1; i <= STEPS; i++) {
    const angle = widest + ((least - widest) * i) / STEPS;
    if (spare(angle) < -TOUCH) continue;
    const before = widest + ((least - widest) * (i - 1)) / STEPS;
    return { least, most: findLevel((x) => -spare(x), 0, angle, before), forced };
  }
  return null;
}

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
  const { frontMouth, backMouth } = standingAt(design, point, 0);
  const mouth = Math.max(0, Math.min(frontMouth, backMouth));
  return findLevel((opening) => Math.min(room(opening, mouth), room(opening, book.width)), 0, 0, Math.PI / 2);
}
