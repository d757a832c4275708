import {
  addScaled,
  type Box,
  boxOf,
  distance,
  type Entity,
  LAYERS,
  type PieceDrawing,
  rectangle,
  type Segment,
  segmentStart,
  type Vec2,
} from '../../core/index.ts';
import type { LayerStyle } from '../layerStyle.ts';
import type { PagePart } from './pagePlan.ts';
import type { Page } from './paper.ts';
import type { PageMap, PdfCanvas } from './pdfCanvas.ts';
import type { PrinterScale } from './printerScale.ts';
import { DIAMOND, FOOTER, frameOf, joints, OVERLAP, PAGE_MARGIN, type Tile, type Tiling } from './tiling.ts';
import { touches } from './touches.ts';

/** Name of a tile: its column as a letter and its row as a number, as on the tile map. */
export const tileName = ({ column, row }: Pick<Tile, 'column' | 'row'>): string => `${columnName(column)}${row + 1}`;

const columnName = (column: number): string =>
  (column >= 26 ? columnName(Math.floor(column / 26) - 1) : '') + String.fromCharCode(65 + (column % 26));

const JOIN: LayerStyle = { width: 0.18, dash: [2, 2], ink: [60, 60, 60] };
const FRAME: LayerStyle = { width: 0.1, dash: [], ink: [150, 150, 150] };
const MARK: LayerStyle = { width: 0.2, dash: [], ink: [0, 0, 0] };

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

/** Draws a piece, or a tile of one, on its page, and the lines to cut and join tiles on. */
export function drawPart(
  canvas: PdfCanvas,
  page: Page,
  { piece, window, tile }: PagePart,
  marks: readonly JoiningMark[],
  scale: PrinterScale,
): void {
  const frame = frameOf(page);
  const map: PageMap = { origin: [frame.x, frame.y], from: [window.x, window.y], scale: [scale.x, scale.y] };
  for (const layer of LAYERS) {
    const seen = piece.layers[layer].filter((entity) => touches(entity, window));
    if (seen.length > 0) canvas.layer(layer, seen, map, frame);
  }
  const onPage = ([x, y]: Vec2): Vec2 => [
    map.origin[0] + scale.x * (x - window.x),
    map.origin[1] + scale.y * (y - window.y),
  ];
  const [right, top] = [window.x + window.width, window.y + window.height];
  const line = (from: Vec2, to: Vec2): Segment => ({ kind: 'line', from: onPage(from), to: onPage(to) });
  const isHere = ([x, y]: Vec2): boolean => x > window.x && x < right && y > window.y && y < top;
  if (tile !== null) {
    const join = joints(tile.of);
    const here = {
      x: join.x.filter((x) => x > window.x && x < right),
      y: join.y.filter((y) => y > window.y && y < top),
    };
    canvas.lines(
      [...here.x.map((x) => line([x, window.y], [x, top])), ...here.y.map((y) => line([window.x, y], [right, y]))],
      JOIN,
    );
  }
  for (const { at, name, nameAt } of marks.filter((mark) => isHere(mark.at))) {
    const corner = (dx: number, dy: number): Vec2 => [at[0] + dx * DIAMOND, at[1] + dy * DIAMOND];
    const corners = [corner(1, 0), corner(0, 1), corner(-1, 0), corner(0, -1)];
    canvas.lines(
      corners.map((from, i) => line(from, corners[(i + 1) % 4]!)),
      MARK,
    );
    const [x, y] = onPage(nameAt);
    canvas.words(name, [x, y - 0.75], 2.2, { align: 'middle', width: 2 * NAME });
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
}

/** The frame of a page and the two lines of words under it. */
export function drawFrame(canvas: PdfCanvas, page: Page, foot: readonly [string, string]): void {
  const frame = frameOf(page);
  canvas.lines(rectangle([frame.x, frame.y], [frame.x + frame.width, frame.y + frame.height]), FRAME);
  foot.forEach((words, i) => {
    canvas.words(words, [frame.x, PAGE_MARGIN + FOOTER - 3.8 - i * 3.7], 2.7, { width: frame.width });
  });
}

export interface JoiningMark {
  readonly at: Vec2;
  readonly name: string;
  /** Middle of the name, in the half of the diamond that is freer. */
  readonly nameAt: Vec2;
}

/** Weight of words against a line under a joining mark, and of anything under its name. */
const HARM = { words: 100, name: 10 } as const;

/** From a joint to the middle of a name beside it, and the space that a name takes either way, mm. */
const ASIDE = 1.45;
const NAME = 1.1;

/** Places along a joint for its first diamond, as shares of it, the best first; the second has them from the other end. */
const PLACES = Array.from({ length: 44 }, (_, i) => 0.25 + (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * 0.01);

/**
 * Two diamonds on each joint of two tiles, clear of the joints that cross it and, where there is room, of all that is drawn;
 * both tiles carry them in the same place.
 */
export function joiningMarks({ layers }: PieceDrawing, tiling: Tiling): JoiningMark[] {
  const { columns, rows, tiles } = tiling;
  const join = joints(tiling);
  const drawn = LAYERS.flatMap((layer) => layers[layer]);
  const marks: JoiningMark[] = [];
  /** Weight of what would be covered: a joint may run along a fold, but words beside it can be kept free. */
  const harm = (near: readonly Entity[], { at, nameAt }: Omit<JoiningMark, 'name'>): number => {
    const [diamond, name] = [squareRound(at, DIAMOND), squareRound(nameAt, NAME)];
    return near.reduce((sum, entity) => {
      if (!touches(entity, diamond)) return sum;
      return sum + (entity.kind === 'text' ? HARM.words : 1) + (touches(entity, name, 0.2) ? HARM.name : 0);
    }, 0);
  };
  const pair = (from: number, size: number, aside: Vec2, at: (along: number) => Vec2): void => {
    const number = marks.length / 2 + 1;
    const ends = boxOf([at(from), at(from + size)]);
    const near = drawn.filter((entity) => touches(entity, ends, 2 * DIAMOND));
    for (const [shares, name] of [
      [PLACES, `${number}`],
      [PLACES.map((share) => 1 - share), `${number}'`],
    ] as const) {
      const places = shares
        .map((share) => at(from + OVERLAP + share * (size - 2 * OVERLAP)))
        .flatMap((place) => [1, -1].map((side) => ({ at: place, nameAt: addScaled(place, aside, side * ASIDE) })));
      const harms = places.map((place) => harm(near, place));
      marks.push({ ...places[harms.indexOf(Math.min(...harms))]!, name });
    }
  };
  for (const tile of tiles) {
    if (tile.column < columns - 1) pair(tile.y, tile.height, [1, 0], (y) => [join.x[tile.column]!, y]);
    if (tile.row < rows - 1) pair(tile.x, tile.width, [0, 1], (x) => [x, join.y[tile.row]!]);
  }
  return marks;
}

const squareRound = ([x, y]: Vec2, reach: number): Box => ({
  x: x - reach,
  y: y - reach,
  width: 2 * reach,
  height: 2 * reach,
});
