import type { BookModel } from '../../../src/core/book/bookModel.ts';
import { turnBetween, wrapAngle } from '../../../src/core/math/angle.ts';
import { cross, subtract, type Vec2 } from '../../../src/core/math/vec2.ts';
import { nth } from '../../nth.ts';

/** Points on each curve of the outside: an inscribed polygon of so many sides is short by less than 1e-5 mm. */
const POINTS = 2000;

/** What a maker measures on the section of a book, mm and radians, and the rounding of its edges as typed. */
type Measures = Pick<BookModel, 'width' | 'thickness' | 'rise' | 'wedge' | 'jointDip'> & { readonly radius: number };

/** Where `f`, which rises, passes from below 0: halved until floating point has no number between. */
function risesAt(f: (x: number) => number, below: number, above: number): number {
  let [low, high] = [below, above];
  for (let middle = (low + high) / 2; middle > low && middle < high; middle = (low + high) / 2) {
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The ball of radius r that lies in the front edge, against board and back from inside; null in an edge that is not convex. */
function ballInEdge({ thickness: T, rise: e }: Measures, direction: number, r: number) {
  const along: Vec2 = [Math.cos(direction), Math.sin(direction)];
  const inward: Vec2 = [along[1], -along[0]];
  const R = (T * T) / (8 * e) + e / 2;
  const at = (u: number): Vec2 => [u * along[0] + r * inward[0], T / 2 + u * along[1] + r * inward[1]];
  const fromBack = ([x, y]: Vec2): number => (e === 0 ? x : R - Math.hypot(x - (R - e), y));
  const pokesOut = (u: number): number => fromBack(at(u)) - r;
  // Convex where the board enters the back's circle, or its half plane, at the hinge.
  if (fromBack([1e-3 * along[0], T / 2 + 1e-3 * along[1]]) <= 0) return null;
  // The ball is farthest from the back where it is nearest to the centre of the back's circle.
  const farthest = e === 0 ? 10 * T : (R - e) * along[0] - (T / 2) * along[1];
  const onBoard = risesAt(pokesOut, 0, farthest);
  return { centre: at(onBoard), onBoard };
}

/** Edge radius of the closed book: as typed, or as large as leaves each ball on its own board and its own half of the back. */
function fittingRadius(book: Measures): number {
  const isTooLarge = (r: number): number => {
    const ball = ballInEdge(book, book.wedge, r);
    return ball === null ? -1 : Math.max(-ball.centre[1], ball.onBoard - book.width);
  };
  return isTooLarge(book.radius) <= 0 ? book.radius : risesAt(isTooLarge, 0, book.radius);
}

/** The front half of the outside, from the fore-edge of a board of length `board` to the middle of the back. */
function frontHalf(book: Measures, direction: number, r: number, board: number): Vec2[] {
  const { thickness: T, rise: e } = book;
  const along: Vec2 = [Math.cos(direction), Math.sin(direction)];
  const on = (u: number): Vec2 => [u * along[0], T / 2 + u * along[1]];
  const ball = r > 0 ? ballInEdge(book, direction, r) : null;
  const points = [on(board), on(ball?.onBoard ?? 0)];
  const R = (T * T) / (8 * e) + e / 2;
  // In the front half; the middle of the back lies at pi, not at -pi.
  const polar = ([x, y]: Vec2): number => wrapAngle(Math.atan2(y, x - (R - e)), 0);
  const backNormal = (p: Vec2): number => (e === 0 ? Math.PI : polar(p));
  if (ball !== null) {
    const [from, to] = [direction + Math.PI / 2, backNormal(ball.centre)];
    for (let i = 1; i <= POINTS; i++) {
      const a = from + ((to - from) * i) / POINTS;
      points.push([ball.centre[0] + r * Math.cos(a), ball.centre[1] + r * Math.sin(a)]);
    }
  }
  const from = polar(ball?.centre ?? [0, T / 2]);
  for (let i = 1; i <= POINTS && e > 0; i++) {
    const a = from + ((Math.PI - from) * i) / POINTS;
    points.push([R - e + R * Math.cos(a), R * Math.sin(a)]);
  }
  return [...points, [-e, 0]];
}

const lengthOf = (points: readonly Vec2[]): number =>
  points.slice(1).reduce((sum, point, i) => sum + Math.hypot(...subtract(point, nth(points, i))), 0);

/**
 * The true outside of a book, front fore-edge to back fore-edge, as a fine polygon.
 *
 * The words are those of `bookOutline`; it shares no formula with it: edges are found by rolling a ball into them, and
 * how far a board slides by measuring the polygon.
 */
export function polygonBook(book: Measures, swings: { readonly front: number; readonly back: number }): Vec2[] {
  const r = fittingRadius(book);
  const covering = lengthOf(frontHalf(book, book.wedge, r, book.width));
  const half = (swing: number): Vec2[] => {
    const wanted = covering + book.jointDip * Math.min(1, swing / (Math.PI / 2));
    const direction = book.wedge + swing;
    const slide = wanted - lengthOf(frontHalf(book, direction, r, book.width));
    return frontHalf(book, direction, r, book.width + slide);
  };
  const back = half(swings.back).map(([x, y]): Vec2 => [x, -y]);
  return [...half(swings.front), ...back.reverse().slice(1)];
}

/** Convex hull, counterclockwise from the leftmost point (Andrew's monotone chain). */
function convexHull(points: readonly Vec2[]): Vec2[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly Vec2[]): Vec2[] => {
    const kept: Vec2[] = [];
    for (const p of list) {
      while (kept.length > 1 && cross(subtract(nth(kept, -1), nth(kept, -2)), subtract(p, nth(kept, -1))) <= 0)
        kept.pop();
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

/** The string pulled taut over a polygon from its first point to its last: its length, and how far it turns. */
export function tautOver(points: readonly Vec2[]): { readonly length: number; readonly turning: number } {
  const hull = convexHull(points);
  // By place, for a board that its edge takes whole has its fore-edge twice.
  const vertexAt = (tip: Vec2): number => hull.findIndex((each) => Math.hypot(...subtract(each, tip)) < 1e-9);
  const [from, to] = [vertexAt(nth(points, 0)), vertexAt(nth(points, -1))];
  if (from < 0 || to < 0) throw new Error('A fore-edge lies inside the hull of its book.');
  const path = to > from ? hull.slice(from, to + 1) : [...hull.slice(from), ...hull.slice(0, to + 1)];
  const edges = path.slice(1).map((point, i) => subtract(point, nth(path, i)));
  const turning = edges.slice(1).reduce((sum, edge, i) => sum + turnBetween(nth(edges, i), edge), 0);
  return { length: lengthOf(path), turning };
}
