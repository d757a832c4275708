import type { Vec2 } from '../core/index.ts';
import { LIGHT } from './light.ts';

/**
 * A picture in greys as files keep them (sRGB's curve), row by row from the top. The centre of the first pixel stands at
 * (0.5, 0.5).
 */
export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  readonly values: Uint8Array;
}

/** Light between the pixels, 0 to 1, linear between their centres; NaN outside the picture. */
export function lightAt({ width, height, values }: GreyPicture, [x, y]: Vec2): number {
  const [left, top] = [Math.floor(x - 0.5), Math.floor(y - 0.5)];
  if (!(left >= 0 && top >= 0 && left + 1 < width && top + 1 < height)) return Number.NaN;
  const [p, q] = [x - 0.5 - left, y - 0.5 - top];
  const i = top * width + left;
  const upper = LIGHT[values[i]!]! * (1 - p) + LIGHT[values[i + 1]!]! * p;
  const lower = LIGHT[values[i + width]!]! * (1 - p) + LIGHT[values[i + width + 1]!]! * p;
  return upper * (1 - q) + lower * q;
}

/** A picture of every `factor` x `factor` pixels' mean; what is left over at the right and below is dropped. */
export function broughtDown(picture: GreyPicture, factor: number): GreyPicture {
  if (factor === 1) return picture;
  const [width, height] = [Math.floor(picture.width / factor), Math.floor(picture.height / factor)];
  const values = new Uint8Array(width * height);
  const sums = new Uint32Array(width);
  const half = (factor * factor) >> 1;
  for (let y = 0; y < height; y++) {
    sums.fill(half);
    for (let row = 0; row < factor; row++) {
      let i = (y * factor + row) * picture.width;
      for (let x = 0; x < width; x++) {
        let sum = 0;
        for (let k = 0; k < factor; k++) sum += picture.values[i++]!;
        sums[x]! += sum;
      }
    }
    for (let x = 0; x < width; x++) values[y * width + x] = sums[x]! / (factor * factor);
  }
  return { width, height, values };
}
