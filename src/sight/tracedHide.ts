import { softened } from '../artwork/picture/softened.ts';
import { otsuThreshold } from '../artwork/picture/threshold.ts';
import { tracedOutlines } from '../artwork/picture/tracedOutlines.ts';
import { doubleArea, isSimplePolygon, MOST_DEFECTS, OUTLINE_LIMITS, thinnedLine, type Vec2 } from '../core/index.ts';
import { type LabPicture, labPicture } from './lab.ts';

/** A hide in a picture, as it is proposed: pixels of that picture. */
export interface TracedHide {
  /** Corners in order, the first not repeated. */
  readonly outline: readonly Vec2[];
  /** Holes and spots that differ from the leather round them, the largest first. */
  readonly defects: readonly (readonly Vec2[])[];
  /** Whether it keeps off the rim of the picture. If not, a part of it may be missing. */
  readonly whole: boolean;
}

interface ColourPicture {
  readonly width: number;
  readonly height: number;
  readonly rgba: ArrayLike<number>;
}

/** Longer side of the picture that is looked at, pixels. */
const SIDE = 1000;
/** Shadows change the lightness of the ground more than its hue, so that lightness counts for less. Assumption of this project. */
const LIGHTNESS = 0.7;
/** Greys for a difference of one in CIELAB. */
const GREYS = 4;
/** Least difference between hide and ground, CIELAB. Assumption. */
const LEAST_DIFFERENCE = 8;
/** Least part of the picture that a hide covers, and of the hide that a defect does. */
const LEAST_PART = { hide: 0.02, defect: 1 / 20_000 } as const;
/** Colours of the ground that are told apart. */
const GROUND_COLOURS = 4;
/** Least part of the rim of the picture that a colour of the ground has. Assumption. */
const LEAST_GROUND = 0.1;

/**
 * Proposes the outline of a hide by its colour. The ground's colours are those along the rim of the picture (k-means, Lloyd 1982);
 * what differs from all of them is parted from what does not (Otsu 1979), and the largest area of it is the hide. Places inside that
 * differ from the leather round them are proposed as defects.
 *
 * @param notLeather what is known not to be leather, as the pages of the measuring sheet
 * @returns null where nothing stands out
 */
export function tracedHide(picture: ColourPicture, notLeather: readonly (readonly Vec2[])[] = []): TracedHide | null {
  const factor = Math.max(1, Math.ceil(Math.max(picture.width, picture.height) / SIDE));
  const lab = labPicture(picture, factor);
  const { width, height } = lab;
  if (width < 16 || height < 16) return null;
  const pages = new Uint8Array(width * height);
  for (const page of notLeather)
    fill(
      pages,
      lab,
      page.map(([x, y]): Vec2 => [x / factor, y / factor]),
    );
  // Dark where it differs, as the tracer takes it.
  const values = differences(lab, groundColours(lab, pages)).map((value, i) => (pages[i] ? 255 : 255 - value));
  const soft = softened(softened({ width, height, values }));
  const threshold = otsuThreshold(soft.values);
  if (!standsOut(soft.values, threshold)) return null;
  const [line] = byArea(tracedOutlines(soft, threshold));
  if (line === undefined || areaOf(line) < LEAST_PART.hide * width * height) return null;
  const outline = fewCorners(line, OUTLINE_LIMITS.corners);
  if (outline === null) return null;
  const whole = line.every(([x, y]) => x > 1 && y > 1 && x < width - 1 && y < height - 1);
  const scaled = (points: readonly Vec2[]): Vec2[] => points.map(([x, y]) => [x * factor, y * factor]);
  return { outline: scaled(outline), defects: defectsIn(lab, line, pages).map(scaled), whole };
}

