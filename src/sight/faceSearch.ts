import { heading, type Vec2 } from '../core/index.ts';
import type { GreyPicture } from './greyPicture.ts';
import { type LevelGrid, levelPicture, type Shows } from './levelPicture.ts';

/** A photograph brought down to about a pixel for each step of the search. */
export interface SearchedPicture {
  readonly picture: GreyPicture;
  readonly shows: Shows;
  /** Marks that are in sight on the sheet, seen as on the plane of the face: the face covers none of them. */
  readonly marks: readonly Vec2[];
}

/** A rectangle that edges of several photographs agree on. */
export interface FaceGuess {
  readonly middle: Vec2;
  /** Direction of its first side, radians counterclockwise from x. */
  readonly angle: number;
  readonly width: number;
  readonly height: number;
  /** Share of its sides that is edge, 0 to 1, less what goes on beyond its corners. */
  readonly score: number;
}

/** Millimetres from place to place. */
export const SEARCH_STEP = 2;
const DEGREE = Math.PI / 180;
/** Shorter sides, mm, are not a book's. */
const LEAST_SIDE = 40;
const MOST_ASPECT = 3;
const MOST_GUESSES = 20;
/** Lines kept for each direction. */
const MOST_LINES = 26;
/** Share of a side that must be edge. */
const LEAST_SHARE = 0.25;
/** Places along an edge that are taken together, and beyond a corner that should be bare, each of 2 mm. */
const TOGETHER = 5;
const BEYOND = 6;
/** Radius round the middle of a mark that is left out, mm. */
const MARK_ROOM = 15;

/**
 * Rectangles on a plane over the sheet on which edges of the photographs agree. What stands on the plane is seen at one place from
 * everywhere; edges of the sheet, of shadows and of the book's lower rim lie elsewhere in each photograph.
 *
 * @returns best first
 */
export function faceGuesses(
  pictures: readonly SearchedPicture[],
  { low, high }: { readonly low: Vec2; readonly high: Vec2 },
  z: number,
): FaceGuess[] {
  const base: LevelGrid = {
    left: low[0],
    low: low[1],
    step: SEARCH_STEP,
    columns: Math.ceil((high[0] - low[0]) / SEARCH_STEP) + 1,
    rows: Math.ceil((high[1] - low[1]) / SEARCH_STEP) + 1,
  };
  const planes = pictures.map(({ picture, shows, marks }) => {
    const grid = levelPicture(picture, shows, base, z);
    for (const mark of marks) blank(grid, base, mark);
    return grid;
  });
  const marks = pictures.flatMap((each) => each.marks);
  const guesses: FaceGuess[] = [];
  for (let degree = 0; degree < 90; degree++) {
    const turned = turnedGrid(base, degree * DEGREE);
    const views = planes.map((plane) => resampled(plane, base, turned));
    const ag = agreed(views, turned);
    const own = rectangles(ag, turned, marks);
    guesses.push(...own);
  }

  return distinct(guesses);
}

function blank(grid: Float32Array, { left, low, step, columns, rows }: LevelGrid, [x, y]: Vec2): void {
  const reach = MARK_ROOM / step;
  const [a, b] = [(x - left) / step, (y - low) / step];
  for (let row = Math.max(0, Math.ceil(b - reach)); row <= Math.min(rows - 1, b + reach); row++)
    for (let column = Math.max(0, Math.ceil(a - reach)); column <= Math.min(columns - 1, a + reach); column++)
      if ((row - b) ** 2 + (column - a) ** 2 <= reach * reach) grid[row * columns + column] = Number.NaN;
}

/** A grid turned about the middle of another, which it covers. */
interface TurnedGrid {
  readonly middle: Vec2;
  readonly angle: number;
  readonly columns: number;
  readonly rows: number;
}

function turnedGrid({ left, low, step, columns, rows }: LevelGrid, angle: number): TurnedGrid {
  const [c, s] = heading(angle).map(Math.abs) as [number, number];
  return {
    middle: [left + (step * (columns - 1)) / 2, low + (step * (rows - 1)) / 2],
    angle,
    columns: Math.ceil(c * columns + s * rows),
    rows: Math.ceil(s * columns + c * rows),
  };
}

