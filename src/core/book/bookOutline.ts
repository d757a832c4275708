import { circularSegment } from '../math/circularSegment.ts';
import { addScaled, heading, leftOf, type Vec2 } from '../math/vec2.ts';
import type { BookModel } from './bookModel.ts';
import { type RoundedEdge, roundedEdge } from './roundedEdge.ts';

/** Swing of each board about its hinge from the closed book, radians: 0 closed, pi/2 flat, more when folded back. */
export interface Opening {
  readonly front: number;
  readonly back: number;
}

export const CLOSED: Opening = { front: 0, back: 0 };
export const FLAT: Opening = { front: Math.PI / 2, back: Math.PI / 2 };

/** Both boards swung alike, `angle` in all. */
export const symmetricOpening = (angle: number): Opening => ({ front: angle / 2, back: angle / 2 });

/** An arc of the outside. `from` and `to` are the directions of its outward normals at both ends, radians from +x. */
export interface OutlineArc {
  readonly zone: 'frontFold' | 'spine' | 'backFold';
  readonly start: Vec2;
  readonly end: Vec2;
  /** 0 for a sharp edge. */
  readonly radius: number;
  readonly from: number;
  /** At least `from`. */
  readonly to: number;
}

/** Outside of the book across the spine, from the front fore-edge over the spine to the back fore-edge, mm. */
export interface BookOutline {
  /** Outer corners of the boards at front and back fore-edge. They are sharp. */
  readonly tips: readonly [Vec2, Vec2];
  /** The curves between them, joined by straight lines: front edge, back where it is rounded, back edge. */
  readonly arcs: readonly OutlineArc[];
}

/**
 * The outside shrunk by `radius`, as a polygon, mm: grown by it again this is the outside, with an arc of the back as chords and
 * with fore-edges rounded by the radius.
 */
export interface OutlinePolygon {
  readonly points: readonly Vec2[];
  readonly radius: number;
  /** The points of a rounded back, as first and last index, and the circle that they lie on; null for a flat back. */
  readonly back: { readonly first: number; readonly last: number; readonly radius: number } | null;
}

/** Points along a rounded back: chords of a half circle of 100 mm lie at most 0.06 mm inside it. */
const BACK_POINTS = 48;

/** Direction of each board from its hinge to its fore-edge, radians from +x. */
export function boardDirections(book: BookModel, opening: Opening): { front: number; back: number } {
  return { front: book.wedge + opening.front, back: -book.wedge - opening.back };
}

/** The edge between board and back at a swing; its turn, when sharp, is a right angle less half the arc, wedge and swing. */
export function edgeAt(book: BookModel, swing: number): RoundedEdge {
  const { radius, halfAngle } = circularSegment(book.thickness, book.rise);
  return roundedEdge(book.edgeRadius, radius, Math.PI / 2 - halfAngle - book.wedge - swing);
}

/**
 * How far a board's fore-edge stands farther from its hinge than when closed, mm.
 *
 * The joint lets the board slide out by its dip, linearly from closed to flat. Apart from that the book's own covering
 * does not stretch: from the fore-edge over the edge to the middle of the back it is as long at any swing as closed. A
 * rounded edge therefore pulls the board in by as much as the edge saves less when it unbends.
 * @param edge the edge at this swing, where it is known
 */
export function jointSlide(book: BookModel, swing: number, edge = edgeAt(book, swing)): number {
  if (swing === 0) return 0;
  const dip = book.jointDip * Math.max(0, Math.min(1, swing / (Math.PI / 2)));
  return dip - (edgeAt(book, 0).saving - edge.saving);
}

/**
 * Outline of the book at any opening.
 *
 * The back stays as it is. Each board turns about its hinge, the line where board and back meet when sharp. An edge keeps
 * its radius as it unbends: at any swing it is the circle of that radius that touches board and back from inside. Once
 * the board has swung so far that the edge is straight or hollow there is no such circle, and board and back meet at the
 * hinge.
 * @param book its model
 * @param opening swing of each board, radians, 0 to pi
 */
export function bookOutline(book: BookModel, opening: Opening): BookOutline {
  const [front, back] = halves(book, opening);
  const tips = [front.tip, mirrored(back.tip)] as const;
  const backEdge = mirroredArc(back.edge);
  if (book.rise === 0) return { tips, arcs: [front.edge, backEdge] };
  const spine: OutlineArc = {
    zone: 'spine',
    start: front.edge.end,
    end: backEdge.start,
    radius: circularSegment(book.thickness, book.rise).radius,
    from: front.edge.to,
    to: backEdge.from,
  };
  return { tips, arcs: [front.edge, spine, backEdge] };
}

