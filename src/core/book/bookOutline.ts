import { wrapAngle } from '../math/angle.ts';
import { circularSegment } from '../math/circularSegment.ts';
import { addScaled, heading, leftOf, subtract, type Vec2 } from '../math/vec2.ts';
import { type BookModel, edgeSaving } from './bookModel.ts';

/** Swing of each board about its hinge from the closed book, radians: 0 closed, pi/2 flat, more when folded back. */
export interface Opening {
  readonly front: number;
  readonly back: number;
}

export const CLOSED: Opening = { front: 0, back: 0 };
export const FLAT: Opening = { front: Math.PI / 2, back: Math.PI / 2 };

/** Both boards swung alike, `angle` in all. */
export const symmetricOpening = (angle: number): Opening => ({ front: angle / 2, back: angle / 2 });

/**
 * Outside of the book across the spine, as pegs for a taut string, in the order front fore-edge, spine, back fore-edge.
 *
 * Rounded edges are carried by shrinking: `points` outline the book shrunk by `radius`, and the true outside is the
 * points' hull grown by `radius` again. Growing further by z gives the leather's neutral line (Steiner).
 */
export interface BookOutline {
  readonly points: readonly Vec2[];
  readonly radius: number;
  /** The points of a rounded back, as first and last index, and the circle that they lie on; null for a flat back. */
  readonly back: { readonly first: number; readonly last: number; readonly radius: number } | null;
}

/** Pegs along a rounded back. 48 put the point where a bridging leather leaves the arc within 1e-4 mm in length. */
const BACK_PEGS = 48;

/** Direction of each board from its hinge to its fore-edge, radians from +x. */
export function boardDirections(book: BookModel, opening: Opening): { front: number; back: number } {
  return { front: book.wedge + opening.front, back: -book.wedge - opening.back };
}

/**
 * How far a board's fore-edge stands farther from its hinge than when closed, mm.
 *
 * The joint lets the board slide out by its dip, linearly from closed to flat. A rounded edge pulls it in by as much as
 * the edge saves less when it unbends, for the book's own covering does not stretch.
 */
export function jointSlide(book: BookModel, swing: number): number {
  const dip = book.jointDip * Math.max(0, Math.min(1, swing / (Math.PI / 2)));
  return dip - (edgeSaving(book.edgeRadius, book.edgeTurn) - edgeSaving(book.edgeRadius, book.edgeTurn - swing));
}

/**
 * Outline of the book at any opening.
 *
 * Each corner peg is where the board line and the back, both shrunk by the edge radius, meet. For a flat back this
 * gives the handbook shortening of a rounded corner, 2 r tan(A/2) - r A for a turn A.
 * @param book its model
 * @param opening swing of each board
 */
export function bookOutline(book: BookModel, opening: Opening): BookOutline {
  const radius = book.edgeRadius;
  const directions = boardDirections(book, opening);
  const front = boardLine(book, directions.front, jointSlide(book, opening.front), 1);
  const back = boardLine(book, directions.back, jointSlide(book, opening.back), -1);
  if (book.rise === 0) {
    return { points: [front.tip, flatCorner(front, radius), flatCorner(back, radius), back.tip], radius, back: null };
  }
  const segment = circularSegment(book.thickness, book.rise);
  const arc = { centre: [segment.radius - book.rise, 0] as Vec2, radius: Math.max(0, segment.radius - radius) };
  const from = angleOnArc(front, arc, Math.PI - segment.halfAngle);
  const to = angleOnArc(back, arc, Math.PI + segment.halfAngle);
  const pegs = Array.from({ length: BACK_PEGS + 1 }, (_, i) =>
    addScaled(arc.centre, heading(from + ((to - from) * i) / BACK_PEGS), arc.radius),
  );
  return {
    points: [front.tip, ...pegs, back.tip],
    radius,
    back: { first: 1, last: pegs.length, radius: arc.radius },
  };
}

/** Outer line of one board, shrunk by the edge radius; `side` is 1 in front and -1 at the back. */
interface BoardLine {
  readonly origin: Vec2;
  readonly along: Vec2;
  readonly tip: Vec2;
  readonly side: 1 | -1;
}

function boardLine(book: BookModel, direction: number, slide: number, side: 1 | -1): BoardLine {
  const along = heading(direction);
  const hinge: Vec2 = [0, (side * book.thickness) / 2];
  // The outward normal lies to the left of a front board's direction, to the right of a back board's.
  const origin = addScaled(hinge, leftOf(along), -side * book.edgeRadius);
  return { origin, along, tip: addScaled(origin, along, book.width + slide), side };
}

/** Where a shrunk board line meets the shrunk flat back x = r. */
function flatCorner({ origin, along, side }: BoardLine, radius: number): Vec2 {
  if (radius === 0) return origin;
  const direction = Math.atan2(side * along[1], along[0]);
  return addScaled(origin, along, radius * Math.tan(Math.PI / 4 - direction / 2));
}

/** Angle on the shrunk arc where a shrunk board line meets it, nearest the hinge; `otherwise` where they do not meet. */
function angleOnArc(line: BoardLine, arc: { centre: Vec2; radius: number }, otherwise: number): number {
  if (line.origin[0] === 0 && arc.radius === 0) return otherwise;
  const [x, y] = subtract(line.origin, arc.centre);
  const half = x * line.along[0] + y * line.along[1];
  const discriminant = half * half - (x * x + y * y - arc.radius * arc.radius);
  if (discriminant < 0) return otherwise;
  const root = Math.sqrt(discriminant);
  const s = Math.abs(-half + root) < Math.abs(-half - root) ? -half + root : -half - root;
  return wrapAngle(Math.atan2(y + s * line.along[1], x + s * line.along[0]), 0);
}
