import { rotationBy, type Vec2, type View } from '../core/index.ts';

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
