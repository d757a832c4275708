import aruco from 'js-aruco2';
import cv from 'js-aruco2/src/cv.js';
import type { Vec2 } from '../core/index.ts';
import type { GreyPicture } from './greyPicture.ts';
import { DICTIONARY, MOST_MISREAD } from './markDictionary.ts';

/** A pixel is dark where it is so many greys below the mean of the pixels round it. */
const DARKER = 7;
/** Side of the square of those pixels. */
const ROUND = 5;
/** Side of the square, pixels, in which a mark's cells are read. */
const READ = 49;
/** Shortest side of a mark, pixels. */
const SHORTEST = 10;

/** Outlines of four corners that are read at most: six pages have 144 marks, each with an inner and an outer one. */
const MOST_QUADS = 800;

export interface FoundMark {
  readonly id: number;
  /** Clockwise from the upper left of the mark as printed. */
  readonly corners: readonly Vec2[];
}

/**
 * Marks of the dictionary in a picture, corners to about a pixel: outlines of dark areas that have four corners are read as marks
 * (js-aruco2, after Garrido-Jurado et al. 2014, Automatic generation and detection of highly reliable fiducial markers under
 * occlusion). The library's steps are called one by one, for its own first ones take most of the time.
 */
export function foundMarks(picture: GreyPicture): FoundMark[] {
  const { width, height, values } = picture;
  const detector = new aruco.AR.Detector({ dictionaryName: DICTIONARY, maxHammingDistance: MOST_MISREAD + 1 });
  const contours = cv.CV.findContours(
    { width, height, data: darkPixels(picture) },
    new Int32Array((width + 2) * (height + 2)),
  );
  const quads = detector.clockwiseCorners(detector.findCandidates(contours, 4 * SHORTEST, 0.05, SHORTEST));
  // A chequered cloth has thousands, all smaller than a mark that can be read.
  const largest = [...quads].sort((a, b) => diagonal(b) - diagonal(a)).slice(0, MOST_QUADS);
  return detector
    .findMarkers({ width, height, data: values }, detector.notTooNear(largest, SHORTEST), READ)
    .map(({ id, corners }) => ({ id, corners: corners.map(({ x, y }): Vec2 => [x + 0.5, y + 0.5]) }));
}

const diagonal = ([a, , c]: readonly { readonly x: number; readonly y: number }[]): number =>
  Math.hypot(c!.x - a!.x, c!.y - a!.y);

/** 1 for each pixel that is darker than those round it; at the rim of the picture none is. */
function darkPixels({ width, height, values }: GreyPicture): Uint8Array {
  const dark = new Uint8Array(values.length);
  const reach = ROUND >> 1;
  // Sums over the columns of the square, moved down row by row.
  const columns = new Int32Array(width);
  for (let i = 0; i < Math.min(ROUND, height) * width; i++) columns[i % width]! += values[i]!;
  for (let y = reach; y < height - reach; y++) {
    let sum = 0;
    for (let x = 0; x < ROUND - 1; x++) sum += columns[x] ?? 0;
    for (let x = reach; x < width - reach; x++) {
      sum += columns[x + reach]!;
      const i = y * width + x;
      if (sum - ROUND * ROUND * values[i]! >= ROUND * ROUND * DARKER) dark[i] = 1;
      sum -= columns[x - reach]!;
    }
    if (y + reach + 1 >= height) break;
    const [above, below] = [(y - reach) * width, (y + reach + 1) * width];
    for (let x = 0; x < width; x++) columns[x]! += values[below + x]! - values[above + x]!;
  }
  return dark;
}
