import {
  type Drawing,
  isTracing,
  type PieceDrawing,
  pieceWords,
  printer,
  rectangle,
  type Segment,
  type Vec2,
} from '../../core/index.ts';
import { brokenLines } from '../brokenLines.ts';
import type { LayerStyle } from '../layerStyle.ts';
import { fitToPage, type Page, type Paper } from './paper.ts';
import type { PdfCanvas } from './pdfCanvas.ts';
import { BAR_LENGTH, type MeasuredBars, type PrinterScale, percent } from './printerScale.ts';
import { cornersTakenOff, tileName } from './tilePage.ts';
import { crossedWords, PAGE_MARGIN, type Tiling } from './tiling.ts';

export interface TiledPiece {
  readonly piece: PieceDrawing;
  readonly tiling: Tiling;
  /** Page number of its first tile. */
  readonly firstPage: number;
}

export interface CheckPage {
  readonly drawing: Drawing;
  readonly tiled: readonly TiledPiece[];
  readonly pages: number;
  readonly page: Page;
  readonly paper: Paper;
  readonly scale: PrinterScale;
  readonly bars: MeasuredBars | undefined;
  readonly suspicion: string | null;
  readonly mirrored: boolean;
}

const BAR: LayerStyle = { width: 0.25, dash: [], ink: [0, 0, 0] };
const GRID: LayerStyle = { width: 0.1, dash: [], ink: [90, 90, 90] };
const OUTLINE: LayerStyle = { width: 0.35, dash: [], ink: [0, 0, 0] };

/** Length of the bars for an inch ruler. */
const BAR_INCHES = printer('in').length(BAR_LENGTH);

const TEXT = 3.2;
const LEADING = 5;
/** From the level check bar up to the foot of the upright one, mm: a rule laid along one must not cover the other. */
const BARS_APART = 13;
/** Least height of the tile map, mm. */
const LEAST_MAP = 35;

/** The first page: how to print, two bars to measure, the diagonals of the pieces, and which tile is on which page. */
export function drawCheckPage(canvas: PdfCanvas, check: CheckPage): void {
  const { drawing, page, pages, scale } = check;
  const left = PAGE_MARGIN + 2;
  const width = page.width - 2 * left;
  let y = page.height - PAGE_MARGIN - 7;
  canvas.words(drawing.title, [left, y], 7, { width });
  y -= 8;

  // The bars stand apart, so that neither is read as part of the other; words go to the right of the upright one.
  const upright: Vec2 = [left + 4, y - 4 - BAR_LENGTH * scale.y];
  const level: Vec2 = [left + 4, upright[1] - BARS_APART];
  drawBar(canvas, level, [1, 0], BAR_LENGTH * scale.x);
  drawBar(canvas, upright, [0, 1], BAR_LENGTH * scale.y);
  const length = `${BAR_LENGTH} mm from end to end (about ${BAR_INCHES})`;
  canvas.words(`x check bar: ${length}`, [level[0] + 8, level[1] + 5], TEXT);
  canvas.words(`y check bar: ${length}`, [upright[0] + 8, upright[1] + 8], TEXT, { rotation: Math.PI / 2 });

  const column = upright[0] + 14;
  const room = page.width - PAGE_MARGIN - column;
  const lines = words(check).flatMap((text) => brokenLines(text, room, (part) => canvas.widthOf(part, TEXT)));
  // Shrunk rather than cut off: all of this must be there.
  const shrink = Math.min(1, (BAR_LENGTH * scale.y - 2) / (lines.length * LEADING));
  lines.forEach((line, i) => {
    canvas.words(line, [column, y - 2 - i * LEADING * shrink], TEXT * shrink);
  });
  const top = level[1] - 6;
  if (top - PAGE_MARGIN - 10 > LEAST_MAP) {
    drawMap(canvas, check.tiled, { x: left, y: PAGE_MARGIN + 8, width, height: top - PAGE_MARGIN - 8 });
  }
  canvas.words(`page 1 of ${pages}: check bars and tile map`, [left, PAGE_MARGIN + 2], 3);
}

function words({ drawing, tiled, paper, scale, bars, suspicion, mirrored }: CheckPage): string[] {
  const fitted = fitToPage(paper);
  const { size, exact, length, share } = printer(drawing.units);
  const cutPieces = tiled.filter(({ piece }) => !isTracing(piece));
  const isOfTracings = cutPieces.length === 0;
  const isTakenOff = cutPieces.some(({ piece }) => cornersTakenOff(piece).length > 0);
  return [
    'Print at actual size, 100 %, without "fit to page" or "shrink". Then measure both bars, from the tick at one end to the tick at the other.',
    ...(fitted === null
      ? []
      : [
          `"Fit to page" onto ${fitted.onto} paper gives ${percent(fitted.share)}: a bar of ${printer('mm').length(BAR_LENGTH * fitted.share)}. Such a print is of no use.`,
        ]),
    ...(bars === undefined
      ? ['If they are off by a little, give both measured lengths to the tool and print again.']
      : [
          `Corrected for bars measured ${bars.x_mm} and ${bars.y_mm} mm: drawn at ${share(scale.x, 2)} across and ${share(scale.y, 2)} upright.`,
        ]),
    ...(suspicion === null ? [] : [`Caution: ${suspicion}`]),
    `${drawing.faceUp.charAt(0).toUpperCase()}${drawing.faceUp.slice(1)}, ${isOfTracings ? placeOfTracing(mirrored) : placeOfPieces(mirrored)}`,
    'Join tiles: cut one of two neighbours on its dashed line. Lay it on the other so that the diamonds of one number meet. Then check what is drawn' +
      (isOfTracings
        ? ' by the distances of rings given here.'
        : `; a diagonal is taken from corner to corner${isTakenOff ? ', or from the angle marked where two edges would meet' : ''}:`),
    ...cutPieces.map(
      ({ piece }) =>
        // A half is as wide as its card asks for, which is no cut size.
        `${pieceWords(piece)}: ${(piece.id === 'half' ? exact : size)(piece.width)} × ${size(piece.height)}, diagonal ${length(Math.hypot(piece.width, piece.height))}`,
    ),
    ...drawing.lengths.map(({ name, count, sum }) => `${name}, cut ${count}: ${size(sum.total)}`),
    ...tiled.flatMap(({ piece, tiling }) => crossedWords(piece, tiling) ?? []),
    ...drawing.notes.map((note) => `Note: ${note}`),
  ];
}

