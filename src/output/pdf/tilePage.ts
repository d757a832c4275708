import {
  distance,
  LAYERS,
  type PieceDrawing,
  rectangle,
  type Segment,
  segmentStart,
  unwrittenWords,
  type Vec2,
} from '../../core/index.ts';
import { brokenLines } from '../brokenLines.ts';
import type { LayerStyle } from '../layerStyle.ts';
import type { PageMap, PdfCanvas } from './pdfCanvas.ts';
import type { PrinterScale } from './printerScale.ts';
import { FOOTER, frameOf, joints, OVERLAP, PAGE_MARGIN, type Tile, type Tiling } from './tiling.ts';
import { touches } from './touches.ts';

/** Where a tile's window lies on its page. */
function tileMap({ page }: Tiling, tile: Tile, scale: PrinterScale): PageMap {
  const frame = frameOf(page);
  return { origin: [frame.x, frame.y], from: [tile.x, tile.y], scale: [scale.x, scale.y] };
}

/** Name of a tile: its column as a letter and its row as a number, as on the tile map. */
export const tileName = ({ column, row }: Pick<Tile, 'column' | 'row'>): string => `${columnName(column)}${row + 1}`;

const columnName = (column: number): string =>
  (column >= 26 ? columnName(Math.floor(column / 26) - 1) : '') + String.fromCharCode(65 + (column % 26));

const JOIN: LayerStyle = { width: 0.15, dash: [2, 2], ink: [90, 90, 90] };
const FRAME: LayerStyle = { width: 0.1, dash: [], ink: [150, 150, 150] };
const MARK: LayerStyle = { width: 0.2, dash: [], ink: [0, 0, 0] };

/** Half the size of a joining mark, mm. */
const DIAMOND = 4;

/** Arms of the angle that marks a corner taken off, mm. */
const ANGLE = 4;

