import { LIGHT } from './light.ts';

/** Colours of a picture in CIELAB, three numbers a pixel: lightness, red against green, yellow against blue. */
export interface LabPicture {
  readonly width: number;
  readonly height: number;
  readonly values: Float32Array;
}

/**
 * CIELAB for the white D65 (CIE 15:2004, 8.2.1) of a picture in sRGB, brought down to the mean light of every `factor` x `factor`
 * pixels.
 */
export function labPicture(
  { width, height, rgba }: { readonly width: number; readonly height: number; readonly rgba: ArrayLike<number> },
  factor: number,
): LabPicture {
  const [columns, rows] = [Math.floor(width / factor), Math.floor(height / factor)];
  const values = new Float32Array(3 * columns * rows);
  const share = 1 / (factor * factor);
  for (let row = 0, at = 0; row < rows; row++)
    for (let column = 0; column < columns; column++, at += 3) {
      let [red, green, blue] = [0, 0, 0];
      for (let i = 0; i < factor; i++) {
        let from = 4 * ((row * factor + i) * width + column * factor);
        for (let k = 0; k < factor; k++, from += 4) {
          red += LIGHT[rgba[from]!]! * share;
          green += LIGHT[rgba[from + 1]!]! * share;
          blue += LIGHT[rgba[from + 2]!]! * share;
        }
      }
      const x = root((0.4124 * red + 0.3576 * green + 0.1805 * blue) / 0.9505);
      const y = root(0.2126 * red + 0.7152 * green + 0.0722 * blue);
      const z = root((0.0193 * red + 0.1192 * green + 0.9505 * blue) / 1.089);
      values[at] = 116 * y - 16;
      values[at + 1] = 500 * (x - y);
      values[at + 2] = 200 * (y - z);
    }
  return { width: columns, height: rows, values };
}

const root = (share: number): number => (share > 216 / 24389 ? Math.cbrt(share) : (841 / 108) * share + 4 / 29);
