import { TOLERANCE } from '../math/tolerance.ts';
import { cornerBend } from './endRow.ts';
import { placeOfHole } from './evenPitch.ts';
import type { PatternSource, Seam, SeamRow } from './seam.ts';

/** A stretch of holes along a side that are made alike. */
export interface Strokes {
  /** Numbers of its first and last hole along the side. */
  readonly from: number;
  readonly to: number;
  /** Of the iron that is taken; 1 where each hole is made by itself, on its mark. */
  readonly teeth: number;
  readonly times: number;
  /** Holes that the last stroke goes into again beyond the one that every stroke shares with the stroke before. */
  readonly again: number;
}

/**
 * The strokes of the iron along one side, in their order from its first hole. The first tooth of a stroke stands in the last hole of
 * the stroke before (common practice, no source); the last stroke goes back as far as it must. Holes round a corner and
 * between uneven strides are made one by one. The hole of the far corner of a closed seam belongs to both its sides.
 * @param among numbers of the first and last hole that a piece has of the side
 * @returns none without an iron
 */
export function strokesAlong(
  source: PatternSource,
  seam: Seam,
  row: SeamRow,
  [first, last]: readonly [number, number] = [0, row.intervals],
): Strokes[] {
  const { iron } = source.job.seam;
  if (iron === null) return [];
  const { uneven, length } = row;
  const bend = seam.isClosed ? cornerBend(source) / 2 : 0;
  const isStraight = (k: number): boolean => {
    const place = placeOfHole(row, k);
    return place >= bend - TOLERANCE.length && place <= length - bend + TOLERANCE.length;
  };
  const numbers = Array.from({ length: last - first + 1 }, (_, k) => first + k);
  const straight = numbers.filter(isStraight);
  const [low, high] = [straight[0], straight.at(-1)];
  const isByTooth = iron.teeth.every((count) => count === 1);
  if (low === undefined || high === undefined || isByTooth) return [single(first, last)];
  const [end, start] = uneven === undefined ? [high, high + 1] : [uneven.first, uneven.first + uneven.count];
  return [
    single(first, low - 1),
    ...stretch(low, Math.min(high, end), iron.teeth),
    single(Math.max(low, end + 1), Math.min(high, start - 1)),
    ...(uneven === undefined ? [] : stretch(Math.max(low, start), high, iron.teeth)),
    single(high + 1, last),
  ].filter(({ times }) => times > 0);
}

const single = (from: number, to: number): Strokes => ({ from, to, teeth: 1, times: to - from + 1, again: 0 });

/** Whole strides from one hole to another, by the iron with the most teeth that goes in between. */
function stretch(from: number, to: number, owned: readonly number[]): Strokes[] {
  const strides = to - from;
  const teeth = Math.max(1, ...owned.filter((count) => count - 1 <= strides));
  if (strides < 1 || teeth === 1) return [single(from, to)];
  const times = Math.ceil(strides / (teeth - 1));
  return [{ from, to, teeth, times, again: times * (teeth - 1) - strides }];
}
