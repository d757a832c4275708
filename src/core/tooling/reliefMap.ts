import { reachOf } from '../math/box2.ts';
import type { Vec2 } from '../math/vec2.ts';
import { pictureFrame } from '../pattern/drawing.ts';
import { picturePixels } from './picturePixels.ts';
import type { PlacedPicture } from './placedDesign.ts';
import type { TooledFace } from './toolingMarks.ts';

/** How deep the leather is pressed over a rectangle of a piece, as bytes: 0 untouched, 255 the depth of the job. */
export interface ReliefMap {
  /** Lower left corner in the frame of the finished piece, mm, and size. */
  readonly origin: Vec2;
  readonly size: Vec2;
  readonly columns: number;
  readonly rows: number;
  /** Row by row from the tail up; each byte is the depth in the middle of its pixel. */
  readonly depths: Uint8Array;
}

/** Pixels over the width of a line that are wanted, and the most along one side of a map. */
const WANTED = 6;
const MOST = 4096;
/** Most pixels of a map. */
const MOST_PIXELS = 6_000_000;

/**
 * The relief of all designs on one piece; null where there is none.
 *
 * A line is pressed by a round tool: over its width w the depth at a distance r from its middle is (1 + cos(2 pi r / w)) / 2 of
 * the full one. Where lines cross, the deeper counts. A picture presses by its grey.
 * @param faces those of one piece
 * @param width of the lines, mm
 */
export function reliefMap(faces: readonly TooledFace[], width: number): ReliefMap | null {
  const lines = faces.flatMap(({ designs }) => designs.flatMap((each) => each.lines));
  const pictures = faces.flatMap(({ designs }) => designs.flatMap((each) => each.pictures));
  const reach = reachOf([...lines, ...pictures.map(pictureFrame)]);
  if (reach === null) return null;
  const [x0, y0] = [reach.x[0] - width, reach.y[0] - width];
  const [long, high] = [reach.x[1] + width - x0, reach.y[1] + width - y0];
  const scale = Math.min(WANTED / width, MOST / long, MOST / high, Math.sqrt(MOST_PIXELS / (long * high)));
  const [columns, rows] = [Math.max(1, Math.ceil(long * scale)), Math.max(1, Math.ceil(high * scale))];
  const map = { origin: [x0, y0] as const, size: [columns / scale, rows / scale] as const, columns, rows };
  const depths = new Uint8Array(columns * rows);
  const press = (i: number, j: number, depth: number): void => {
    const at = j * columns + i;
    if (depth > depths[at]!) depths[at] = depth;
  };
  // A line narrower than a pixel would come and go between them.
  const radius = Math.max(width / 2, 0.75 / scale);
  const raster: Raster = { x0, y0, scale, columns, rows };
  for (const line of lines)
    for (let k = 1; k < line.length; k++) pressLine(line[k - 1]!, line[k]!, radius, raster, press);
  for (const picture of pictures) pressPicture(picture, raster, press);
  return { ...map, depths };
}

interface Raster {
  readonly x0: number;
  readonly y0: number;
  readonly scale: number;
  readonly columns: number;
  readonly rows: number;
}

type Press = (i: number, j: number, depth: number) => void;

/** The pixels of a span along one axis. */
const pixels = (low: number, high: number, scale: number, count: number): readonly [number, number] => [
  Math.max(0, Math.floor(low * scale - 0.5)),
  Math.min(count - 1, Math.ceil(high * scale - 0.5)),
];

function pressLine(a: Vec2, b: Vec2, radius: number, { x0, y0, scale, columns, rows }: Raster, press: Press): void {
  const [ax, ay, bx, by] = [a[0] - x0, a[1] - y0, b[0] - x0, b[1] - y0];
  const [dx, dy] = [bx - ax, by - ay];
  const length2 = dx * dx + dy * dy;
  const [fromRow, toRow] = pixels(Math.min(ay, by) - radius, Math.max(ay, by) + radius, scale, rows);
  for (let j = fromRow; j <= toRow; j++) {
    const y = (j + 0.5) / scale;
    // Only the stretch of the line that comes near this row, so that a long slanted line costs its own length.
    const [from, to] = dy === 0 ? [0, 1] : stretch((y - radius - ay) / dy, (y + radius - ay) / dy);
    const ends = [ax + from * dx, ax + to * dx] as const;
    const [fromColumn, toColumn] = pixels(Math.min(...ends) - radius, Math.max(...ends) + radius, scale, columns);
    for (let i = fromColumn; i <= toColumn; i++) {
      const x = (i + 0.5) / scale;
      const along = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / length2));
      const away = Math.hypot(x - ax - along * dx, y - ay - along * dy);
      if (away < radius) press(i, j, Math.round(127.5 * (1 + Math.cos((Math.PI * away) / radius))));
    }
  }
}

/** The part from 0 to 1 of what lies between two shares of a line, in whichever order. */
const stretch = (a: number, b: number): readonly [number, number] => [
  Math.max(0, Math.min(a, b)),
  Math.min(1, Math.max(a, b)),
];

function pressPicture(
  { artwork, origin, along, down }: PlacedPicture,
  { x0, y0, scale, columns, rows }: Raster,
  press: Press,
): void {
  const grey = picturePixels(artwork);
  if (grey === null) return;
  const { x: across, y: up } = reachOf([pictureFrame({ origin, along, down })])!;
  const [fromColumn, toColumn] = pixels(across[0] - x0, across[1] - x0, scale, columns);
  const [fromRow, toRow] = pixels(up[0] - y0, up[1] - y0, scale, rows);
  const area = along[0] * down[1] - along[1] * down[0];
  for (let j = fromRow; j <= toRow; j++)
    for (let i = fromColumn; i <= toColumn; i++) {
      const x = (i + 0.5) / scale + x0 - origin[0];
      const y = (j + 0.5) / scale + y0 - origin[1];
      const a = (x * down[1] - y * down[0]) / area;
      const d = (y * along[0] - x * along[1]) / area;
      if (a < 0 || a >= 1 || d < 0 || d >= 1) continue;
      const pixel = Math.floor(d * artwork.height) * artwork.width + Math.floor(a * artwork.width);
      press(i, j, 255 - grey[pixel]!);
    }
}
