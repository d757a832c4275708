import { addScaled, heading, type Vec2 } from '../math/vec2.ts';
import type { Text } from './drawing.ts';

/**
 * Height of a capital and depth of a descender over the font size, as in Helvetica, taken for any plain sans serif
 * (published metrics: CapHeight 718, Descender -207 of 1000).
 */
export const CAPITAL = 0.718;
export const TAIL = 0.207;

/** Widths of the letters from space to tilde over the font size, thousandths (the same metrics). */
const WIDTHS = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556,
  556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833,
  722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556,
  556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334,
  260, 334, 584,
];

/** Width of every other letter: that of a wide one. */
const OTHER = 722;

/** Width of words set in letters of some height, mm. */
export const textWidth = (text: string, height: number): number =>
  ([...text].reduce((sum, letter) => sum + (WIDTHS[letter.codePointAt(0)! - 0x20] ?? OTHER), 0) / 1000) * height;

/** Where the base line of a text starts and ends. */
export function baseLine({ at, height, rotation, align, text }: Text): readonly [Vec2, Vec2] {
  const width = textWidth(text, height);
  const start = align === 'middle' ? addScaled(at, heading(rotation), -width / 2) : at;
  return [start, addScaled(start, heading(rotation), width)];
}

/** Axis-parallel box, mm. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The least box round a text. */
export function textBox(text: Text): Box {
  const up = heading(text.rotation + Math.PI / 2);
  const corners = baseLine(text).flatMap((end) => [
    addScaled(end, up, -TAIL * text.height),
    addScaled(end, up, CAPITAL * text.height),
  ]);
  return boxOf(corners);
}

/** The least box round points. */
export function boxOf(points: readonly Vec2[]): Box {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}