/** Corners of a piece's box that its outline does not reach: rounded or clipped. */
export function cornersTakenOff({ outline, width, height }: PieceDrawing): Vec2[] {
  const corners: Vec2[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
  return corners.filter((corner) => outline.every((segment) => distance(segmentStart(segment), corner) > 1e-6));
}

/** Draws one page of a piece: what lies in its window, the lines to cut and join on, and the footer. */
export function drawTile(
  canvas: PdfCanvas,
  piece: PieceDrawing,
  tiling: Tiling,
  tile: Tile,
  marks: readonly JoiningMark[],
  scale: PrinterScale,
  footer: string,
): void {
  const map = tileMap(tiling, tile, scale);
  const frame = frameOf(tiling.page);
  for (const layer of LAYERS) {
    const seen = piece.layers[layer].filter((entity) => touches(entity, tile));
    if (seen.length > 0) canvas.layer(layer, seen, map, frame);
  }
  const onPage = ([x, y]: Vec2): Vec2 => [
    map.origin[0] + scale.x * (x - tile.x),
    map.origin[1] + scale.y * (y - tile.y),
  ];
  const join = joints(tiling);
  const [right, top] = [tile.x + tile.width, tile.y + tile.height];
  const here = {
    x: join.x.filter((x) => x > tile.x && x < right),
    y: join.y.filter((y) => y > tile.y && y < top),
  };
  const line = (from: Vec2, to: Vec2): Segment => ({ kind: 'line', from: onPage(from), to: onPage(to) });
  canvas.lines(
    [...here.x.map((x) => line([x, tile.y], [x, top])), ...here.y.map((y) => line([tile.x, y], [right, y]))],
    JOIN,
  );
  const isHere = ([x, y]: Vec2): boolean => x > tile.x && x < right && y > tile.y && y < top;
  for (const { at, name } of marks.filter((mark) => isHere(mark.at))) {
    const corner = (dx: number, dy: number): Vec2 => [at[0] + dx * DIAMOND, at[1] + dy * DIAMOND];
    const corners = [corner(1, 0), corner(0, 1), corner(-1, 0), corner(0, -1)];
    canvas.lines(
      corners.map((from, i) => line(from, corners[(i + 1) % 4]!)),
      MARK,
    );
    const [x, y] = onPage(at);
    canvas.words(name, [x + 1.5, y - 0.9], 2.5, { align: 'middle' });
  }
  for (const corner of cornersTakenOff(piece)) {
    const [x, y] = corner;
    const arms: Vec2[] = [
      [x + (x === 0 ? ANGLE : -ANGLE), y],
      [x, y + (y === 0 ? ANGLE : -ANGLE)],
    ];
    if ([corner, ...arms].every(isHere))
      canvas.lines(
        arms.map((arm) => line(corner, arm)),
        FRAME,
      );
  }
  if (piece.unwritten.length > 0) writeBelow(canvas, piece, onPage([0, 0]), frame);
  canvas.lines(rectangle([frame.x, frame.y], [frame.x + frame.width, frame.y + frame.height]), FRAME);
  canvas.words(footer, [frame.x, PAGE_MARGIN + FOOTER - 4.5], 3, { width: frame.width });
}

const WORDS = 3;
const LEADING = 1.4;

/**
 * Writes the words that have no room on a piece below it, with a leader. Only small pieces have such words; where the
 * page has no room either, as on a roll, the note on the first page has them.
 */
function writeBelow(
  canvas: PdfCanvas,
  { unwritten, width }: PieceDrawing,
  [left, foot]: Vec2,
  frame: ReturnType<typeof frameOf>,
): void {
  const x = left + Math.min(width / 2, 10);
  const lines = brokenLines(unwrittenWords(unwritten), frame.x + frame.width - x - 4, (words) =>
    canvas.widthOf(words, WORDS),
  );
  const top = foot - 8;
  if (top - lines.length * WORDS * LEADING < frame.y) return;
  canvas.lines([{ kind: 'line', from: [x, top + 1], to: [x, foot - 1] }], MARK);
  lines.forEach((line, i) => {
    canvas.words(line, [x, top - WORDS - i * WORDS * LEADING], WORDS);
  });
}

export interface JoiningMark {
  readonly at: Vec2;
  readonly name: string;
}

/** Weight of words against a line under a joining mark. */
const WORDS_HARM = 100;

/** Places along a joint for its first diamond, as shares of it, the best first; the second has them from the other end. */
const PLACES = [0.25, 0.2, 0.3, 0.15, 0.35, 0.1, 0.4, 0.45];

/**
 * Two diamonds on each joint of two tiles, clear of the joints that cross it and, where there is room, of all that is drawn;
 * both tiles carry them in the same place.
 */
export function joiningMarks({ layers }: PieceDrawing, tiling: Tiling): JoiningMark[] {
  const { columns, rows, tiles } = tiling;
  const join = joints(tiling);
  const drawn = LAYERS.flatMap((layer) => layers[layer]);
  const marks: JoiningMark[] = [];
  /** Weight of what a diamond would cover: a joint may run along a fold, but words beside it can be kept free. */
  const harm = ([x, y]: Vec2): number => {
    const box = { x: x - DIAMOND, y: y - DIAMOND, width: 2 * DIAMOND, height: 2 * DIAMOND };
    return drawn.reduce(
      (sum, entity) => sum + (touches(entity, box) ? (entity.kind === 'text' ? WORDS_HARM : 1) : 0),
      0,
    );
  };
  const pair = (from: number, size: number, at: (along: number) => Vec2): void => {
    const number = marks.length / 2 + 1;
    const [first, second] = [PLACES, PLACES.map((share) => 1 - share)].map((shares) => {
      const places = shares.map((share) => at(from + OVERLAP + share * (size - 2 * OVERLAP)));
      const harms = places.map(harm);
      return places[harms.indexOf(Math.min(...harms))]!;
    });
    marks.push({ at: first!, name: `${number}` }, { at: second!, name: `${number}'` });
  };
  for (const tile of tiles) {
    if (tile.column < columns - 1) pair(tile.y, tile.height, (y) => [join.x[tile.column]!, y]);
    if (tile.row < rows - 1) pair(tile.x, tile.width, (x) => [x, join.y[tile.row]!]);
  }
  return marks;
}
