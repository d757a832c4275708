import type { BookModel } from '../../book/bookModel.ts';
import { boardDirections, bookOutline, symmetricOpening } from '../../book/bookOutline.ts';
import { type TautPath, tautPath } from '../../book/tautPath.ts';
import { addScaled, heading } from '../../math/vec2.ts';

/**
 * One stretch of the inner face of the cover, from the middle of the spine outward along the back board.
 *
 * Angles are positive round the book and negative where the cover turns away from it; the radius carries the same sign,
 * so that a stretch offset outward by z has length `length + angle z` in every case (Steiner's formula).
 */
export interface InnerPiece {
  readonly length: number;
  readonly angle: number;
}

/** The inner face of half a cover at one opening, spine to board tip. */
export interface InnerPath {
  readonly pieces: readonly InnerPiece[];
  /** Index of the first piece beyond the last fold over the spine. */
  readonly firstBeyondFold: number;
  /** x of the face at the middle of the spine, mm. */
  readonly middle: number;
}

/** Radius at which the cover leaves a board on which it does not lie over the whole width, mm; smooth to the eye. */
const LIFT_RADIUS = 24;

/**
 * Half of the taut path over the book, spine to tip; by symmetry the other half is its mirror image.
 *
 * Where the taut path would leave the board at once, as over a rounded back lying open, the cover still lies on the board
 * as far as the pocket holds it (`held` from the tip) and bridges from there.
 * @param opening both boards' swing together, radians, 0 to pi
 * @param held length from the tip over which board and cover are held together, mm
 */
export function innerPath(book: BookModel, opening: number, held: number): InnerPath {
  const swing = symmetricOpening(opening);
  const directions = boardDirections(book, swing);
  const outline = bookOutline(book, swing);
  const path = tautPath(outline);
  const away = (taut: TautPath): number => wrapped(directions.back - leaving(taut));
  if (Math.abs(away(path)) < 1e-9) return halfOf(path, []);

  const points = [...outline.points];
  const lift = Math.min(held, book.width - 2);
  points[0] = addScaled(points[0]!, heading(directions.front), -lift);
  points[points.length - 1] = addScaled(points[points.length - 1]!, heading(directions.back), -lift);
  const bridged = tautPath({ ...outline, points });
  const angle = away(bridged);
  // The turn away from the book, filleted. The outline's own radius shortens both straight stretches there as well.
  const bend = Math.tan(Math.abs(angle) / 2);
  const last = bridged.pieces[bridged.pieces.length - 1]!;
  const room = Math.min(lift, last.kind === 'line' ? last.length / 2 : 0) * 0.9 - outline.radius * bend;
  const tangent = Math.max(0, Math.min(LIFT_RADIUS * bend, room));
  const trim = tangent + outline.radius * bend;
  return halfOf(bridged, [
    { length: -trim, angle: 0 },
    { length: (Math.abs(angle) * tangent) / bend, angle },
    { length: lift - trim, angle: 0 },
  ]);
}

/** An angle brought into (-pi, pi]. */
const wrapped = (angle: number): number => Math.atan2(Math.sin(angle), Math.cos(angle));

/** Direction of the last stretch, the mirror image of the first. */
const leaving = (path: TautPath): number => wrapped(Math.PI - path.heading);

/** The later half of a symmetric path. `tail` goes on from its end; its first entry only lengthens the last piece. */
function halfOf(path: TautPath, tail: readonly InnerPiece[]): InnerPath {
  const all = path.pieces.map((piece) =>
    piece.kind === 'line'
      ? { length: piece.length, angle: 0 }
      : { length: piece.angle * piece.radius, angle: piece.angle },
  );
  // Length plus angle, so that a sharp corner in the very middle is shared as well.
  const measure = (piece: InnerPiece): number => piece.length + piece.angle;
  let skip = all.reduce((sum, piece) => sum + measure(piece), 0) / 2;
  const half: InnerPiece[] = [];
  for (const piece of all) {
    const size = measure(piece);
    const share = size > 0 ? Math.max(0, Math.min(1, (size - skip) / size)) : 0;
    skip = Math.max(0, skip - size);
    if (share > 1e-12) half.push({ length: piece.length * share, angle: piece.angle * share });
  }
  settle(half, wrapped(leaving(path) + Math.PI / 2));
  const [trim, ...rest] = tail;
  if (trim) {
    const last = half[half.length - 1]!;
    half[half.length - 1] = { ...last, length: last.length + trim.length };
  }
  const firstBeyondFold = half.findLastIndex((piece) => piece.angle > 0) + 1;
  return { pieces: [...half, ...rest], firstBeyondFold, middle: middleOf(path, half, trim?.length ?? 0) };
}

/**
 * Makes the bends of half a path add up to its turn. Where the path leaves a rounded back between two of its pegs, the arc
 * as listed runs on to the next peg, at most half a peg too far: the excess becomes straight.
 */
function settle(half: InnerPiece[], turn: number): void {
  const over = half.reduce((sum, { angle }) => sum + angle, 0) - turn;
  const at = half.findLastIndex(({ angle, length }) => angle > 0 && length > 0);
  if (Math.abs(over) < 1e-12 || at < 0) return;
  const { angle, length } = half[at]!;
  const moved = (length / angle) * over;
  half[at] = { angle: angle - over, length: length - moved };
  const last = half[half.length - 1]!;
  if (at < half.length - 1) half[half.length - 1] = { ...last, length: last.length + moved };
}

/** x of the middle, from the path's known start: the half walked from a middle at x = 0 must end as far forward as it. */
function middleOf(path: TautPath, half: readonly InnerPiece[], trimmed: number): number {
  let x = 0;
  let theta = -Math.PI / 2;
  for (const { length, angle } of half) {
    if (Math.abs(angle) > 0) x += (length / angle) * (Math.sin(theta + angle) - Math.sin(theta));
    else x += length * Math.cos(theta);
    theta += angle;
  }
  return path.start[0] - (x - trimmed * Math.cos(theta));
}
