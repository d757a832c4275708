import { createRequire } from 'node:module';
import { MARK_SIDE, type MarkedPaper, markedPage } from '../../src/core/index.ts';
import { nth } from '../nth.ts';

interface Aruco {
  readonly AR: { readonly DICTIONARIES: { readonly ARUCO_MIP_36h12: { readonly codeList: readonly number[] } } };
}

const { AR }: Aruco = createRequire(import.meta.url)('js-aruco2');
/** Cells along a side of a mark, with its black rim. */
const CELLS = 8;

/** Whether a cell of a mark is white; rows from its head. */
function isWhite(id: number, row: number, column: number): boolean {
  if (row === 0 || row === CELLS - 1 || column === 0 || column === CELLS - 1) return false;
  const place = (CELLS - 2) * (row - 1) + column - 1;
  return nth(AR.DICTIONARIES.ARUCO_MIP_36h12.codeList, id).toString(2).padStart(36, '0')[place] === '1';
}

/** What is printed on a page, as shares of the black: a function of the place in mm from its middle. */
export interface PrintedPage {
  readonly width: number;
  readonly height: number;
  readonly inkAt: (x: number, y: number) => number;
}

/** Dots a millimetre of what is neither a mark nor an edge. */
const DOTS = 4;

const known = new Map<string, PrintedPage>();

/** Page `page` (from 0) of the measuring sheet: its marks exactly, its bars and words as grey blocks. */
export function printedPage(paper: MarkedPaper, page: number): PrintedPage {
  const key = `${paper} ${page}`;
  const made = known.get(key) ?? makePage(paper, page);
  known.set(key, made);
  return made;
}

function makePage(paper: MarkedPaper, page: number): PrintedPage {
  const { width, height, marks, bars } = markedPage(paper, page);
  const [columns, rows] = [Math.ceil(width * DOTS), Math.ceil(height * DOTS)];
  const ink = new Uint8Array(columns * rows);
  const block = (left: number, right: number, low: number, high: number, dark: number): void => {
    for (let y = low; y < high; y += 1 / DOTS)
      for (let x = left; x < right; x += 1 / DOTS)
        ink[Math.floor((y + height / 2) * DOTS) * columns + Math.floor((x + width / 2) * DOTS)] = dark;
  };
  const { across, along } = bars;
  const [barY, barX] = [across.from[1], along.from[0]];
  block(across.from[0], across.to[0], barY - 0.25, barY + 0.25, 255);
  block(barX - 0.25, barX + 0.25, along.from[1], along.to[1], 255);
  for (let i = 0; i <= across.length; i += 10)
    block(across.from[0] + i - 0.25, across.from[0] + i + 0.25, barY - 1.5, barY + 1.5, 255);
  for (let i = 0; i <= along.length; i += 10)
    block(barX - 1.5, barX + 1.5, along.from[1] + i - 0.25, along.from[1] + i + 0.25, 255);
  // Words of the page, and its square code.
  for (let line = 0; line < 12; line++)
    for (let x = -60, i = 0; x < 55; i++) {
      const long = 3 + ((7 * i + 5 * line) % 9);
      block(x, Math.min(60, x + long), 60 - 6 * line, 62 - 6 * line, 150);
      x += long + 1.5;
    }
  for (let row = 0; row < 21; row++)
    for (let column = 0; column < 21; column++)
      if ((row * 7 + column * 11 + ((row * column) % 5)) % 3 === 0)
        block(column - 10, column - 9, row - 50, row - 49, 255);

  // For every square millimetre the mark that touches it; marks stand farther apart than that.
  const [wide, tall] = [Math.ceil(width), Math.ceil(height)];
  const markAt = new Int16Array(wide * tall).fill(-1);
  const cells = new Uint8Array(marks.length * CELLS * CELLS);
  const left = new Float64Array(marks.length);
  const top = new Float64Array(marks.length);
  marks.forEach(({ id, corners: [upperLeft] }, i) => {
    left[i] = upperLeft[0];
    top[i] = upperLeft[1];
    for (let row = 0; row < CELLS; row++)
      for (let column = 0; column < CELLS; column++)
        cells[(i * CELLS + row) * CELLS + column] = isWhite(id, row, column) ? 0 : 1;
    const [x, y] = [upperLeft[0] + width / 2, upperLeft[1] + height / 2];
    for (let b = Math.floor(y - MARK_SIDE); b <= y; b++)
      for (let a = Math.floor(x); a <= x + MARK_SIDE; a++) markAt[b * wide + a] = i;
  });
  return {
    width,
    height,
    inkAt: (x, y) => {
      const [a, b] = [x + width / 2, y + height / 2];
      const mark = markAt[Math.floor(b) * wide + Math.floor(a)]!;
      if (mark >= 0) {
        const column = Math.floor(((x - left[mark]!) * CELLS) / MARK_SIDE);
        const row = Math.floor(((top[mark]! - y) * CELLS) / MARK_SIDE);
        if (column >= 0 && column < CELLS && row >= 0 && row < CELLS)
          return cells[(mark * CELLS + row) * CELLS + column]!;
      }
      return ink[Math.floor(b * DOTS) * columns + Math.floor(a * DOTS)]! / 255;
    },
  };
}
