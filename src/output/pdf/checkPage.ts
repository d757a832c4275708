import {
  capital,
  type Drawing,
  isStrip,
  isTestStrip,
  isTracing,
  line,
  type PieceDrawing,
  pieceWords,
  printer,
  rectangle,
  type Vec2,
} from '../../core/index.ts';
import { brokenLines } from '../brokenLines.ts';
import type { LayerStyle } from '../layerStyle.ts';
import type { TitleBlock } from '../titleBlock.ts';
import { CARD_CORNER, drawCardCorner } from './cardGap.ts';
import { drawLegend, layersIn } from './legend.ts';
import type { PagePlan } from './pagePlan.ts';
import { fitToPage, type Paper } from './paper.ts';
import type { PdfCanvas } from './pdfCanvas.ts';
import { BAR_LENGTH, type MeasuredBars, type PrinterScale, percent } from './printerScale.ts';
import { cornersTakenOff, tileName } from './tilePage.ts';
import { crossedWords } from './tiling.ts';
import { drawTitleBlock } from './titleBlock.ts';

export interface CheckPage {
  /** At its head; without one the title of the drawing stands there. */
  readonly block: TitleBlock | undefined;
  readonly drawing: Drawing;
  readonly plan: PagePlan;
  readonly paper: Paper;
  readonly scale: PrinterScale;
  readonly bars: MeasuredBars | undefined;
  readonly suspicion: string | null;
  readonly mirrored: boolean;
}

const BAR: LayerStyle = { width: 0.35, dash: [], ink: [0, 0, 0] };
/** Thin, so that its middle is the end of the bar to a twentieth of a millimetre. */
const END_LINE: LayerStyle = { width: 0.1, dash: [], ink: [0, 0, 0] };
const GRID: LayerStyle = { width: 0.1, dash: [], ink: [90, 90, 90] };
const OUTLINE: LayerStyle = { width: 0.35, dash: [], ink: [0, 0, 0] };

/** Length of the bars for an inch ruler. */
const BAR_INCHES = printer('in').length(BAR_LENGTH);

const TITLE = 6;
const TEXT = 3.2;
const LEADING = 4.6;
/** From the left of the block to the upright bar, and on to the words: a rule laid along a bar covers nothing else, mm. */
const UPRIGHT = 6;
const COLUMN = 14;
/** From the lower edge of the block to the bars, mm. */
const ABOVE_FOOT = 12;
/** From the level bar up to the corner for a bank card, and from there to the words and to the legend, mm. */
const CARD = 13;
const ABOVE_CARD = CARD_CORNER.height + 3;
const BESIDE_CARD = CARD_CORNER.width + 6;

