import type { Hide, Job, Vec2 } from '../../core/index.ts';

/** A square is taken in steps of this, mm. */
const STEP = 300;
const SMALLEST = 600;
/** How many times the area with waste a piece has at least, so that the pieces find their places. */
const SPARE = 1.5;

/**
 * The piece of leather on which the pieces are laid out until the maker enters one: a square with room for them all. An
 * assumption, said to be one.
 * @param gross area of the pieces of one leather with waste, mm2
 * @param longest side of its pieces, mm
 */
export function usualPiece(
  gross: number,
  longest: number,
  { edge_mm }: Job['hides'],
): { readonly side: number; readonly hide: Hide } {
  const least = Math.max(SMALLEST, Math.sqrt(SPARE * gross), longest + 2 * edge_mm);
  const side = STEP * Math.ceil(least / STEP);
  const outline: readonly Vec2[] = [
    [0, 0],
    [side, 0],
    [side, side],
    [0, side],
  ];
  return { side, hide: { outline, defects: [], backbone: Math.PI / 2 } };
}
