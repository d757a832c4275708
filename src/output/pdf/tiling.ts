import { type Box, distance, LAYERS, type PieceDrawing } from '../../core/index.ts';
import { LAYER_STYLES } from '../layerStyle.ts';
import { clearShift, type ShiftedLine, type Stretch } from './clearShift.ts';
import { LONGEST_PAGE, type Page, type Paper, SHEETS } from './paper.ts';
import type { PrinterScale } from './printerScale.ts';
import { entityBox } from './touches.ts';

/** Margin that any printer leaves white, and the strip for words under the drawing, mm. */
export const PAGE_MARGIN = 10;
export const FOOTER = 8;

/** Half the size of a joining mark, mm. */
export const DIAMOND = 4;

/** How far neighbouring tiles overlap on the pattern, and how far the pattern stays inside the outermost tiles, mm. */
export const OVERLAP = 12;
export const PAD = 2;

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
  /** Holes or slits, and lines of words, that a joint goes through; one that only an edge of a page cuts is whole on its neighbour. */
  readonly crossed: { readonly holes: number; readonly words: number };
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
 * share `OVERLAP`, so n windows of size u cover n u - (n - 1) overlap; what they cover beyond the piece is the room in which
 * all of them are shifted until no joint goes through a hole or a word, and no edge of a window, or through as few as can be.
 */
export function tiling(
  piece: Pick<PieceDrawing, 'width' | 'height' | 'layers'>,
  paper: Paper,
  scale: PrinterScale,
): Tiling {
  const { width, height } = piece;
  const marks = marksOf(piece);
  const choices = pagesFor(paper, width, height, scale).map((page) => {
    const frame = frameOf(page);
    const window = { width: frame.width / scale.x, height: frame.height / scale.y };
    const count = (size: number, part: number): number =>
      Math.max(1, Math.ceil((size + 2 * PAD - OVERLAP) / (part - OVERLAP) - 1e-9));
    const [columns, rows] = [count(width, window.width), count(height, window.height)];
    const across = clearShift(
      seams(columns, window.width).map(({ at, weight }) => ({ at: at - PAD, weight })),
      -room(columns, window.width, width),
      [...marks.map(({ box }) => stretch(box.x, box.width)), ...linesAcross(piece, 0)],
    );
    // Rows are counted from the top, so they are shifted upward.
    const upright = clearShift(
      seams(rows, window.height).map(({ at, weight }) => ({ at: height + PAD - at, weight })),
      room(rows, window.height, height),
      [...marks.map(({ box }) => stretch(box.y, box.height)), ...linesAcross(piece, 1)],
    );
    return { page, window, columns, rows, across, upright };
  });
  const cost = ({ columns, rows, page }: (typeof choices)[number]): number =>
    typeof paper === 'string' ? columns * rows : columns * rows * page.width * page.height;
  const crossings = ({ across, upright }: (typeof choices)[number]): number => across.crossings + upright.crossings;
  const best = choices.reduce((least, choice) => {
    const more = cost(choice) - cost(least);
    return more < -1e-9 || (more < 1e-9 && crossings(choice) < crossings(least)) ? choice : least;
  });
  const { page, window, columns, rows, across, upright } = best;
  const tiles = Array.from({ length: columns * rows }, (_, i): Tile => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    return {
      column,
      row,
      x: across.shift - PAD + column * (window.width - OVERLAP),
      y: upright.shift + height + PAD - window.height - row * (window.height - OVERLAP),
      ...window,
    };
  });
  const cut = joints({ columns, rows, tiles });
  const isCrossed = ({ x, y, width, height }: Box): boolean =>
    cut.x.some((at) => at > x && at < x + width) || cut.y.some((at) => at > y && at < y + height);
  const crossed = (kind: Mark['kind']): number =>
    marks.filter((mark) => mark.kind === kind && isCrossed(mark.box)).length;
  return { page, columns, rows, tiles, crossed: { holes: crossed('hole'), words: crossed('words') } };
}

