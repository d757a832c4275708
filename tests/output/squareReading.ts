import jsQR from 'jsqr';
import type { ReadPage } from './pdfReading.ts';

/** Pixels of a module and modules of white border that the picture of a square is given. */
const SCALE = 4;
const BORDER = 4;

/** Reads the square code of a page from its filled rectangles, with an independent decoder. */
export function readSquare({ paths }: ReadPage): { readonly text: string; readonly module: number } {
  const chains = paths.map((path) => path.chains).reduce((most, each) => (each.length > most.length ? each : most));
  const boxes = chains.map((chain) => {
    const [xs, ys] = [chain.map(([x]) => x), chain.map(([, y]) => y)];
    return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), top: Math.max(...ys) };
  });
  const [left, top] = [Math.min(...boxes.map((box) => box.left)), Math.max(...boxes.map((box) => box.top))];
  const module = Math.min(...boxes.map((box) => box.top - box.low));
  const count = Math.round((Math.max(...boxes.map((box) => box.right)) - left) / module);
  const size = (count + 2 * BORDER) * SCALE;
  const pixels = new Uint8ClampedArray(4 * size * size).fill(255);
  for (const box of boxes) {
    const [from, to, row] = [box.left - left, box.right - left, top - box.top].map((length) =>
      Math.round(length / module),
    );
    for (let y = 0; y < SCALE; y++)
      for (let x = from! * SCALE; x < to! * SCALE; x++) {
        const at = 4 * (((row! + BORDER) * SCALE + y) * size + BORDER * SCALE + x);
        pixels.fill(0, at, at + 3);
      }
  }
  const found = jsQR(pixels, size, size);
  if (found === null) throw new Error('the decoder finds no square code');
  return { text: found.data, module };
}