/** Colours of what is seen along the rim of the picture. */
function groundColours({ width, height, values }: LabPicture, pages: Uint8Array): number[][] {
  const deep = Math.max(2, Math.round(0.02 * Math.min(width, height)));
  const rim: number[][] = [];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const isRim = x < deep || y < deep || x >= width - deep || y >= height - deep;
      const i = y * width + x;
      if (isRim && !pages[i] && (x + y) % 3 === 0) rim.push([values[3 * i]!, values[3 * i + 1]!, values[3 * i + 2]!]);
    }
  rim.sort((a, b) => a[0]! - b[0]!);
  let centres = Array.from(
    { length: GROUND_COLOURS },
    (_, k) => rim[Math.floor(((k + 0.5) * rim.length) / GROUND_COLOURS)] ?? [0, 0, 0],
  );
  let sums: number[][] = [];
  for (let round = 0; round < 8; round++) {
    sums = centres.map(() => [0, 0, 0, 0]);
    for (const colour of rim) {
      const sum = sums[nearest(centres, colour[0]!, colour[1]!, colour[2]!)]!;
      for (let k = 0; k < 3; k++) sum[k]! += colour[k]!;
      sum[3]!++;
    }
    centres = centres.map((centre, c) =>
      sums[c]![3]! > 0 ? [0, 1, 2].map((k) => sums[c]![k]! / sums[c]![3]!) : centre,
    );
  }
  // A colour of little of the rim may be that of a hide which leaves the picture there.
  return centres.filter((_, c) => sums[c]![3]! >= LEAST_GROUND * rim.length);
}

function nearest(centres: readonly number[][], l: number, a: number, b: number): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let c = 0; c < centres.length; c++) {
    const off = squareOff(centres[c]!, l, a, b);
    if (off < least) [best, least] = [c, off];
  }
  return best;
}

const squareOff = ([p, q, r]: readonly number[], l: number, a: number, b: number): number =>
  (LIGHTNESS * (l - p!)) ** 2 + (a - q!) ** 2 + (b - r!) ** 2;

/** By how much each pixel differs from all of some colours, as greys. */
function differences({ values }: LabPicture, colours: readonly number[][]): Uint8Array {
  const off = new Uint8Array(values.length / 3);
  for (let i = 0; i < off.length; i++) {
    const [l, a, b] = [values[3 * i]!, values[3 * i + 1]!, values[3 * i + 2]!];
    const square = squareOff(colours[nearest(colours, l, a, b)]!, l, a, b);
    off[i] = Math.min(255, GREYS * Math.sqrt(square));
  }
  return off;
}

/** Whether what is below a threshold differs on the mean by enough from what is not. */
function standsOut(values: Uint8Array, threshold: number): boolean {
  let [dark, darkSum, sum] = [0, 0, 0];
  for (const value of values) {
    sum += value;
    if (value < threshold) {
      dark++;
      darkSum += value;
    }
  }
  const light = values.length - dark;
  return dark > 0 && light > 0 && (sum - darkSum) / light - darkSum / dark > GREYS * LEAST_DIFFERENCE;
}

/** Places inside that differ from the leather round them. */
function defectsIn(lab: LabPicture, outline: readonly Vec2[], pages: Uint8Array): Vec2[][] {
  const { width, height } = lab;
  const inside = new Uint8Array(width * height);
  fill(inside, lab, outline);
  for (let i = 0; i < inside.length; i++) if (pages[i]) inside[i] = 0;
  // Neither the rim of the hide nor that of a page is a defect.
  const within = meanWithin(inside, lab, inside, 3, 0, 1);
  const reach = Math.max(8, Math.round(0.04 * Math.max(width, height)));
  const means = [0, 1, 2].map((k) => meanWithin(lab.values, lab, inside, reach, k, 3));
  const off = new Uint8Array(width * height).fill(255);
  const sizes: number[] = [];
  for (let i = 0; i < off.length; i++) {
    if (!inside[i] || within.share[i]! < 1) continue;
    const [l, a, b] = [0, 1, 2].map((k) => lab.values[3 * i + k]! - means[k]!.mean[i]!) as [number, number, number];
    const size = Math.min(255, GREYS * Math.sqrt(squareOff([0, 0, 0], l, a, b)));
    off[i] = 255 - size;
    if (i % 7 === 0) sizes.push(size);
  }
  sizes.sort((a, b) => a - b);
  // Leather has a grain of its own: what is far beyond it stands out.
  const usual = sizes[sizes.length >> 1] ?? 0;
  const most = Math.max(GREYS * LEAST_DIFFERENCE, 5 * usual);
  if (most > 250) return [];
  return byArea(tracedOutlines(softened({ width, height, values: off }), Math.round(255 - most)))
    .filter((line) => areaOf(line) > Math.max(6, LEAST_PART.defect * areaOf(outline)))
    .slice(0, MOST_DEFECTS)
    .map((line) => fewCorners(line, 24))
    .filter((corners) => corners !== null);
}