function resampled(plane: Float32Array, base: LevelGrid, { angle, columns, rows }: TurnedGrid): Float32Array {
  const [c, s] = heading(angle);
  const [midX, midY] = [(base.columns - 1) / 2, (base.rows - 1) / 2];
  const out = new Float32Array(columns * rows);
  for (let row = 0, i = 0; row < rows; row++) {
    const b = row - (rows - 1) / 2;
    for (let column = 0; column < columns; column++, i++) {
      const a = column - (columns - 1) / 2;
      const x = midX + c * a - s * b;
      const y = midY + s * a + c * b;
      const [p, q] = [Math.floor(x), Math.floor(y)];
      if (!(p >= 0 && q >= 0 && p + 1 < base.columns && q + 1 < base.rows)) {
        out[i] = Number.NaN;
        continue;
      }
      const k = q * base.columns + p;
      const [u, v] = [x - p, y - q];
      out[i] =
        (plane[k]! * (1 - u) + plane[k + 1]! * u) * (1 - v) +
        (plane[k + base.columns]! * (1 - u) + plane[k + base.columns + 1]! * u) * v;
    }
  }
  return out;
}

/** How far edges along the columns and along the rows are agreed on, 0 to 1, each with its sums along the edge. */
interface Agreed {
  readonly upright: Float32Array;
  readonly level: Float32Array;
}

function agreed(views: readonly Float32Array[], { columns, rows }: TurnedGrid): Agreed {
  const both = [1, columns].map((across) => {
    const strengths = views.map((view) => strengthOf(view, columns, rows, across));
    return consensus(strengths);
  });
  return { upright: both[0]!, level: both[1]! };
}

/** Strength of edges with their normal along `across` (1: edges along columns), taken together over some places along the edge. */
function strengthOf(view: Float32Array, columns: number, rows: number, across: number): Float32Array {
  const along = across === 1 ? columns : 1;
  const [lines, places] = across === 1 ? [columns, rows] : [rows, columns];
  const strength = new Float32Array(view.length);
  const half = TOGETHER >> 1;
  const steps = new Float32Array(places);
  for (let line = 1; line + 1 < lines; line++) {
    for (let k = 0; k < places; k++) {
      const i = line * across + k * along;
      const step = view[i + across]! - view[i - across]!;
      steps[k] = Number.isNaN(step) ? 0 : step;
    }
    let sum = 0;
    for (let k = 0; k < places + half; k++) {
      if (k < places) sum += steps[k]!;
      if (k >= TOGETHER) sum -= steps[k - TOGETHER]!;
      if (k >= half) strength[line * across + (k - half) * along] = Math.abs(sum) / TOGETHER;
    }
  }
  return strength;
}

/** Two of three must agree, within a step. */
function consensus(strengths: readonly Float32Array[]): Float32Array {
  const counted = Math.ceil((2 * strengths.length) / 3);
  const shares = strengths.map((strength) => {
    const usual = 4 * medianOf(strength) + 6;
    return strength.map((size) => size / (size + usual));
  });
  const [a, b, c] = shares;
  if (b === undefined) return a!;
  if (c === undefined) return a!.map((value, i) => Math.min(value, b[i]!));
  if (shares.length === 3)
    return a!.map((value, i) => {
      const [p, q] = [b[i]!, c[i]!];
      return Math.max(Math.min(value, p), Math.min(Math.max(value, p), q));
    });
  const own = new Float64Array(shares.length);
  return a!.map((_, i) => {
    for (let k = 0; k < own.length; k++) own[k] = shares[k]![i]!;
    return own.sort()[own.length - counted]!;
  });
}

function medianOf(list: Float32Array): number {
  const some: number[] = [];
  for (let i = 0; i < list.length; i += 37) if (list[i]! > 0) some.push(list[i]!);
  return some.sort((a, b) => a - b)[some.length >> 1] ?? 0;
}

