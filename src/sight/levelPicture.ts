import { rotationBy, type Vec2, type View } from '../core/index.ts';
import type { GreyPicture } from './greyPicture.ts';

/** Where a photograph shows a place of the sheet's space, as x and y after one another; null behind the camera. */
export type Shows = (x: number, y: number, z: number, pixel: Float64Array) => boolean;

/** The same as `pixelOf` of `seenFrom`, without a list for each point: these are asked by the million. */
export function showsOf({ lens: { focal, centre, k1, k2 }, pose }: View): Shows {
  const [a, b, c] = rotationBy(pose.turn);
  const { shift } = pose;
  return (x, y, z, pixel) => {
    const far = c[0] * x - c[1] * y - c[2] * z + shift[2];
    if (!(far > 1)) return false;
    const u = (a[0] * x - a[1] * y - a[2] * z + shift[0]) / far;
    const v = (b[0] * x - b[1] * y - b[2] * z + shift[1]) / far;
    const r2 = u * u + v * v;
    const stretch = focal * (1 + r2 * (k1 + r2 * k2));
    pixel[0] = centre[0] + stretch * u;
    pixel[1] = centre[1] + stretch * v;
    return true;
  };
}

/** Pixels that a photograph has for a millimetre at a place of the sheet. */
export function pixelsPerMm(shows: Shows, [x, y]: Vec2, z: number): number {
  const [at, right, up] = [new Float64Array(2), new Float64Array(2), new Float64Array(2)];
  if (!(shows(x, y, z, at) && shows(x + 1, y, z, right) && shows(x, y + 1, z, up))) return Number.NaN;
  const [a, b] = [right[0]! - at[0]!, right[1]! - at[1]!];
  const [c, d] = [up[0]! - at[0]!, up[1]! - at[1]!];
  return Math.sqrt(Math.abs(a * d - b * c));
}

/** A grid of places on a level plane over the sheet: its first place, its spacing, and how many. */
export interface LevelGrid {
  readonly left: number;
  readonly low: number;
  readonly step: number;
  readonly columns: number;
  readonly rows: number;
}

/** Greys of a photograph at the places of a grid at height `z`, rows from the lowest; NaN where the photograph does not reach. */
export function levelPicture(
  { width, height, values }: GreyPicture,
  shows: Shows,
  { left, low, step, columns, rows }: LevelGrid,
  z: number,
): Float32Array {
  const grid = new Float32Array(columns * rows);
  const pixel = new Float64Array(2);
  for (let row = 0, i = 0; row < rows; row++)
    for (let column = 0; column < columns; column++, i++) {
      grid[i] = Number.NaN;
      if (!shows(left + column * step, low + row * step, z, pixel)) continue;
      const [x, y] = [pixel[0]! - 0.5, pixel[1]! - 0.5];
      const [a, b] = [Math.floor(x), Math.floor(y)];
      if (!(a >= 0 && b >= 0 && a + 1 < width && b + 1 < height)) continue;
      const [p, q] = [x - a, y - b];
      const k = b * width + a;
      grid[i] =
        (values[k]! * (1 - p) + values[k + 1]! * p) * (1 - q) +
        (values[k + width]! * (1 - p) + values[k + width + 1]! * p) * q;
    }
  return grid;
}
