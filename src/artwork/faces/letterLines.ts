import type { LetterOutline, Vec2 } from '../../core/index.ts';

/** How far a chord of a letter may stray from its curve, in capital heights: 0.02 mm on a letter of 10 mm. */
export const FLATNESS = 0.002;

/** The characters of a text that a face has no letter for, each once, in their order. Spaces need none. */
export const lackedBy = (text: string, has: (letter: string) => boolean): string[] =>
  [...new Set(text)].filter((letter) => letter !== ' ' && !has(letter));

/** Lines in units of a font as the outline of a text: capital height 1, x from 0 at the leftmost point. */
export function capitalOutline(lines: readonly (readonly Vec2[])[], capital: number): LetterOutline {
  let [left, right] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const line of lines)
    for (const [x] of line) {
      left = Math.min(left, x);
      right = Math.max(right, x);
    }
  if (lines.length === 0) return { polylines: [], width: 0 };
  return {
    polylines: lines.map((line) => line.map(([x, y]): Vec2 => [(x - left) / capital, y / capital])),
    width: (right - left) / capital,
  };
}
