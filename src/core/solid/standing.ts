import { boardDirections, jointSlide, type Opening, symmetricOpening } from '../book/bookOutline.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import type { Settled } from '../fold/elastic/settledCover.ts';
import { type HalfSection, halfSection } from '../fold/section/halfSection.ts';
import { bowedSection, wrapSection } from '../fold/section/wrapSection.ts';
import { FRONT_SHARE } from '../fold/spareWrap.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import type { Vec2 } from '../math/vec2.ts';

/** Where the book is: turned about the origin, radians, then moved, mm. At rest its spine has its middle in the origin. */
export interface BookPlace {
  readonly turn: number;
  readonly shift: Vec2;
}

const AT_REST: BookPlace = { turn: 0, shift: [0, 0] };

/** A quantity of each half of the cover. */
export type Sides<T> = Readonly<Record<'front' | 'back', T>>;

/** How cover and book stand at one moment, in section. Two halves that are alike are one and the same object. */
export interface Standing {
  readonly front: HalfSection;
  readonly back: HalfSection;
  /** Swing of each board from the closed book, radians. */
  readonly swings: Opening;
  readonly place: BookPlace;
  /** Turn that lays the cover on the bench, radians. */
  readonly benchTurn: number;
  /** Pocket mouths from their hinges once the boards are home, mm. */
  readonly mouths: Sides<number>;
  /** Spare length that the bow behind the spine has taken up, mm. */
  readonly bowed: number;
  /** Spare length of the taut cover at this opening, mm; negative where it is short. */
  readonly spare: number;
}

/** Direction of a board from its hinge to its fore-edge as the book stands, radians from +x. */
export const boardDirection = (
  { needs }: CoverDesign,
  point: RangePoint,
  { swings, place }: Pick<Standing, 'swings' | 'place'>,
  side: 'front' | 'back',
): number => boardDirections(needs[point].book, swings)[side] + place.turn;

export const openingOf = ({ swings }: Pick<Standing, 'swings'>): number => swings.front + swings.back;

/**
 * The cover with the book at an opening, its spare length shared between front, back and spine by the seating,
 * or, where the elastic strip has settled, as the strip leaves it.
 * @param opening radians, 0 to pi
 * @param settled what the strip has found; without it the cover is taut
 * @param bow share of the bow behind the spine that is there, where boards sit at the spine
 */
export function standingAt(
  design: CoverDesign,
  point: RangePoint,
  opening: number,
  settled?: Settled,
  bow = 1,
): Standing {
  const { job, pieces } = design;
  const needs = design.needs[point];
  const straight = wrapSection(job, pieces, needs, opening);
  const taut = job.seating === 'spine' ? bowedSection(job, pieces, needs, straight, bow) : straight;
  const [frontSection, backSection] = settled
    ? [settled.front, settled.back].map((path) => wrapSection(job, pieces, needs, opening, { settled: path }))
    : [taut, taut];
  // Each section counts the spare length as if the other half were like it.
  const spare = (frontSection!.slack + backSection!.slack) / 2;
  // Leather that pulls on its seats is stretched a little past its cut length; that is no overrun.
  const slack = settled ? Math.max(0, spare) : spare;
  const share = settled ? settled.frontShare : FRONT_SHARE[job.seating];
  const front = halfSection(frontSection!, needs, slack * share, pieces.pocketDepth);
  const isAlike = frontSection === backSection && share === 0.5;
  const back = isAlike ? front : halfSection(backSection!, needs, slack * (1 - share), pieces.pocketDepth);
  const { book, foreEdge } = needs;
  const swings = symmetricOpening(opening);
  const tip = book.width + jointSlide(book, swings.front);
  const mouth = (gap: number): number => tip + gap + foreEdge.seat - pieces.pocketDepth;
  return {
    front,
    back,
    swings,
    place: AT_REST,
    benchTurn: boardDirections(book, swings).front - (settled?.benchTilt ?? 0),
    mouths: { front: mouth(front.gap), back: mouth(back.gap) },
    bowed: straight.slack - spare,
    spare: straight.slack,
  };
}