interface Mark {
  readonly kind: 'hole' | 'words';
  readonly box: Box;
}

/** What no joint should go through: holes, slits and words, as far as their ink goes. */
function marksOf({ layers }: Pick<PieceDrawing, 'layers'>): Mark[] {
  return LAYERS.flatMap((layer) =>
    layers[layer].flatMap((entity): Mark[] => {
      if (entity.kind === 'text') return [{ kind: 'words', box: entityBox(entity) }];
      return layer === 'hole' ? [{ kind: 'hole', box: inked(entityBox(entity), LAYER_STYLES.hole.width / 2) }] : [];
    }),
  );
}

/** Weights of a hole or words, and of a long line beside a joint, which only makes the joint hard to see. */
const WEIGHT = { mark: 10_000, line: 1 } as const;

/** What a joint goes through counts for as much as what so many edges of windows do. */
const JOINT = 100;

const stretch = (from: number, size: number): Stretch => ({ from, to: from + size, weight: WEIGHT.mark });

/** Long lines square to an axis, with the room of the joining marks on both sides. */
function linesAcross({ layers }: Pick<PieceDrawing, 'layers'>, axis: 0 | 1): Stretch[] {
  return LAYERS.flatMap((layer) => layers[layer])
    .flatMap((entity) => (entity.kind === 'path' ? entity.segments : entity.kind === 'line' ? [entity] : []))
    .flatMap((segment): Stretch[] => {
      if (segment.kind !== 'line') return [];
      const [from, to] = [segment.from[axis], segment.to[axis]];
      const isAcross = Math.abs(from - to) < 1e-6 && distance(segment.from, segment.to) > OVERLAP;
      return isAcross ? [{ from: from - DIAMOND, to: to + DIAMOND, weight: WEIGHT.line }] : [];
    });
}

const inked = ({ x, y, width, height }: Box, pen: number): Box => ({
  x: x - pen,
  y: y - pen,
  width: width + 2 * pen,
  height: height + 2 * pen,
});

/**
 * The three lines at each seam of windows along an axis, from the first edge: the edges of both windows and the joint between. A hole
 * that an edge goes through is whole on the other window, one that the joint goes through is whole on neither once they are joined.
 */
const seams = (count: number, size: number): ShiftedLine[] =>
  Array.from({ length: count - 1 }, (_, i) => (i + 1) * (size - OVERLAP)).flatMap((at) => [
    { at, weight: 1 },
    { at: at + OVERLAP / 2, weight: JOINT },
    { at: at + OVERLAP, weight: 1 },
  ]);

/** How far windows along an axis cover more than the piece. */
const room = (count: number, size: number, length: number): number =>
  Math.max(0, count * size - (count - 1) * OVERLAP - length - 2 * PAD);

/** Where two neighbouring windows are cut and joined: the middle of their overlap, mm, in the piece's coordinates. */
export function joints({ columns, rows, tiles }: Pick<Tiling, 'columns' | 'rows' | 'tiles'>): {
  readonly x: readonly number[];
  readonly y: readonly number[];
} {
  const inner = (count: number): number[] => Array.from({ length: count - 1 }, (_, i) => i + 1);
  return {
    x: inner(columns).map((column) => tiles[column]!.x + OVERLAP / 2),
    y: inner(rows).map((row) => tiles[(row - 1) * columns]!.y + OVERLAP / 2),
  };
}

/** Says what the joints of a piece go through; null where they go through nothing. */
export function crossedWords(
  { name }: Pick<PieceDrawing, 'name'>,
  { crossed: { holes, words } }: Tiling,
): string | null {
  const counted = [
    ...(holes === 0 ? [] : [holes === 1 ? 'one hole' : `${holes} holes`]),
    ...(words === 0 ? [] : [words === 1 ? 'one line of words' : `${words} lines of words`]),
  ];
  return counted.length === 0 ? null : `${name}: joints go through ${counted.join(' and ')}. No shift avoids it.`;
}
