import type { BookModel } from '../book/bookModel.ts';
import { edgeAt, jointSlide } from '../book/bookOutline.ts';
import type { HalfSection } from '../fold/section/halfSection.ts';

/** How the leaf of a pocket bends where it reaches onto the rounded edge of its board. */
export interface PocketBend {
  /** Where the board begins to be round, mm from the seam. */
  readonly from: number;
  /** Of the outer face of the board there, mm, and how far it turns, radians. */
  readonly radius: number;
  readonly turn: number;
  /** Of the middle of the leaf, which takes less length the farther it lies inside, mm. */
  readonly leafRadius: number;
}

/**
 * The bend of a leaf on a board that is home in its pocket.
 * @returns null where the leaf ends on the flat of the board, or is too thick for a bend as close as that
 */
export function pocketBend(
  book: BookModel,
  half: HalfSection,
  swing: number,
  leaf: { readonly thickness: number; readonly reach: number },
): PocketBend | null {
  const { onBoard, turn } = edgeAt(book, swing);
  const from = half.toSeam - half.toTip + book.width + jointSlide(book, swing) - onBoard;
  const leafRadius = book.edgeRadius - book.board - leaf.thickness / 2;
  return turn > 0 && leaf.reach > from && leafRadius > leaf.thickness
    ? { from, radius: book.edgeRadius, turn, leafRadius }
    : null;
}

/** Where a place of the leaf is that it measures to be `reach` from the seam, `height` over the inner face: u inward and h up. */
export function onBend(bend: PocketBend | null, reach: number, height: number): [u: number, h: number] {
  if (bend === null || reach <= bend.from) return [reach, height];
  const angle = Math.min(bend.turn, (reach - bend.from) / bend.leafRadius);
  const past = reach - bend.from - angle * bend.leafRadius;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const radius = bend.radius - height;
  return [bend.from + radius * s + past * c, bend.radius - radius * c + past * s];
}

/** Longest facet of a bent leaf, mm. */
const STEP = 1;

/** Places from the seam at which a bent leaf has columns, mm. */
export function bendStops(bend: PocketBend | null, reach: number): number[] {
  if (bend === null) return [];
  const count = Math.ceil((reach - bend.from) / STEP);
  return Array.from({ length: count }, (_, i) => bend.from + ((reach - bend.from) * i) / count);
}