/** The same outline as a polygon. */
export function outlinePolygon(book: BookModel, opening: Opening): OutlinePolygon {
  const [front, back] = halves(book, opening);
  const radius = book.edgeRadius;
  const inside = ({ along }: HalfOutline, point: Vec2): Vec2 => addScaled(point, leftOf(along), -radius);
  const frontTip = inside(front, front.tip);
  const backTip = mirrored(inside(back, back.tip));
  if (book.rise === 0)
    return {
      points: [frontTip, inside(front, front.onLine), mirrored(inside(back, back.onLine)), backTip],
      radius,
      back: null,
    };
  const circle = circularSegment(book.thickness, book.rise).radius;
  const centre: Vec2 = [circle - book.rise, 0];
  const shrunk = Math.max(0, circle - book.edgeRadius);
  const backCorner = 2 * Math.PI - back.corner;
  const points = Array.from({ length: BACK_POINTS + 1 }, (_, i) =>
    addScaled(centre, heading(front.corner + ((backCorner - front.corner) * i) / BACK_POINTS), shrunk),
  );
  return {
    points: [frontTip, ...points, backTip],
    radius,
    back: { first: 1, last: points.length, radius: shrunk },
  };
}

/** One board and its edge, as the front half of the book. */
interface HalfOutline {
  readonly tip: Vec2;
  readonly edge: OutlineArc;
  /** Direction of the board from its hinge. */
  readonly along: Vec2;
  /** Where the edge begins on the line of the board; the board and back, both shrunk, meet inside of it. */
  readonly onLine: Vec2;
  /** Direction of that corner from the centre of a rounded back. */
  readonly corner: number;
}

function frontHalf(book: BookModel, swing: number): HalfOutline {
  const rounding = edgeAt(book, swing);
  const direction = book.wedge + swing;
  const along = heading(direction);
  const hinge: Vec2 = [0, book.thickness / 2];
  const onLine = addScaled(hinge, along, rounding.onBoard);
  /** Normal of the back at the hinge. */
  const sharp = Math.PI - circularSegment(book.thickness, book.rise).halfAngle;
  // Never past the middle, to which floating point may carry an edge as round as the back.
  const corner = Math.min(Math.PI, sharp + rounding.onBack);
  const isRound = rounding.turn > 0;
  const start = isRound ? onLine : hinge;
  const radius = isRound ? book.edgeRadius : 0;
  const from = isRound ? direction + Math.PI / 2 : sharp;
  const to = isRound ? corner : sharp;
  return {
    tip: addScaled(hinge, along, book.width + jointSlide(book, swing, rounding)),
    edge: { zone: 'frontFold', start, end: arcPoint({ start, radius, from }, to), radius, from, to },
    along,
    onLine,
    corner,
  };
}

/** Both halves, each as a front half. */
function halves(book: BookModel, { front, back }: Opening): readonly [HalfOutline, HalfOutline] {
  const half = frontHalf(book, front);
  return [half, back === front ? half : frontHalf(book, back)];
}

const MIRRORED_ZONE = { frontFold: 'backFold', spine: 'spine', backFold: 'frontFold' } as const;

/** A point mirrored in the middle plane of the book. */
export const mirrored = (point: Vec2): Vec2 => [point[0], -point[1]];

/** An arc mirrored in the middle plane, run through the other way, so that the book stays on its left. */
export const mirroredArc = ({ zone, start, end, radius, from, to }: OutlineArc): OutlineArc => ({
  zone: MIRRORED_ZONE[zone],
  start: mirrored(end),
  end: mirrored(start),
  radius,
  from: 2 * Math.PI - to,
  to: 2 * Math.PI - from,
});

/**
 * Point of an arc by its outward normal, radians. It is found along the chord, 2 r sin(turn / 2), and so without loss on a
 * back so little rounded that its centre lies kilometres away.
 */
export function arcPoint({ start, radius, from }: Pick<OutlineArc, 'start' | 'radius' | 'from'>, normal: number): Vec2 {
  return addScaled(start, leftOf(heading((from + normal) / 2)), 2 * radius * Math.sin((normal - from) / 2));
}