const placeOfPieces = (mirrored: boolean): string =>
  mirrored
    ? 'mirrored: for tracing there, head at the top, front at the left.'
    : 'as on the screen: head at the top, front at the right.';

const placeOfTracing = (mirrored: boolean): string =>
  mirrored
    ? 'mirrored: the lines lie on the grain side and are transferred to it, head at the top.'
    : 'on the grain side: the lines are gone over through the paper, head at the top.';

/** A bar with a tick at each 10 mm of its true length, through it at both ends. */
function drawBar(canvas: PdfCanvas, from: Vec2, along: Vec2, length: number): void {
  const across: Vec2 = [along[1], along[0]];
  const at = (distance: number, aside: number): Vec2 => [
    from[0] + along[0] * distance + across[0] * aside,
    from[1] + along[1] * distance + across[1] * aside,
  ];
  const ticks = Array.from({ length: BAR_LENGTH / 10 + 1 }, (_, i): Segment => {
    const place = (length * i) / (BAR_LENGTH / 10);
    const isEnd = i === 0 || i === BAR_LENGTH / 10;
    return { kind: 'line', from: at(place, isEnd ? -2 : 0), to: at(place, isEnd ? 4 : 2) };
  });
  canvas.lines([{ kind: 'line', from: at(0, 0), to: at(length, 0) }, ...ticks], BAR);
}

/** Every piece on a small scale, with the windows of its pages and their numbers. */
function drawMap(
  canvas: PdfCanvas,
  tiled: readonly TiledPiece[],
  box: { x: number; y: number; width: number; height: number },
): void {
  const extents = tiled.map(({ piece, tiling }) => {
    const left = Math.min(...tiling.tiles.map((tile) => tile.x));
    const low = Math.min(...tiling.tiles.map((tile) => tile.y));
    const right = Math.max(...tiling.tiles.map((tile) => tile.x + tile.width));
    const top = Math.max(...tiling.tiles.map((tile) => tile.y + tile.height));
    return { left, low, width: Math.max(right, piece.width) - left, height: Math.max(top, piece.height) - low };
  });
  const gap = 6;
  const words = 5;
  const scale = Math.min(
    (box.width - gap * (tiled.length - 1)) / extents.reduce((sum, { width }) => sum + width, 0),
    (box.height - words) / Math.max(...extents.map(({ height }) => height)),
  );
  let x = box.x;
  tiled.forEach(({ piece, tiling, firstPage }, i) => {
    const extent = extents[i]!;
    const at = ([px, py]: Vec2): Vec2 => [x + (px - extent.left) * scale, box.y + (py - extent.low) * scale];
    canvas.lines(
      tiling.tiles.flatMap((tile) => rectangle(at([tile.x, tile.y]), at([tile.x + tile.width, tile.y + tile.height]))),
      GRID,
    );
    canvas.lines(rectangle(at([0, 0]), at([piece.width, piece.height])), OUTLINE);
    const clear = {
      x: [0, piece.width, ...tiling.tiles.flatMap((tile) => [tile.x, tile.x + tile.width])],
      y: [0, piece.height, ...tiling.tiles.flatMap((tile) => [tile.y, tile.y + tile.height])],
    };
    tiling.tiles.forEach((tile, k) => {
      const [x0, x1] = widestGap(tile.x, tile.x + tile.width, clear.x);
      const [y0, y1] = widestGap(tile.y, tile.y + tile.height, clear.y);
      const name = `${tileName(tile)}, p. ${firstPage + k}`;
      const room = 0.9 * (x1 - x0) * scale;
      const height = Math.min(2.6, (2.6 * room) / canvas.widthOf(name, 2.6), ((y1 - y0) * scale) / 3);
      const [cx, cy] = at([(x0 + x1) / 2, (y0 + y1) / 2]);
      canvas.words(name, [cx, cy - height / 3], height, { align: 'middle' });
    });
    canvas.words(piece.name, [x, box.y + extent.height * scale + 1.5], 3, {
      width: Math.max(12, extent.width * scale + gap - 1),
    });
    x += extent.width * scale + gap;
  });
}

/** The widest gap between neighbouring lines from `from` to `to`, for words that lie on none of them. */
function widestGap(from: number, to: number, lines: readonly number[]): readonly [number, number] {
  const inside = [from, ...lines.filter((line) => line > from && line < to).sort((a, b) => a - b), to];
  const gaps = inside.slice(1).map((end, i) => [inside[i]!, end] as const);
  return gaps.reduce((widest, gap) => (gap[1] - gap[0] > widest[1] - widest[0] ? gap : widest));
}
