import { boardDirections, jointSlide, symmetricOpening } from '../book/bookOutline.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import type { Settled } from '../fold/elastic/settledCover.ts';
import { flatHalf, type HalfSection, halfSection } from '../fold/section/halfSection.ts';
import { bowedSection, wrapSection } from '../fold/section/wrapSection.ts';
import { FRONT_SHARE } from '../fold/spareWrap.ts';
import type { RangePoint } from '../leather/leatherModel.ts';

/** The cover's section at one opening, with the spare length shared out. */
export interface Standing {
  readonly opening: number;
  /** Swing of each board from the closed book, and direction of the front board from +x, radians. */
  readonly swing: number;
  readonly direction: number;
  readonly front: HalfSection;
  readonly back: HalfSection;
  /** How far the bench is turned from the back board toward the book's back, radians. */
  readonly benchTilt: number;
  /** Pocket mouths from their hinges, mm. */
  readonly frontMouth: number;
  readonly backMouth: number;
  /** Spare length that the bow behind the spine has taken up, mm. */
  readonly bowed: number;
  /** Spare length of the taut cover at this opening, mm; negative where it is short. */
  readonly spare: number;
}

/**
 * Section of the cover with the book at an opening, its spare length shared between front, back and spine by the seating,
 * or, where the elastic strip has settled, as the strip leaves it.
 * @param opening radians, 0 to pi
 * @param settled what the strip has found; without it the cover is taut
 */
export function standingAt(design: CoverDesign, point: RangePoint, opening: number, settled?: Settled): Standing {
  const { job, pieces } = design;
  const needs = design.needs[point];
  const straight = wrapSection(job, pieces, needs, opening);
  const taut = job.seating === 'spine' ? bowedSection(job, pieces, needs, straight) : straight;
  const [frontSection, backSection] = settled
    ? [settled.front, settled.back].map((path) => wrapSection(job, pieces, needs, opening, { settled: path }))
    : [taut, taut];
  // Each section counts the spare length as if the other half were like it.
  const spare = (frontSection!.slack + backSection!.slack) / 2;
  // Leather that pulls on its seats is stretched a little past its cut length; that is no overrun.
  const slack = settled ? Math.max(0, spare) : spare;
  const share = settled ? settled.frontShare : FRONT_SHARE[job.seating];
  const front = halfSection(frontSection!, needs, slack * share, pieces.pocketDepth);
  const back = halfSection(backSection!, needs, slack * (1 - share), pieces.pocketDepth);
  const { book, foreEdge } = needs;
  const tip = book.width + jointSlide(book, opening / 2);
  const mouth = (gap: number): number => tip + gap + foreEdge.seat - pieces.pocketDepth;
  return {
    opening,
    swing: opening / 2,
    direction: boardDirections(book, symmetricOpening(opening)).front,
    benchTilt: settled?.benchTilt ?? 0,
    front,
    back,
    frontMouth: mouth(front.gap),
    backMouth: mouth(back.gap),
    bowed: straight.slack - spare,
    spare: straight.slack,
  };
}

/** The cover flat without a book, used where the book does not go in: no board, so no gap. The book is open flat. */
export function standingFlat(design: CoverDesign, point: RangePoint): Standing {
  const needs = design.needs[point];
  const half = flatHalf(design.pieces, needs);
  const mouth = needs.book.width + needs.foreEdge.seat - design.pieces.pocketDepth;
  const direction = boardDirections(needs.book, symmetricOpening(Math.PI)).front;
  return {
    opening: Math.PI,
    swing: Math.PI / 2,
    direction,
    benchTilt: 0,
    front: half,
    back: half,
    frontMouth: mouth,
    backMouth: mouth,
    bowed: 0,
    spare: 0,
  };
}
