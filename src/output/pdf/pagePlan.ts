import {
  type Box,
  type Drawing,
  type Hide,
  layOut,
  type PieceDrawing,
  turnedPiece,
  type Vec2,
} from '../../core/index.ts';
import { captioned } from './captioned.ts';
import { LONGEST_PAGE, type Page, type Paper, SHEETS } from './paper.ts';
import { paperPiece } from './paperPiece.ts';
import { BAR_LENGTH, type PrinterScale } from './printerScale.ts';
import { FOOTER, frameOf, OVERLAP, PAD, PAGE_MARGIN, type Tile, type Tiling, tiling } from './tiling.ts';

/** Between pieces on a page, mm: room for scissors. */
const SPACING = 6;

/** Of the part of the first page that is for checking, page mm: how wide, and how high beyond the upright bar. */
const CHECK = { width: 190, beyondBar: 42 } as const;

/** Height of the tile map, mm: at least, and what each row of tiles asks for. */
const MAP = { least: 40, row: 13 } as const;

/** A piece, or a tile of one, as it lies on a page. */
export interface PagePart {
  /** With the words that it had no room for beside it, and turned where it lies turned. */
  readonly piece: PieceDrawing;
  readonly isTurned: boolean;
  /** The page's window on it, in its own coordinates, mm. */
  readonly window: Box;
  /** Where it goes over several pages. */
  readonly tile: { readonly of: Tiling; readonly tile: Tile } | null;
}

interface PlannedPage {
  readonly page: Page;
  readonly parts: readonly PagePart[];
}

/** Which pieces of a drawing lie on which page. */
export interface PagePlan {
  /** The first has the check bars, and the map of the tiles where there are any. */
  readonly pages: readonly PlannedPage[];
  /** For checking, on the first page: its bars and words, and below them the map, page mm. */
  readonly check: { readonly block: Box; readonly map: Box | null };
  /** Pieces over several pages, in the order of the drawing. */
  readonly tiled: readonly { readonly piece: PieceDrawing; readonly tiling: Tiling; readonly firstPage: number }[];
}

/** A piece with the box that it takes on a page, in its own coordinates. */
interface Boxed {
  readonly piece: PieceDrawing;
  readonly box: Box;
}

/** A page that is being filled; boxes in mm of the pattern from the lower left of its frame. */
interface Filling {
  readonly page: Page;
  readonly size: readonly [number, number];
  readonly taken: readonly Box[];
  readonly parts: PagePart[];
}

/**
 * Plans the pages of a template: the check bars, the tiles of the pieces that are larger than a page, and every other piece where
 * the layout engine finds room, first on pages that there are anyway, turned a quarter where that helps. From a roll one page is cut
 * that has all pieces as wide as the roll at most, as short as the engine finds.
 */
export function pagePlan({ pieces: drawn }: Pick<Drawing, 'pieces'>, paper: Paper, scale: PrinterScale): PagePlan {
  const pieces = drawn.map(paperPiece);
  const frames = framesOf(paper, scale);
  const whole: Boxed[] = [];
  const large: { readonly piece: PieceDrawing; readonly tiling: Tiling }[] = [];
  for (const piece of pieces) {
    const boxed = [captioned(piece, PAD), bare(piece)].find(({ box }) => frames.some(({ size }) => fits(box, size)));
    if (boxed === undefined) large.push({ piece, tiling: tiling(piece, paper, scale) });
    else whole.push(boxed);
  }
  const rows = large.reduce((most, each) => Math.max(most, each.tiling.rows), 0);
  const first = checkFilling(paper, scale, rows);
  const tiles = large.flatMap(({ piece, tiling }) => tiling.tiles.map((tile) => tileFilling(piece, tiling, tile)));
  const fillings = [first.filling, ...tiles];

  let left: readonly Boxed[] = whole;
  for (const filling of fillings) left = fill(filling, left);
  while (left.length > 0) {
    const tries = frames.map(({ page, size }) => {
      const filling: Filling = { page, size, taken: [], parts: [] };
      return { filling, left: fill(filling, left) };
    });
    const best = tries.reduce((a, b) => (areaOf(b.left) < areaOf(a.left) - 1e-6 ? b : a));
    fillings.push(best.filling);
    left = best.left;
  }
  let page = 2;
  const tiled = large.map((each) => {
    const firstPage = page;
    page += each.tiling.tiles.length;
    return { ...each, firstPage };
  });
  const cut =
    typeof paper === 'string' ? fillings : fillings.map((filling) => cutToLength(filling, first.least, scale));
  return { pages: cut.map(({ page, parts }) => ({ page, parts })), check: first.check, tiled };
}

const bare = (piece: PieceDrawing): Boxed => ({
  piece,
  box: { x: -PAD, y: -PAD, width: piece.width + 2 * PAD, height: piece.height + 2 * PAD },
});

const fits = ({ width, height }: Box, [wide, high]: readonly [number, number]): boolean =>
  (width <= wide && height <= high) || (height <= wide && width <= high);

const areaOf = (boxed: readonly Boxed[]): number => boxed.reduce((sum, { box }) => sum + box.width * box.height, 0);

