import type { Vec2 } from '../../src/core/math/vec2.ts';
import { nth } from '../nth.ts';
import type { ReadPage, ReadPath, ReadWords } from './pdfReading.ts';

/** Of a letter over the height that it is set in: how far a capital rises, and a tail hangs. */
const CAPITAL = 0.72;
const TAIL = 0.2;

/** Whether a stretch of line meets the box from `low` to `high`, by clipping it (Liang and Barsky). */
function meets(from: Vec2, to: Vec2, low: Vec2, high: Vec2): boolean {
  let [enter, leave] = [0, 1];
  for (const axis of [0, 1] as const) {
    const step = to[axis] - from[axis];
    const [near, far] = [low[axis] - from[axis], high[axis] - from[axis]];
    if (step === 0) {
      if (near > 0 || far < 0) return false;
      continue;
    }
    enter = Math.max(enter, Math.min(near / step, far / step));
    leave = Math.min(leave, Math.max(near / step, far / step));
  }
  return enter <= leave;
}

/** Words of a page that a line runs through; a hole is a line too. */
export function wordsOnLines(page: ReadPage, isMeant: (path: ReadPath, words: ReadWords) => boolean): string[] {
  return page.words
    .filter((words) => {
      if (words.text.trim() === '') return false;
      const [cos, sin] = [Math.cos(words.rotation), Math.sin(words.rotation)];
      const seen = ([x, y]: Vec2): Vec2 => {
        const [dx, dy] = [x - words.at[0], y - words.at[1]];
        return [dx * cos + dy * sin, dy * cos - dx * sin];
      };
      const [low, high]: [Vec2, Vec2] = [
        [0, -TAIL * words.height],
        [words.width, CAPITAL * words.height],
      ];
      return page.paths
        .filter((path) => isMeant(path, words))
        .flatMap(({ chains }) => chains)
        .some((chain) => chain.some((to, i) => i > 0 && meets(seen(nth(chain, i - 1)), seen(to), low, high)));
    })
    .map(({ text }) => text);
}
