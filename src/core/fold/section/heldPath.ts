import type { BookModel } from '../../book/bookModel.ts';
import { arcPoint, bookOutline, type OutlineArc } from '../../book/bookOutline.ts';
import { tautPath } from '../../book/tautPath.ts';
import { wrapAngle } from '../../math/angle.ts';
import { TOLERANCE } from '../../math/tolerance.ts';
import { addScaled, dot, heading, leftOf, subtract, type Vec2 } from '../../math/vec2.ts';
import { type InnerPath, type InnerPiece, LIFT_RADIUS } from './innerPath.ts';

/** How one end of a cover is held along a board, in the book's own place. Lengths in mm along the board's outer face. */
export interface HeldEnd {
  /** Swing of the board, radians: pi/2 flat, more when bent back. */
  readonly swing: number;
  /** From the hinge to the place of the leather on which the board's tip lies once it is home. */
  readonly home: number;
  /** How far the leather lies along the board from there toward the spine. */
  readonly held: number;
  /** How far it lies off the board. */
  readonly off: number;
  /** Share of the turn at the mouth that the end follows: 1 along the board, 0 straight on. */
  readonly turned: number;
}

/** The inner face of a whole cover from front home to back home, as one travels along it with the book on the left. */
export interface HeldPath {
  readonly start: Vec2;
  /** Radians from +x. */
  readonly heading: number;
  readonly pieces: readonly InnerPiece[];
  readonly length: number;
}

/** A place and the direction there, radians from +x. */
interface Ray {
  readonly at: Vec2;
  readonly way: number;
}

/** How sharply leather turns at the mouths. */
export interface MouthBend {
  /** Least radius of the inner face, mm: the grain side lies inside of the bend. */
  readonly least: number;
  /** Longest stretch of either leg that the bend may take, mm. */
  readonly most: number;
}

/**
 * The taut path of a cover whose ends are held along the boards up to the pocket mouths and that bridges from mouth to mouth: the
 * chord of boards bent back, the hull of the back where it stands in the way. Each corner at a mouth is filleted.
 */
export function heldPath(book: BookModel, front: HeldEnd, back: HeldEnd, bend: MouthBend): HeldPath {
  const frontWay = book.wedge + front.swing;
  const backWay = -book.wedge - back.swing;
  const [alongFront, alongBack] = [heading(frontWay), heading(backWay)];
  const frontBase = addScaled([0, book.thickness / 2], leftOf(alongFront), front.off);
  const backBase = addScaled([0, -book.thickness / 2], leftOf(alongBack), -back.off);
  const start = addScaled(frontBase, alongFront, front.home);
  const tips = [
    addScaled(frontBase, alongFront, front.home - front.held),
    addScaled(backBase, alongBack, back.home - back.held),
  ] as const;
  const { arcs } = bookOutline(book, { front: front.swing, back: back.swing });
  // Round ends that lie behind the back of the book leather could be drawn either way: it takes the straight one.
  const bridge = tautPath({ tips, arcs: isBeside(arcs, tips) ? [] : arcs });
  const middle = bridge.pieces.map(
    (piece): InnerPiece =>
      piece.kind === 'line'
        ? { length: piece.length, angle: 0 }
        : { length: piece.angle * piece.radius, angle: piece.angle },
  );
  const turns = [
    wrapAngle(bridge.heading - frontWay - Math.PI),
    wrapAngle(backWay - bridge.heading - bridge.turning) * back.turned,
  ] as const;
  const first = fillet(turns[0], front.held, middle[0], middle.length, bend);
  const last = fillet(turns[1], back.held, middle.at(-1), middle.length, bend);
  const pieces = [
    { length: front.held - first.tangent, angle: 0 },
    ...first.arc,
    ...middle.map((piece, i) => ({
      ...piece,
      length: piece.length - (i === 0 ? first.tangent : 0) - (i === middle.length - 1 ? last.tangent : 0),
    })),
    ...last.arc,
    { length: back.held - last.tangent, angle: 0 },
  ];
  return { start, heading: frontWay + Math.PI, pieces, length: pieces.reduce((sum, { length }) => sum + length, 0) };
}

