import { homographyBetween, MARK_SIDE, type MarkedPaper, mapped, markedPage, type Vec2 } from '../../src/core/index.ts';
import type { GreyPicture } from '../../src/sight/greyPicture.ts';
import { MARK_CELLS, markCode } from '../../src/sight/markDictionary.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';

/** Light of a place of a plane, 0 to 1; null where it shows what lies beneath. */
export type Shade = (place: Vec2) => number | null;

interface Drawing {
  readonly width: number;
  readonly height: number;
  /** From a pixel to the plane. */
  readonly place: (pixel: Vec2) => Vec2;
  readonly shade: (place: Vec2) => number;
  /** Standard deviation of a normal blur, pixels. */
  readonly blur?: number;
  /** Standard deviation of the noise, greys. */
  readonly noise?: number;
  readonly seed?: number;
  /** Samples along a pixel. */
  readonly samples?: number;
}

/** Draws a plane: light is gathered over each pixel, blurred, and kept by sRGB's curve (IEC 61966-2-1), then noise comes on. */
export function drawnPicture(drawing: Drawing): GreyPicture {
  const { width, height, place, shade, blur = 0, noise = 0, seed = 1, samples = 4 } = drawing;
  const light = new Float32Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      let sum = 0;
      for (let i = 0; i < samples; i++)
        for (let k = 0; k < samples; k++) sum += shade(place([x + (i + 0.5) / samples, y + (k + 0.5) / samples]));
      light[y * width + x] = sum / samples ** 2;
    }
  const soft = blur > 0 ? blurred(light, width, height, blur) : light;
  const random = normalDraws(seed);
  const values = Uint8Array.from(soft, (each) => {
    const grey = each <= 0.0031308 ? 12.92 * each : 1.055 * each ** (1 / 2.4) - 0.055;
    return Math.max(0, Math.min(255, Math.round(255 * grey + noise * random())));
  });
  return { width, height, values };
}

function blurred(light: Float32Array, width: number, height: number, sigma: number): Float32Array {
  const reach = Math.ceil(3.5 * sigma);
  const kernel = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-((i - reach) ** 2) / (2 * sigma * sigma)));
  const total = kernel.reduce((sum, each) => sum + each, 0);
  const along = (source: Float32Array, step: number, count: number, at: (i: number) => number): Float32Array =>
    source.map((_, i) => {
      let sum = 0;
      for (let k = -reach; k <= reach; k++) {
        const there = Math.max(0, Math.min(count - 1, at(i) + k));
        sum += nth(kernel, k + reach) * defined(source[i + (there - at(i)) * step]);
      }
      return sum / total;
    });
  const rows = along(light, 1, width, (i) => i % width);
  return along(rows, width, height, (i) => Math.floor(i / width));
}

/** Normal draws by Marsaglia's polar method from a linear congruential generator (Numerical Recipes, 7.1). */
export function normalDraws(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (Math.imul(1664525, state) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  return () => {
    for (;;) {
      const [a, b] = [2 * uniform() - 1, 2 * uniform() - 1];
      const s = a * a + b * b;
      if (s > 0 && s < 1) return a * Math.sqrt((-2 * Math.log(s)) / s);
    }
  };
}

/** A page of a measuring sheet, places in mm from its middle; null beside it. */
export function pageShade(paper: MarkedPaper, page: number, hidden: (id: number) => boolean = () => false): Shade {
  const { width, height, marks } = markedPage(paper, page);
  const seen = marks.filter(({ id }) => !hidden(id));
  // By squares of the page, so that a place looks at few marks.
  const [square, across] = [MARK_SIDE / 2, Math.ceil((2 * width) / MARK_SIDE)];
  const at = ([x, y]: Vec2): number =>
    Math.floor((y + height / 2) / square) * across + Math.floor((x + width / 2) / square);
  const near = new Map<number, typeof seen>();
  for (const mark of seen)
    for (let i = 0; i <= 2; i++)
      for (let k = 0; k <= 2; k++) {
        const [x, y] = mark.corners[3];
        const key = at([x + i * square, y + k * square]);
        near.set(key, [...(near.get(key) ?? []), mark]);
      }
  return ([x, y]) => {
    if (Math.abs(x) > width / 2 || Math.abs(y) > height / 2) return null;
    const mark = near.get(at([x, y]))?.find(({ corners: [[left, top]] }) => {
      const [right, down] = [x - left, top - y];
      return right >= 0 && down >= 0 && right < MARK_SIDE && down < MARK_SIDE;
    });
    if (mark === undefined) return 0.85;
    const [[left, top]] = mark.corners;
    const column = Math.floor(((x - left) / MARK_SIDE) * MARK_CELLS);
    const row = Math.floor(((top - y) / MARK_SIDE) * MARK_CELLS);
    const inner = MARK_CELLS - 2;
    const isInside = column > 0 && row > 0 && column <= inner && row <= inner;
    return isInside && markCode(mark.id)[(row - 1) * inner + column - 1] === '1' ? 0.85 : 0.03;
  };
}

/** Maps between an A4 page and a picture that shows its corners (clockwise from the upper left) at `corners`. */
export function pageMaps(corners: readonly Vec2[], { width, height }: { width: number; height: number }) {
  const own: Vec2[] = [
    [-width / 2, height / 2],
    [width / 2, height / 2],
    [width / 2, -height / 2],
    [-width / 2, -height / 2],
  ];
  const to = defined(homographyBetween(own, corners));
  const back = defined(homographyBetween(corners, own));
  return { pixel: (place: Vec2) => mapped(to, place), place: (pixel: Vec2) => mapped(back, pixel) };
}
