import { wrapAngle } from '../../math/angle.ts';
import { addScaled, heading, leftOf, subtract, type Vec2 } from '../../math/vec2.ts';
import type { InnerPath, InnerPiece } from '../section/innerPath.ts';
import type { StripSection } from './solveSection.ts';

/**
 * Inner faces of the two halves of a cover whose outside has settled into the elastic strip's shape, spine to board tip, each
 * in the plane of its own board: that of the front mirrored.
 *
 * The strip is the outside's mid-surface, a polyline. The face z inside it is the polyline's own offset: a stretch loses
 * z tan(turn / 2) at each node round which it bends toward the book, and turns there on the spot; where the leather bends
 * away from the book the face is the outer one, and an arc takes the place of the node.
 * @param section a strip that has converged, front seat to back seat
 * @param offset z from the mid-surface in to the face of the lining or of the outside, mm
 */
export function settledPaths(
  { section, foreEdgeGap }: StripSection,
  offset: number,
): { readonly front: InnerPath; readonly back: InnerPath } {
  const count = section.length / 2;
  const mirrored = Float64Array.from(section, (_, i) => {
    const k = 2 * (count - 1 - Math.floor(i / 2));
    return i % 2 === 0 ? section[k]! : -section[k + 1]!;
  });
  return {
    front: settledHalf(mirrored, offset, foreEdgeGap.front),
    back: settledHalf(section, offset, foreEdgeGap.back),
  };
}

/** The half beyond the middle of the strip; `toSeat` is what lies straight between board tip and seat at its end, mm. */
function settledHalf(section: Float64Array, offset: number, toSeat: number): InnerPath {
  const { spans, start } = backHalf(section);
  const first = spans[0]!.direction;
  const turns = spans.map(({ direction }, i) => wrapAngle(direction - (spans[i - 1]?.direction ?? first)));
  const pieces: InnerPiece[] = [];
  spans.forEach(({ length }, i) => {
    const turn = turns[i]!;
    if (turn > 0) pieces.push({ length: 0, angle: turn });
    else if (turn < 0) pieces.push({ length: AWAY_RADII * offset * -turn, angle: turn });
    const straight = length - trim(turn, offset) - trim(turns[i + 1] ?? 0, offset);
    if (straight > 0) pieces.push({ length: straight, angle: 0 });
  });
  const [middle, aside] = addScaled(start, leftOf(heading(first)), offset);
  return {
    pieces: withoutEnd(pieces, toSeat),
    firstBeyondFold: lastBend(pieces) + 1,
    middle,
    skew: { aside, lean: wrapAngle(first + Math.PI / 2) },
  };
}

/** Radius of the inner face where it bends away from the book, in offsets: over 1, so that the outside's own stays over 0. */
const AWAY_RADII = 2;

/** What a stretch loses of its length at a node, once the node's arc is taken out of it. */
const trim = (turn: number, offset: number): number =>
  turn >= 0 ? offset * Math.tan(turn / 2) : (AWAY_RADII - 1) * offset * Math.tan(-turn / 2);

interface Span {
  readonly length: number;
  /** Radians from +x. */
  readonly direction: number;
}

/** The stretches from the middle of the strip to its end, and where they begin. */
function backHalf(section: ArrayLike<number>): { readonly spans: readonly Span[]; readonly start: Vec2 } {
  const at = (i: number): Vec2 => [section[2 * i]!, section[2 * i + 1]!];
  const all = Array.from({ length: section.length / 2 - 1 }, (_, i): Span => {
    const [dx, dy] = subtract(at(i + 1), at(i));
    return { length: Math.hypot(dx, dy), direction: Math.atan2(dy, dx) };
  });
  let skip = all.reduce((sum, { length }) => sum + length, 0) / 2;
  const first = all.findIndex(({ length }) => {
    if (skip < length) return true;
    skip -= length;
    return false;
  });
  const { length, direction } = all[first]!;
  const start = addScaled(at(first), heading(direction), skip);
  return { spans: [{ length: length - skip, direction }, ...all.slice(first + 1)], start };
}

/** Turns below this, radians, are a straight leather's. */
const STRAIGHT = 1e-4;

const lastBend = (pieces: readonly InnerPiece[]): number =>
  pieces.findLastIndex(({ angle }) => Math.abs(angle) > STRAIGHT);

/** Takes a length off the far, straight end. */
function withoutEnd(pieces: readonly InnerPiece[], length: number): InnerPiece[] {
  const kept = [...pieces];
  let left = length;
  while (left > 0 && kept.length > 1) {
    const last = kept.pop()!;
    if (last.length > left) kept.push({ ...last, length: last.length - left });
    left -= last.length;
  }
  return kept;
}
