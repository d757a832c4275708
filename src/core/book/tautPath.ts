import { turnBetween } from '../math/angle.ts';
import { convexChain } from '../math/convexChain.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { addScaled, heading, leftOf, subtract, type Vec2 } from '../math/vec2.ts';
import type { BookOutline } from './bookOutline.ts';

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
 * The shortest path over the outside of the book: hull of the outline's pegs, grown by its radius.
 *
 * Where the outline is concave, as in a book folded back, the path bridges. Over a rounded back chords of the pegs are
 * replaced by their arcs, so the length over the back is exact.
 */
export function tautPath(outline: BookOutline): TautPath {
  const { points, radius, back } = outline;
  const pegs = convexChain(points);
  const last = points.length - 1;
  const pieces: PathPiece[] = [];

  const edges = pegs.slice(1).map((peg, i) => subtract(points[peg]!, points[pegs[i]!]!));
  const spans = edges.map(([x, y]) => Math.hypot(x, y));
  // Angle of the arc that a chord between neighbouring pegs of the back stands for; 0 where the edge is a true line.
  const arcs = spans.map((span, i) => {
    const [from, to] = [pegs[i]!, pegs[i + 1]!];
    const isArc = back !== null && back.radius > 0 && from >= back.first && to <= back.last && to === from + 1;
    return isArc ? 2 * Math.asin(Math.min(1, span / 2 / back.radius)) : 0;
  });
  edges.forEach((edge, i) => {
    const peg = pegs[i]!;
    if (i > 0) {
      // Where arcs meet a line or each other, half of each arc's angle belongs to the arc.
      const angle = turnBetween(edges[i - 1]!, edge) - (arcs[i - 1]! + arcs[i]!) / 2;
      if (angle > TOLERANCE.angle) pieces.push({ kind: 'bend', zone: cornerZone(peg, last), angle, radius });
    }
    const arc = arcs[i]!;
    if (arc === 0) {
      pieces.push({ kind: 'line', zone: lineZone(peg, pegs[i + 1]!, last), length: spans[i]! });
      return;
    }
    const arcRadius = (back?.radius ?? 0) + radius;
    const previous = pieces[pieces.length - 1];
    if (previous?.kind === 'bend' && previous.radius === arcRadius)
      pieces[pieces.length - 1] = { ...previous, angle: previous.angle + arc };
    else pieces.push({ kind: 'bend', zone: 'spine', angle: arc, radius: arcRadius });
  });

  const turning = pieces.reduce((sum, piece) => sum + (piece.kind === 'bend' ? piece.angle : 0), 0);
  const first = Math.atan2(edges[0]![1], edges[0]![0]);
  return {
    start: addScaled(points[0]!, leftOf(heading(first)), -radius),
    heading: first,
    pieces,
    turning,
    length: pathLength(pieces, 0),
  };
}

/** Length of a path grown by z: lines keep their length, a bend of angle A gains A z (Steiner's formula). */
export function pathLength(pieces: readonly PathPiece[], z: number): number {
  return pieces.reduce(
    (sum, piece) => sum + (piece.kind === 'line' ? piece.length : piece.angle * (piece.radius + z)),
    0,
  );
}

/** Pegs run front tip, front corner ... back corner, back tip. */
function cornerZone(index: number, last: number): PathZone {
  if (index === 1) return 'frontFold';
  if (index === last - 1) return 'backFold';
  return 'spine';
}

function lineZone(from: number, to: number, last: number): PathZone {
  if (from === 0 && to === 1) return 'frontBoard';
  if (from === last - 1 && to === last) return 'backBoard';
  if (from === 0 || to === last) return 'bridge';
  return 'spine';
}
