import { LONGEST_PAGE, type Page, type Paper, SHEETS } from './paper.ts';
import type { PrinterScale } from './printerScale.ts';

/** Margin that any printer leaves white, and the strip for words under the drawing, mm. */
export const PAGE_MARGIN = 10;
export const FOOTER = 8;

/** How far neighbouring tiles overlap on the pattern, and how far the pattern stays inside the outermost tiles, mm. */
export const OVERLAP = 12;
const PAD = 2;

/** One page's window on a piece, in the piece's coordinates, mm. */
export interface Tile {
  readonly column: number;
  /** From the top, 0 first. */
  readonly row: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Tiling {
  readonly page: Page;
  readonly columns: number;
  readonly rows: number;
  /** Row by row from the top. */
  readonly tiles: readonly Tile[];
}

/** Frame of the drawing on a page: the part inside the margins, above the words. */
export const frameOf = ({ width, height }: Page) => ({
  x: PAGE_MARGIN,
  y: PAGE_MARGIN + FOOTER,
  width: width - 2 * PAGE_MARGIN,
  height: height - 2 * PAGE_MARGIN - FOOTER,
});

/** Least length of a piece cut from a roll, mm: room for the words. */
const SHORTEST_PAGE = 120;

function pagesFor(paper: Paper, width: number, height: number, scale: PrinterScale): Page[] {
  if (typeof paper === 'string') {
    const sheet = SHEETS[paper];
    return [
      { width: sheet.width, height: sheet.height },
      { width: sheet.height, height: sheet.width },
    ];
  }
  const length = (size: number, factor: number): number =>
    Math.min(LONGEST_PAGE, Math.max(SHORTEST_PAGE, Math.ceil((size + 2 * PAD) * factor)));
  return [
    { width: paper.roll_mm, height: length(height, scale.y) + 2 * PAGE_MARGIN + FOOTER },
    { width: length(width, scale.x) + 2 * PAGE_MARGIN, height: paper.roll_mm },
  ];
}

/**
 * Divides a piece over the fewest pages, upright or lengthwise; on a roll, over the least area. Neighbouring windows
 * share `OVERLAP`, so n windows of size u cover n u - (n - 1) overlap.
 */
export function tiling(width: number, height: number, paper: Paper, scale: PrinterScale): Tiling {
  const choices = pagesFor(paper, width, height, scale).map((page) => {
    const frame = frameOf(page);
    const window = { width: frame.width / scale.x, height: frame.height / scale.y };
    const count = (size: number, part: number): number =>
      Math.max(1, Math.ceil((size + 2 * PAD - OVERLAP) / (part - OVERLAP) - 1e-9));
    return { page, window, columns: count(width, window.width), rows: count(height, window.height) };
  });
  const cost = ({ columns, rows, page }: (typeof choices)[number]): number =>
    typeof paper === 'string' ? columns * rows : columns * rows * page.width * page.height;
  const best = choices.reduce((least, choice) => (cost(choice) < cost(least) - 1e-9 ? choice : least));
  const { page, window, columns, rows } = best;
  const tiles = Array.from({ length: columns * rows }, (_, i): Tile => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    return {
      column,
      row,
      x: -PAD + column * (window.width - OVERLAP),
      y: height + PAD - window.height - row * (window.height - OVERLAP),
      ...window,
    };
  });
  return { page, columns, rows, tiles };
}

/** Where two neighbouring windows are cut and joined: the middle of their overlap, mm, in the piece's coordinates. */
export function joints({ columns, rows, tiles }: Tiling): {
  readonly x: readonly number[];
  readonly y: readonly number[];
} {
  const inner = (count: number): number[] => Array.from({ length: count - 1 }, (_, i) => i + 1);
  return {
    x: inner(columns).map((column) => tiles[column]!.x + OVERLAP / 2),
    y: inner(rows).map((row) => tiles[(row - 1) * columns]!.y + OVERLAP / 2),
  };
}
