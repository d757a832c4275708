import type { BookModel } from '../../book/bookModel.ts';
import { type BookOutline, boardDirections, bookOutline, symmetricOpening } from '../../book/bookOutline.ts';
import { tautPath } from '../../book/tautPath.ts';
import { wrapAngle } from '../../math/angle.ts';
import { TOLERANCE } from '../../math/tolerance.ts';
import { addScaled, distance, heading } from '../../math/vec2.ts';

/**
 * One stretch of the inner face of the cover, from the middle of the spine outward along the back board.
 *
 * Angles are positive round the book and negative where the cover turns away from it, so that a stretch offset outward by
 * z has length `length + angle z` in every case (Steiner's formula).
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
  /** How far from the tip the cover lies on the board and leaves it from there; left out where it lies on it as far as it can. */
  readonly held?: number;
  /** How the middle stands where the two halves are not alike; left out, it is upright on the middle plane. */
  readonly skew?: Skew;
}

/** How the middle of the spine stands to the middle plane of the book, in the plane of one half. */
export interface Skew {
  /** y of the face, mm. */
  readonly aside: number;
  /** Turn of the face from upright, positive as along the half, radians. */
  readonly lean: number;
}

/** Radius at which the cover leaves a board on which it does not lie over the whole width, mm. Free choice: it looks smooth. */
export const LIFT_RADIUS = 24;

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
  const taut = halfPath(outline);
  if (Math.abs(wrapAngle(directions.back - taut.heading)) < TOLERANCE.angle) return pathOf(taut, []);

  const { tips, arcs } = outline;
  // Never past the straight part of the board, which a rounded edge shortens.
  const lift = Math.min(held, book.width - 2, 0.95 * distance(tips[0], arcs[0]!.start));
  const lifted = [
    addScaled(tips[0], heading(directions.front), -lift),
    addScaled(tips[1], heading(directions.back), -lift),
  ] as const;
  const bridge = halfPath({ ...outline, tips: lifted });
  const angle = wrapAngle(directions.back - bridge.heading);
  if (Math.abs(angle) < TOLERANCE.angle) return pathOf(bridge, [{ length: lift, angle: 0 }]);
  // No cover doubles back on its board; a book so short that its bridge would is covered taut.
  if (Math.abs(angle) > Math.PI / 2) return pathOf(taut, []);
  // The turn away from the book, filleted.
  const bend = Math.tan(Math.abs(angle) / 2);
  const last = bridge.pieces[bridge.pieces.length - 1]!;
  const tangent = Math.min(LIFT_RADIUS * bend, Math.min(lift, last.length / 2) * 0.9);
  const shortened = [...bridge.pieces.slice(0, -1), { ...last, length: last.length - tangent }];
  const turn = { length: (Math.abs(angle) * tangent) / bend, angle };
  return { ...pathOf({ ...bridge, pieces: shortened }, [turn, { length: lift - tangent, angle: 0 }]), held: lift };
}

interface HalfPath {
  readonly pieces: readonly InnerPiece[];
  readonly middle: number;
  /** Direction of the last stretch, radians. */
  readonly heading: number;
}

function pathOf({ pieces, middle }: HalfPath, more: readonly InnerPiece[]): InnerPath {
  const firstBeyondFold = pieces.findLastIndex(({ angle }) => angle > 0) + 1;
  return { pieces: [...pieces, ...more], firstBeyondFold, middle };
}

/** The later half of the taut path. */
function halfPath(outline: BookOutline): HalfPath {
  const path = tautPath(outline);
  const all = path.pieces.map((piece) =>
    piece.kind === 'line'
      ? { length: piece.length, angle: 0 }
      : { length: piece.angle * piece.radius, angle: piece.angle },
  );
  // Length plus angle, so that a sharp corner in the very middle is shared as well.
  const measure = (piece: InnerPiece): number => piece.length + piece.angle;
  let skip = all.reduce((sum, piece) => sum + measure(piece), 0) / 2;
  const pieces: InnerPiece[] = [];
  for (const piece of all) {
    const size = measure(piece);
    const share = size > 0 ? Math.max(0, Math.min(1, (size - skip) / size)) : 0;
    skip = Math.max(0, skip - size);
    if (share > TOLERANCE.ratio) pieces.push({ length: piece.length * share, angle: piece.angle * share });
  }
  // The half walked from a middle at x = 0 must end as far forward as the path begins.
  let x = 0;
  let theta = -Math.PI / 2;
  for (const { length, angle } of pieces) {
    if (angle !== 0) x += (length / angle) * (Math.sin(theta + angle) - Math.sin(theta));
    else x += length * Math.cos(theta);
    theta += angle;
  }
  return { pieces, middle: path.start[0] - x, heading: wrapAngle(Math.PI - path.heading) };
}
