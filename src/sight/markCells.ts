import { MARK_CELLS, markCode } from './markDictionary.ts';

/** Cells of a mark by rows from the top, its black rim among them; black true. */
export function markCells(id: number): boolean[][] {
  const code = markCode(id);
  const inner = MARK_CELLS - 2;
  return Array.from({ length: MARK_CELLS }, (_, y) =>
    Array.from({ length: MARK_CELLS }, (_, x) => {
      const isRim = x === 0 || y === 0 || x > inner || y > inner;
      return isRim || code[(y - 1) * inner + x - 1] === '0';
    }),
  );
}
