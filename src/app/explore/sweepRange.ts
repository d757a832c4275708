import type { ExploreField, SweepRange } from '../../core/index.ts';

/** Most values of a curve, and the fewest: a short range is divided finer than the maker's step. */
const MOST = 120;
const FEWEST = 40;

/**
 * The range of a field to draw: the present value with the field's span times the zoom to both sides, within what a job
 * allows. Every value lies on the maker's steps, or on halves, fifths or tenths of them; in inches on halves, quarters
 * or eighths.
 */
export function sweepRange({ present, span, step, note }: ExploreField, zoom: number): SweepRange {
  const wide = span * zoom;
  const bounded = [Math.max(note.min, present - wide), Math.min(note.max, present + wide)] as const;
  const steps = (bounded[1] - bounded[0]) / step;
  const parts = isDecimal(step) ? [1, 2, 5, 10] : [1, 2, 4, 8];
  const part = parts.find((n) => n * steps >= FEWEST) ?? parts.at(-1)!;
  const every = steps > MOST ? step * Math.ceil(steps / MOST) : step / part;
  // Inside the bounds of the job, so that no end is refused for a rounding.
  const first = Math.ceil(bounded[0] / every - 1e-9);
  const last = Math.max(first + 1, Math.floor(bounded[1] / every + 1e-9));
  return { from: tidy(first * every), to: tidy(last * every), count: last - first + 1 };
}

const isDecimal = (step: number): boolean => Number.isInteger(tidy(step * 100));

const tidy = (value: number): number => Number(value.toPrecision(12));