/** The part of the first page for checking: what job it is, how to print, what to measure, which line means what, and the tile map. */
export function drawCheckPage(canvas: PdfCanvas, check: CheckPage): void {
  const { plan, scale } = check;
  const { block, map } = plan.check;
  // The bars stand apart, so that neither is read as part of the other; words go to the right of the upright one.
  const upright: Vec2 = [block.x + UPRIGHT, block.y + ABOVE_FOOT];
  const level: Vec2 = [block.x + UPRIGHT + COLUMN, upright[1]];
  const column = upright[0] + COLUMN;
  const room = block.x + block.width - column - 2;
  const head = block.y + block.height - 2;
  const top = head - drawHead(canvas, check, [column, head], room);

  const card: Vec2 = [column, level[1] + CARD];
  const high = top - 3 - (card[1] + ABOVE_CARD);
  const said = words(check);
  // Reduced until all is there, rather than cut off.
  const sizes = Array.from({ length: 24 }, (_, i) => 0.95 ** i);
  const broken = (share: number): string[][] =>
    said.map((text) => brokenLines(text, room, (part) => canvas.widthOf(part, TEXT * share)));
  const share = sizes.find((each) => broken(each).flat().length * LEADING * each <= high) ?? sizes.at(-1)!;
  let y = top - 3 - 0.7 * LEADING * share;
  for (const lines of broken(share))
    canvas.tagged('P', () => {
      for (const line of lines) {
        canvas.words(line, [column, y], TEXT * share);
        y -= LEADING * share;
      }
    });

  drawBar(canvas, level, [1, 0], BAR_LENGTH * scale.x);
  drawBar(canvas, upright, [0, 1], BAR_LENGTH * scale.y);
  const length = `${BAR_LENGTH} mm between the tips of its arrows (about ${BAR_INCHES})`;
  canvas.words(`x check bar: ${length}`, [level[0] + 8, level[1] + 6], TEXT);
  canvas.words(`y check bar: ${length}`, [upright[0] + 9, upright[1] + 16], TEXT, { rotation: Math.PI / 2 });
  drawCardCorner(canvas, card, scale, cardWords(check));
  const layers = layersIn(plan.pages.flatMap(({ parts }) => parts.map(({ piece }) => piece)));
  drawLegend(canvas, [column + BESIDE_CARD, card[1] + ABOVE_CARD - 3], room - BESIDE_CARD, layers);
  if (map !== null)
    canvas.tagged(
      'Figure',
      () => drawMap(canvas, plan.tiled, { x: map.x + 4, y: map.y + 3, width: map.width - 8, height: map.height - 5 }),
      {
        alt: `Map of the tiles: ${plan.tiled.map(({ piece, tiling, firstPage }) => `${piece.name} in ${tiling.tiles.length} tiles from page ${firstPage}`).join('; ')}`,
        box: map,
      },
    );
}

/** Title block, or the title of a drawing without a job; returns its height. */
function drawHead(canvas: PdfCanvas, { block, drawing, plan }: CheckPage, at: Vec2, room: number): number {
  if (block !== undefined) return drawTitleBlock(canvas, at, room, block, { page: 1, pages: plan.pages.length });
  canvas.tagged('H1', () => canvas.words(drawing.title, [at[0], at[1] - TITLE], TITLE, { width: room }));
  return TITLE * 1.4;
}

/** How to print, in the place of the card. */
function cardWords({ paper, scale, bars, drawing: { units } }: CheckPage): string[] {
  const fitted = fitToPage(paper);
  const { share } = printer(units);
  return [
    ...(fitted === null
      ? []
      : [
          `"Fit to page" onto ${fitted.onto} paper gives ${percent(fitted.share)}: a bar of ${printer('mm').length(BAR_LENGTH * fitted.share)}. Such a print is of no use.`,
        ]),
    bars === undefined
      ? 'If the bars are off by a little, give both measured lengths to the tool and print again.'
      : `Corrected for bars measured ${bars.x_mm} and ${bars.y_mm} mm: drawn at ${share(scale.x, 2)} across and ${share(scale.y, 2)} upright.`,
  ];
}

function words({ drawing, plan, suspicion, mirrored }: CheckPage): string[] {
  const { size, exact, length } = printer(drawing.units);
  const cutPieces = drawing.pieces.filter((piece) => !isTracing(piece));
  const isOfTracings = cutPieces.length === 0;
  const isTakenOff = cutPieces.some((piece) => cornersTakenOff(piece).length > 0);
  return [
    'Print at actual size, 100 %, without "fit to page" or "shrink". Then measure both bars from arrow tip to arrow tip, or lay a bank card in its corner.',
    ...(suspicion === null ? [] : [`Caution: ${suspicion}`]),
    `${capital(drawing.faceUp)}, ${place(drawing, mirrored)}`,
    ...(plan.tiled.length === 0
      ? []
      : [
          'Join tiles: cut one of two neighbours on its dashed line. Lay it on the other so that the diamonds of one number meet.',
        ]),
    isOfTracings
      ? 'Check what is drawn by the distances of rings given here.'
      : `Check what is drawn; a diagonal is taken from corner to corner${isTakenOff ? ', or from the angle marked where two edges would meet' : ''}:`,
    ...drawing.pieces.map((piece) => {
      const place = pagesWords(plan, piece);
      if (isTracing(piece)) return `${pieceWords(piece)}: ${place}`;
      if (isStrip(piece)) return `${pieceWords(piece)}: ${length(piece.width)} long, ${place}`;
      // A half is as wide as its card asks for, which is no cut size.
      const width = (piece.id === 'half' ? exact : size)(piece.width);
      return `${pieceWords(piece)}: ${width} × ${size(piece.height)}, diagonal ${length(Math.hypot(piece.width, piece.height))}, ${place}`;
    }),
    ...drawing.lengths.map(({ name, count, sum }) => `${name}, cut ${count}: ${size(sum.total)}`),
    ...plan.tiled.flatMap(({ piece, tiling }) => crossedWords(piece, tiling) ?? []),
    ...drawing.notes.map((note) => `Note: ${note}`),
  ];
}

