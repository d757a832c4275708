import jsQR from 'jsqr';
import type { ReadPage } from './pdfReading.ts';

/** Pixels of a module and modules of white border that the picture of a square is given. */
const SCALE = 4;
const BORDER = 4;

/** The dark boxes of the square code on a page: of all paths the one with the most parts. */
const darkBoxes = ({ paths }: ReadPage) =>
  paths
    .map((path) => path.chains)
    .reduce((most, each) => (each.length > most.length ? each : most))
    .map((chain) => {
      const [xs, ys] = [chain.map(([x]) => x), chain.map(([, y]) => y)];
      return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), top: Math.max(...ys) };
    });

/** Where the square code lies on a page, without its border; mm, its upper left corner from the lower left of the page. */
export function squareOn(page: ReadPage): { readonly left: number; readonly top: number; readonly side: number } {
  const boxes = darkBoxes(page);
  const left = Math.min(...boxes.map((box) => box.left));
  return {
    left,
    top: Math.max(...boxes.map((box) => box.top)),
    side: Math.max(...boxes.map((box) => box.right)) - left,
  };
}

/** Reads the square code of a page from its filled rectangles, with an independent decoder. */
export function readSquare(page: ReadPage): { readonly text: string; readonly module: number } {
  const boxes = darkBoxes(page);
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
