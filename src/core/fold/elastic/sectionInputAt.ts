import type { Needs } from '../../allowance/needs.ts';
import { type Opening, outlinePolygon, symmetricOpening } from '../../book/bookOutline.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import { distance } from '../../math/vec2.ts';
import { seatToSeat } from '../../pattern/pieces.ts';
import type { CoverDesign } from '../coverDesign.ts';
import type { SectionInput } from './sectionInput.ts';

/** Least leather between the held places, as a share of the book's thickness: the strip needs room to bend in. */
const FREE_SHARE = 0.25;

/**
 * Sets a cover up for the strip at one opening.
 *
 * The strip is held flat to each board as far as the pocket covers it, and slides there up to its seat; seating other
 * than centred poses the fore-edge gaps instead.
 * @param opening swing of both boards together, radians, or of each board on its own
 * @param crease shape that the folds were set to, and how much of it stayed; none for new leather
 */
export function sectionInputAt(
  design: CoverDesign,
  point: RangePoint,
  opening: number | Opening,
  crease?: SectionInput['crease'],
): SectionInput {
  const { job, pieces } = design;
  const needs = design.needs[point];
  const { book, leathers } = needs;
  const swing = typeof opening === 'number' ? symmetricOpening(opening) : opening;
  const outline = outlinePolygon(book, swing);
  const length = seatToSeat(pieces, needs);
  const points = outline.points;
  const boards = [distance(points[0]!, points[1]!), distance(points.at(-1)!, points.at(-2)!)];
  const held = heldLength(needs, pieces.pocketDepth, Math.min(...boards));
  return {
    outline: points.flat(),
    rate: outlineRate(book, swing),
    offset: outline.radius + (leathers.lining?.foldThickness ?? 0),
    thickness: leathers.outside.foldThickness,
    neutral: leathers.outside.neutral,
    length,
    held: { front: held, back: held },
    crease,
    scale: book.thickness,
    height: pieces.outside.height,
    modulus: job.leather.outside.modulus_MPa,
  };
}

/** How far from its fore-edge each board's leather is held flat: to the pocket mouth, with room left to bend at the spine. `board` is its straight part. */
function heldLength({ book, foreEdge }: Needs, pocketDepth: number, board: number): number {
  const longest = board - Math.min(FREE_SHARE * book.thickness, board / 2);
  return Math.max(board / 100, Math.min(pocketDepth - foreEdge.seat, longest));
}

/** Step of the difference quotient below, radians. */
const STEP = 1e-3;

/**
 * How the outline's points move for one radian of opening, mm: differences of second order, forward up to half open and
 * backward from there, for a joint begins to give way at the closed book and ends at the flat one.
 */
function outlineRate(book: Needs['book'], { front, back }: Opening): number[] {
  const step = front + back < Math.PI / 2 ? STEP : -STEP;
  const at = (steps: number): number[] =>
    outlinePolygon(book, { front: front + (steps * step) / 2, back: back + (steps * step) / 2 }).points.flat();
  const [here, near, far] = [at(0), at(1), at(2)];
  return here.map((v, i) => (4 * near[i]! - far[i]! - 3 * v) / (2 * step));
}