/**
 * Mean of the values over the square round each pixel, of pixels that a mask has, and their share of the square; by sums over
 * rectangles (Crow 1984, Summed-area tables for texture mapping).
 */
function meanWithin(
  values: ArrayLike<number>,
  { width, height }: { readonly width: number; readonly height: number },
  mask: Uint8Array,
  reach: number,
  first: number,
  stride: number,
): { mean: Float32Array; share: Float32Array } {
  const across = width + 1;
  const [sums, counts] = [new Float64Array(across * (height + 1)), new Float64Array(across * (height + 1))];
  for (let y = 0; y < height; y++) {
    let [sum, count] = [0, 0];
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      if (mask[i]) {
        sum += values[stride * i + first]!;
        count++;
      }
      const at = (y + 1) * across + x + 1;
      sums[at] = sums[at - across]! + sum;
      counts[at] = counts[at - across]! + count;
    }
  }
  const [mean, share] = [new Float32Array(width * height), new Float32Array(width * height)];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const [left, right] = [Math.max(0, x - reach), Math.min(width, x + reach + 1)];
      const [top, bottom] = [Math.max(0, y - reach) * across, Math.min(height, y + reach + 1) * across];
      const over = (table: Float64Array): number =>
        table[bottom + right]! - table[bottom + left]! - table[top + right]! + table[top + left]!;
      const count = over(counts);
      mean[y * width + x] = count > 0 ? over(sums) / count : 0;
      share[y * width + x] = count / (2 * reach + 1) ** 2;
    }
  return { mean, share };
}

/** Sets the pixels whose centres lie within a polygon, row by row. */
function fill(mask: Uint8Array, { width, height }: LabPicture, polygon: readonly Vec2[]): void {
  for (let row = 0; row < height; row++) {
    const y = row + 0.5;
    const crossings = polygon
      .flatMap(([x1, y1], i) => {
        const [x2, y2] = polygon[(i + 1) % polygon.length]!;
        return y1 <= y !== y2 <= y ? [x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)] : [];
      })
      .sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossings.length; i += 2)
      mask.fill(
        1,
        row * width + Math.max(0, Math.min(width, Math.ceil(crossings[i]! - 0.5))),
        row * width + Math.max(0, Math.min(width, Math.ceil(crossings[i + 1]! - 0.5))),
      );
  }
}

const areaOf = (line: readonly Vec2[]): number => Math.abs(doubleArea(line)) / 2;

const byArea = (lines: readonly Vec2[][]): Vec2[][] =>
  lines
    .map((line) => ({ line, area: areaOf(line) }))
    .sort((a, b) => b.area - a.area)
    .map(({ line }) => line);

/** A closed line thinned to so many corners that do not cross, the first not repeated; null where that cannot be done. */
function fewCorners(line: readonly Vec2[], most: number): Vec2[] | null {
  for (let tolerance = 0.4; tolerance < 30; tolerance *= 1.5) {
    const corners = thinnedLine(line, tolerance).slice(0, -1);
    if (corners.length <= most && corners.length > 2 && isSimplePolygon(corners)) return corners;
  }
  return null;
}
