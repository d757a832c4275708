import { TOLERANCE } from '../math/tolerance.ts';
import { distance, dot, heading, leftOf, subtract, type Vec2 } from '../math/vec2.ts';
import { arcPoint, type BookOutline, mirrored, mirroredArc, type OutlineArc } from './bookOutline.ts';

/** Part of the book that a stretch of the wrap lies over. */
type PathZone = 'frontBoard' | 'frontFold' | 'spine' | 'backFold' | 'backBoard' | 'bridge';

/** A straight stretch, or a bend to the left on an inside radius; both described as one travels along the path. */
export type PathPiece =
  | { readonly kind: 'line'; readonly zone: PathZone; readonly length: number }
  | { readonly kind: 'bend'; readonly zone: PathZone; readonly angle: number; readonly radius: number };

/** The taut path over the outside of the book, front fore-edge to back fore-edge. Lengths in mm, angles in radians. */
export interface TautPath {
  /** On the book's surface at the front fore-edge. */
  readonly start: Vec2;
  /** Direction of travel there, radians from +x. */
  readonly heading: number;
  readonly pieces: readonly PathPiece[];
  /** Sum of the bends, radians: pi for a closed book with parallel boards. */
  readonly turning: number;
  /** Length on the book's surface. */
  readonly length: number;
}

/**
 * The shortest path over the outside of the book from fore-edge to fore-edge: the hull of the outline, exact.
 *
 * A board that stands out past the back is left at its fore-edge for the tangent to an edge or to the back; where both
 * boards stand out so far that the tangents cross, the path bridges from fore-edge to fore-edge.
 */
export function tautPath({ tips: [front, back], arcs }: BookOutline): TautPath {
  const first = firstTouch(front, arcs.length, (i) => arcs[i]!);
  const lastMirrored = firstTouch(mirrored(back), arcs.length, (i) => mirroredArc(arcs[arcs.length - 1 - i]!));
  const last = lastMirrored === null ? null : 2 * Math.PI - lastMirrored;
  if (first === null || last === null || first > last) {
    const [x, y] = subtract(back, front);
    return pathOf(front, Math.atan2(y, x), [{ kind: 'line', zone: 'bridge', length: Math.hypot(x, y) }]);
  }

  const pieces: PathPiece[] = [];
  let zone: PathZone = first - arcs[0]!.from < TOLERANCE.angle ? 'frontBoard' : 'bridge';
  let at = front;
  const straightTo = (to: Vec2): void => {
    const length = distance(at, to);
    if (length > TOLERANCE.length) pieces.push({ kind: 'line', zone, length });
    zone = 'spine';
  };
  for (const arc of arcs) {
    const from = Math.max(first, arc.from);
    const to = Math.min(last, arc.to);
    if (from > to) continue;
    straightTo(arcPoint(arc, from));
    if (Math.max(1, arc.radius) * (to - from) > TOLERANCE.angle)
      pieces.push({ kind: 'bend', zone: arc.zone, angle: to - from, radius: arc.radius });
    at = arcPoint(arc, to);
  }
  zone = arcs[arcs.length - 1]!.to - last < TOLERANCE.angle ? 'backBoard' : 'bridge';
  straightTo(back);
  return pathOf(front, first + Math.PI / 2, pieces);
}

function pathOf(start: Vec2, direction: number, pieces: readonly PathPiece[]): TautPath {
  const turning = pieces.reduce((sum, piece) => sum + (piece.kind === 'bend' ? piece.angle : 0), 0);
  return { start, heading: direction, pieces, turning, length: pathLength(pieces, 0) };
}

/** Outward normal at which a string from a tip first touches one of the arcs; null where the tip stands out past all of them. */
function firstTouch(tip: Vec2, count: number, arcAt: (index: number) => OutlineArc): number | null {
  for (let i = 0; i < count; i++) {
    const normal = touch(tip, arcAt(i));
    if (normal !== null) return normal;
  }
  return null;
}

/**
 * Outward normal at which a string from the tip of the front board touches an arc; null where the tip stands out past it.
 *
 * With w from the tip to the start of the arc, a and b its parts along the normal and the tangent there, the arc turned by
 * t lies inside the tangent through the tip by a cos t + b sin t + r (1 - cos t); its root is tan(t/2) =
 * -a / (b + sqrt(b^2 - a (2 r - a))).
 */
function touch(tip: Vec2, { start, radius, from, to }: OutlineArc): number | null {
  const w = subtract(start, tip);
  const normal = heading(from);
  const a = dot(w, normal);
  const b = dot(w, leftOf(normal));
  const turn = to - from;
  if (a * Math.cos(turn) + b * Math.sin(turn) + radius * (1 - Math.cos(turn)) <= 0) return null;
  if (a >= 0) return from;
  return from + 2 * Math.atan(-a / (b + Math.sqrt(b * b - a * (2 * radius - a))));
}

/** Length of a path grown by z: lines keep their length, a bend of angle A gains A z (Steiner's formula). */
export function pathLength(pieces: readonly PathPiece[], z: number): number {
  return pieces.reduce(
    (sum, piece) => sum + (piece.kind === 'line' ? piece.length : piece.angle * (piece.radius + z)),
    0,
  );
}