/** Whether all of some arcs lie on the left of the way from one place to another, or on it. */
function isBeside(arcs: readonly OutlineArc[], [from, to]: readonly [Vec2, Vec2]): boolean {
  const [x, y] = subtract(to, from);
  const out = wrapAngle(Math.atan2(y, x) - Math.PI / 2);
  const right = heading(out);
  const reach = dot(from, right) + TOLERANCE.length;
  return arcs.every((arc) => {
    const extreme = arc.from + Math.max(0, Math.min(arc.to - arc.from, wrapAngle(out - arc.from)));
    return [arc.from, extreme, arc.to].every((normal) => dot(arcPoint(arc, normal), right) <= reach);
  });
}

/** The arc in place of a corner, and what it takes of either leg. */
function fillet(turn: number, held: number, leg: InnerPiece | undefined, legs: number, bend: MouthBend) {
  if (Math.abs(turn) < TOLERANCE.angle) return { tangent: 0, arc: [] };
  const half = Math.tan(Math.min(Math.abs(turn), 3) / 2);
  const wished = Math.max(Math.min(LIFT_RADIUS * half, bend.most), bend.least * half);
  const straight = leg && leg.angle === 0 ? leg.length / (legs === 1 ? 4 : 2) : 0;
  const tangent = Math.min(wished, 0.9 * Math.max(0, Math.min(held, straight)));
  return { tangent, arc: [{ length: (Math.abs(turn) * tangent) / half, angle: turn }] };
}

/** A straight path. */
export const straightPath = (start: Vec2, way: number, length: number): HeldPath => ({
  start,
  heading: way,
  pieces: [{ length, angle: 0 }],
  length,
});

/** Length on the neutral line, mm, from the middle to where the fold over the spine is done, and the line's depth there. */
export interface FoldEnds {
  readonly front: number;
  readonly back: number;
  readonly depth: number;
}

/**
 * Both halves of a held path, each in the plane of its own board, divided at a length from its start.
 * @param at length along the path to the middle of the cover, mm
 */
export function halvesOf(
  path: HeldPath,
  at: number,
  folds: FoldEnds,
): { readonly front: InnerPath; readonly back: InnerPath; readonly middle: Vec2; readonly end: Ray } {
  const front: InnerPiece[] = [];
  const back: InnerPiece[] = [];
  let [x, y] = path.start;
  let way = path.heading;
  let middle: Ray | null = null;
  let walked = 0;
  for (const piece of path.pieces) {
    const share = piece.length > 0 ? Math.max(0, Math.min(1, (at - walked) / piece.length)) : walked < at ? 1 : 0;
    const go = (part: number): void => {
      const [length, angle] = [piece.length * part, piece.angle * part];
      if (angle === 0) [x, y] = addScaled([x, y], heading(way), length);
      else {
        const radius = length / angle;
        x += radius * (Math.sin(way + angle) - Math.sin(way));
        y -= radius * (Math.cos(way + angle) - Math.cos(way));
      }
      way += angle;
    };
    if (share > 0) {
      front.unshift({ length: piece.length * share, angle: piece.angle * share });
      go(share);
    }
    if (share < 1) {
      middle ??= { at: [x, y], way };
      back.push({ length: piece.length * (1 - share), angle: piece.angle * (1 - share) });
      go(1 - share);
    }
    walked += piece.length;
  }
  const { at: place, way: lean } = middle ?? { at: [x, y] as const, way };
  const half = (pieces: InnerPiece[], side: 1 | -1): InnerPath => {
    const [inFold, beyond] = dividedAt(pieces, side === 1 ? folds.front : folds.back, folds.depth);
    return {
      pieces: [...inFold, ...beyond],
      firstBeyondFold: inFold.length,
      middle: place[0],
      skew: { aside: -side * place[1], lean: wrapAngle(-side * lean - (side * Math.PI) / 2) },
    };
  };
  return { front: half(front, 1), back: half(back, -1), middle: place, end: { at: [x, y], way } };
}

/** The pieces up to a length on the line `depth` outside of them, and those beyond it. */
function dividedAt(pieces: readonly InnerPiece[], at: number, depth: number): readonly [InnerPiece[], InnerPiece[]] {
  const before: InnerPiece[] = [];
  const beyond: InnerPiece[] = [];
  let left = at;
  for (const piece of pieces) {
    const own = piece.length + depth * piece.angle;
    if (left <= TOLERANCE.length) beyond.push(piece);
    else if (left >= own - TOLERANCE.length) before.push(piece);
    else {
      const share = left / own;
      before.push({ length: piece.length * share, angle: piece.angle * share });
      beyond.push({ length: piece.length * (1 - share), angle: piece.angle * (1 - share) });
    }
    left -= own;
  }
  return [before, beyond];
}