/** The pages that a piece may lie on, with the size of their frames on the pattern. */
function framesOf(paper: Paper, scale: PrinterScale) {
  const sized = (page: Page) => {
    const frame = frameOf(page);
    return { page, size: [frame.width / scale.x, frame.height / scale.y] as const };
  };
  if (typeof paper !== 'string') return [sized({ width: paper.roll_mm, height: LONGEST_PAGE })];
  const { width, height } = SHEETS[paper];
  return [sized({ width, height }), sized({ width: height, height: width })];
}

/** The first page: on a sheet its block is at the top, on a roll at the foot, because nobody knows yet how long it becomes. */
function checkFilling(paper: Paper, scale: PrinterScale, rows: number) {
  const isSheet = typeof paper === 'string';
  const page = isSheet ? SHEETS[paper] : { width: paper.roll_mm, height: LONGEST_PAGE };
  const frame = frameOf(page);
  const width = Math.min(CHECK.width, frame.width);
  const height = BAR_LENGTH * scale.y + CHECK.beyondBar;
  const high = rows === 0 ? 0 : Math.min(MAP.least + MAP.row * (rows - 1), isSheet ? frame.height - height : 200);
  const y = isSheet ? frame.y + frame.height - height : frame.y + high;
  const block = { x: frame.x, y, width, height };
  const map = rows === 0 ? null : { x: frame.x, y: y - high, width, height: high };
  const taken = [block, ...(map === null ? [] : [map])].map(
    (box): Box => ({
      x: (box.x - frame.x) / scale.x,
      y: (box.y - frame.y) / scale.y,
      width: box.width / scale.x,
      height: box.height / scale.y,
    }),
  );
  const size = [frame.width / scale.x, frame.height / scale.y] as const;
  const filling: Filling = { page: { width: page.width, height: page.height }, size, taken, parts: [] };
  return { filling, check: { block, map }, least: height + high };
}

/** A page with a tile of a piece: taken are the piece and the strips along which it is joined to others. */
function tileFilling(piece: PieceDrawing, tiling: Tiling, tile: Tile): Filling {
  const { width, height } = tile;
  const strips: Box[] = [
    ...(tile.column > 0 ? [{ x: 0, y: 0, width: OVERLAP, height }] : []),
    ...(tile.column < tiling.columns - 1 ? [{ x: width - OVERLAP, y: 0, width: OVERLAP, height }] : []),
    ...(tile.row > 0 ? [{ x: 0, y: height - OVERLAP, width, height: OVERLAP }] : []),
    ...(tile.row < tiling.rows - 1 ? [{ x: 0, y: 0, width, height: OVERLAP }] : []),
  ];
  const drawn = { x: -tile.x, y: -tile.y, width: piece.width, height: piece.height };
  return {
    page: tiling.page,
    size: [width, height],
    taken: [drawn, ...strips],
    parts: [{ piece, isTurned: false, window: tile, tile: { of: tiling, tile } }],
  };
}

/** Lays what has room on a page; returns what has not. */
function fill(filling: Filling, boxed: readonly Boxed[]): readonly Boxed[] {
  if (boxed.length === 0) return boxed;
  const [width, height] = filling.size;
  const hide: Hide = {
    outline: corners({ x: 0, y: 0, width, height }),
    defects: filling.taken.map((box) => corners(grown(box, SPACING))),
    backbone: Math.PI / 2,
  };
  const outlines = boxed.map(({ box }, i) => ({
    name: `${i}`,
    leather: 'outside' as const,
    count: 1,
    polygon: corners(box),
    lies: 'either' as const,
  }));
  const { placed } = layOut(outlines, hide, { spacing: SPACING, edge: 0 });
  for (const { name, quarters, polygon } of placed) {
    const { piece, box } = boxed[Number(name)]!;
    const isTurned = quarters % 2 === 1;
    const lying = isTurned ? turnedPiece(piece) : piece;
    const left = isTurned ? box.y : box.x;
    const low = isTurned ? piece.width - box.x - box.width : box.y;
    const [x, y] = [0, 1].map((axis) => Math.min(...polygon.map((point) => point[axis]!))) as [number, number];
    filling.parts.push({ piece: lying, isTurned, window: { x: left - x, y: low - y, width, height }, tile: null });
  }
  const laid = new Set(placed.map(({ name }) => Number(name)));
  return boxed.filter((_, i) => !laid.has(i));
}

/** A page of a roll, cut off above what lies highest on it. */
function cutToLength(filling: Filling, least: number, scale: PrinterScale): Filling {
  if (filling.parts.some(({ tile }) => tile !== null)) return filling;
  const tops = filling.parts.map(({ piece, window }) => (piece.height + PAD - window.y) * scale.y);
  const height = Math.ceil(Math.max(least, ...tops)) + 2 * PAGE_MARGIN + FOOTER;
  return { ...filling, page: { ...filling.page, height } };
}

const corners = ({ x, y, width, height }: Box): Vec2[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

const grown = ({ x, y, width, height }: Box, by: number): Box => ({
  x: x - by,
  y: y - by,
  width: width + 2 * by,
  height: height + 2 * by,
});
