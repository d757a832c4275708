import { boardDirections, jointSlide, symmetricOpening } from '../../book/bookOutline.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import type { CoverDesign } from '../coverDesign.ts';
import { flatHalf, type HalfSection, halfSection } from '../section/halfSection.ts';
import { bowedSection, wrapSection } from '../section/wrapSection.ts';

/** The cover's section at one opening, with the spare length shared out. */
export interface Standing {
  readonly opening: number;
  /** Swing of each board from the closed book, and direction of the front board from +x, radians. */
  readonly swing: number;
  readonly direction: number;
  readonly front: HalfSection;
  readonly back: HalfSection;
  /** Pocket mouths from their hinges, mm. */
  readonly frontMouth: number;
  readonly backMouth: number;
  /** Spare length that the bow behind the spine has taken up, mm. */
  readonly bowed: number;
}

/**
 * Section of the cover with the book at an opening, its spare length shared between front, back and spine by the seating.
 * @param opening radians, 0 to pi
 */
export function standingAt(design: CoverDesign, point: RangePoint, opening: number): Standing {
  const { job, pieces } = design;
  const needs = design.needs[point];
  const straight = wrapSection(job, pieces, needs, opening);
  const section = job.seating === 'spine' ? bowedSection(job, pieces, needs, straight) : straight;
  const share = { centred: 0.5, spine: 0.5, front: 0, back: 1 }[job.seating];
  const front = halfSection(section, needs, section.slack * share, pieces.pocketDepth);
  const back = halfSection(section, needs, section.slack * (1 - share), pieces.pocketDepth);
  const { book, foreEdge } = needs;
  const tip = book.width + jointSlide(book, opening / 2);
  const mouth = (gap: number): number => tip + gap + foreEdge.seat - pieces.pocketDepth;
  return {
    opening,
    swing: opening / 2,
    direction: boardDirections(book, symmetricOpening(opening)).front,
    front,
    back,
    frontMouth: mouth(front.gap),
    backMouth: mouth(back.gap),
    bowed: straight.slack - section.slack,
  };
}

/** The cover lying flat by itself, for a book that does not go in: no board, so no gap. The book is open flat. */
export function standingFlat(design: CoverDesign, point: RangePoint): Standing {
  const needs = design.needs[point];
  const half = flatHalf(design.pieces, needs);
  const mouth = needs.book.width + needs.foreEdge.seat - design.pieces.pocketDepth;
  const direction = boardDirections(needs.book, symmetricOpening(Math.PI)).front;
  return {
    opening: Math.PI,
    swing: Math.PI / 2,
    direction,
    front: half,
    back: half,
    frontMouth: mouth,
    backMouth: mouth,
    bowed: 0,
  };
}