function place({ pieces }: Drawing, mirrored: boolean): string {
  if (pieces.every(isTestStrip)) return "each turned so that its arrow lies along the hide's backbone.";
  return pieces.every(isTracing) ? placeOfTracing(mirrored) : placeOfPieces(mirrored);
}

/** The pages that a piece is on: `page 2`, `pages 3 to 6`. */
function pagesWords({ pages }: PagePlan, piece: PieceDrawing): string {
  const { id } = piece;
  const on = pages.flatMap(({ parts }, i) => (parts.some(({ piece }) => piece.id === id) ? [i + 1] : []));
  const isTurned = pages.some(({ parts }) => parts.some(({ piece, isTurned }) => piece.id === id && isTurned));
  const [first, last] = [on[0]!, on.at(-1)!];
  return `${first === last ? `page ${first}` : `pages ${first} to ${last}`}${isTurned && !isTestStrip(piece) ? ', turned: its head is at the right' : ''}`;
}

const placeOfPieces = (mirrored: boolean): string =>
  mirrored
    ? 'mirrored: for tracing there, head at the top, front at the left.'
    : 'as on the screen: head at the top, front at the right.';

const placeOfTracing = (mirrored: boolean): string =>
  mirrored
    ? 'mirrored: the lines lie on the grain side and are transferred to it, head at the top.'
    : 'on the grain side: the lines are gone over through the paper, head at the top.';

/** Half the lines that mark the ends of a bar, and its arrows: length and half the width, mm. */
const END = 4;
const ARROW = { length: 3.5, half: 0.7 } as const;

/** A bar between the tips of two arrows on lines across its ends, with a tick at each 10 mm of its true length. */
function drawBar(canvas: PdfCanvas, from: Vec2, along: Vec2, length: number): void {
  const across: Vec2 = [along[1], along[0]];
  const at = (distance: number, aside: number): Vec2 => [
    from[0] + along[0] * distance + across[0] * aside,
    from[1] + along[1] * distance + across[1] * aside,
  ];
  const tens = Array.from({ length: BAR_LENGTH / 10 - 1 }, (_, i) => (length * (i + 1)) / (BAR_LENGTH / 10));
  canvas.lines([line(at(0, 0), at(length, 0)), ...tens.map((place) => line(at(place, 0), at(place, 2)))], BAR);
  canvas.lines(
    [0, length].map((place) => line(at(place, -END / 2), at(place, END))),
    END_LINE,
  );
  for (const [tip, back] of [
    [0, ARROW.length],
    [length, length - ARROW.length],
  ] as const)
    canvas.area([at(tip, 0), at(back, ARROW.half), at(back, -ARROW.half)], BAR.ink);
}

/** Every piece on a small scale, with the windows of its pages and their numbers. */
function drawMap(
  canvas: PdfCanvas,
  tiled: PagePlan['tiled'],
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
  const words = 6;
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