function rectangles({ upright, level }: Agreed, turned: TurnedGrid, marks: readonly Vec2[]): FaceGuess[] {
  const { columns, rows, angle, middle } = turned;
  const [c, s] = heading(angle);
  const xs = lines(upright, columns, rows, 1);
  const ys = lines(level, rows, columns, columns);
  const least = LEAST_SIDE / SEARCH_STEP;
  // Marks in the axes of this grid.
  const own = marks.map(([x, y]): Vec2 => {
    const [a, b] = [(x - middle[0]) / SEARCH_STEP, (y - middle[1]) / SEARCH_STEP];
    return [c * a + s * b + (columns - 1) / 2, c * b - s * a + (rows - 1) / 2];
  });
  const found: FaceGuess[] = [];
  for (const left of xs)
    for (const right of xs) {
      const width = right.at - left.at;
      if (width < least) continue;
      const between = own.filter(([x]) => x > left.at && x < right.at);
      for (const low of ys)
        for (const high of ys) {
          const height = high.at - low.at;
          if (height < least || width > MOST_ASPECT * height || height > MOST_ASPECT * width) continue;
          const first = share(left.sums, low.at, high.at);
          if (first < LEAST_SHARE) continue;
          const second = share(right.sums, low.at, high.at);
          if (second < LEAST_SHARE) continue;
          const third = share(low.sums, left.at, right.at);
          if (third < LEAST_SHARE) continue;
          const fourth = share(high.sums, left.at, right.at);
          if (fourth < LEAST_SHARE) continue;
          const over =
            beyond(left.sums, low.at, high.at) +
            beyond(right.sums, low.at, high.at) +
            beyond(low.sums, left.at, right.at) +
            beyond(high.sums, left.at, right.at);
          if (between.some(([, y]) => y > low.at && y < high.at)) continue;
          const mean = (first + second + third + fourth) / 4;
          const weakest = Math.min(first, second, third, fourth);
          const [a, b] = [
            ((left.at + right.at - columns + 1) / 2) * SEARCH_STEP,
            ((low.at + high.at - rows + 1) / 2) * SEARCH_STEP,
          ];
          found.push({
            middle: [middle[0] + c * a - s * b, middle[1] + s * a + c * b],
            angle,
            width: width * SEARCH_STEP,
            height: height * SEARCH_STEP,
            score: ((mean + weakest) / 2 - over / 24 - 0.2) * Math.sqrt(width + height),
          });
        }
    }
  return found.sort((p, q) => q.score - p.score).slice(0, MOST_GUESSES);
}

interface Line {
  readonly at: number;
  /** Sums of the agreement along it, from its first place. */
  readonly sums: Float32Array;
}

/** Lines with the most agreement along them, none beside another. */
function lines(map: Float32Array, count: number, places: number, across: number): Line[] {
  const along = across === 1 ? count : 1;
  const totals = new Float32Array(count);
  for (let line = 0; line < count; line++)
    for (let k = 0; k < places; k++) {
      const value = map[line * across + k * along]!;
      totals[line]! += value * value;
    }
  const peaks: number[] = [];
  for (let line = 1; line + 1 < count; line++)
    if (totals[line]! >= totals[line - 1]! && totals[line]! > totals[line + 1]!) peaks.push(line);
  return peaks
    .sort((a, b) => totals[b]! - totals[a]!)
    .slice(0, MOST_LINES)
    .map((at) => {
      const sums = new Float32Array(places + 1);
      for (let k = 0; k < places; k++) {
        // Of this line and those beside it the best, for a side may lie between.
        let best = 0;
        for (let line = at - 1; line <= at + 1; line++) best = Math.max(best, map[line * across + k * along] ?? 0);
        sums[k + 1] = sums[k]! + best;
      }
      return { at, sums };
    });
}

/** Mean agreement between two places of a line; what is near the corners does not count. */
function share(sums: Float32Array, from: number, to: number): number {
  const [a, b] = [from + 2, to - 2];
  return (sums[b]! - sums[a]!) / (b - a);
}

/** Mean agreement just beyond both ends, added. */
function beyond(sums: Float32Array, from: number, to: number): number {
  const [a, b] = [Math.max(0, from - 1 - BEYOND), Math.max(0, from - 1)];
  const last = sums.length - 1;
  const [p, q] = [Math.min(last, to + 2), Math.min(last, to + 2 + BEYOND)];
  return (b > a ? (sums[b]! - sums[a]!) / (b - a) : 0) + (q > p ? (sums[q]! - sums[p]!) / (q - p) : 0);
}

/** Best first, without those that are nearly the same as a better one. */
function distinct(guesses: FaceGuess[]): FaceGuess[] {
  const kept: FaceGuess[] = [];
  for (const guess of guesses.sort((a, b) => b.score - a.score)) {
    const isKnown = kept.some(
      ({ middle, angle, width, height }) =>
        Math.abs(angle - guess.angle) < 2.5 * DEGREE &&
        Math.hypot(middle[0] - guess.middle[0], middle[1] - guess.middle[1]) < 3 &&
        Math.abs(width - guess.width) + Math.abs(height - guess.height) < 6,
    );
    if (!isKnown) kept.push(guess);
    if (kept.length >= MOST_GUESSES) break;
  }
  return kept;
}
