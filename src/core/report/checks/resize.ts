import { roundDown, roundUp } from '../../allowance/roundUp.ts';
import { TOLERANCE } from '../../math/tolerance.ts';
import { MM_PER_INCH } from '../../units/mm.ts';
import type { LengthUnit } from '../../units/parseLength.ts';

/** One edge of a cover: its gap over the weight range, and its limits; mm. */
export interface EdgeGap {
  /** Smallest and largest gap over the weight range. */
  readonly least: number;
  readonly most: number;
  /** Ease wanted at the thick end. */
  readonly ease: number;
  /** Error of the gap from the measures. */
  readonly error: number;
  readonly loosest: number;
}

/**
 * The size at which every edge that shares it fits: with the wanted ease, else with the measuring error as ease, else
 * with none; never so much that a gap is over the loosest.
 * @param size as cut now, mm; two edges share it, so a gap grows by half as much
 * @param step cut sizes are multiples of this, mm; 0 for any size
 * @returns mm, or null where a size that closes in the thickest leather is too loose in the thinnest
 */
export function mendedSize(size: number, edges: readonly EdgeGap[], step: number): number | null {
  const shift = (wanted: (edge: EdgeGap) => number): number =>
    Math.max(...edges.map((edge) => wanted(edge) - edge.least));
  const most = size + 2 * Math.min(...edges.map(({ loosest, most: gap }) => loosest - gap));
  const sizes = [shift(({ ease, error }) => Math.max(ease, error)), shift(({ error }) => error), shift(() => 0)].map(
    (by) => roundUp(size + 2 * by, step),
  );
  // A cover that is not too loose is never made smaller.
  const least = most < size ? 0 : size;
  return sizes.find((each) => each >= least - TOLERANCE.length && each <= most + TOLERANCE.length) ?? null;
}

/** Steps to which a remedy rounds an ease, mm: a larger one to 0.5 or 1/32 in, a smaller one to 0.1 or 1/64 in. */
const EASE_STEPS = {
  mm: { more: 0.5, less: 0.1 },
  in: { more: MM_PER_INCH / 32, less: MM_PER_INCH / 64 },
} as const;

/**
 * The ease at which an edge fits whose size the tool decides: more where the measuring error is larger than the gap,
 * less where the gap is over the loosest.
 * @param step cut sizes are rounded up to this, mm: the gap may come out larger by half of it
 * @returns mm, or null where no ease is enough
 */
export function mendedEase(
  { least, most, ease, error, loosest }: EdgeGap,
  step: number,
  units: LengthUnit,
): number | null {
  const steps = EASE_STEPS[units];
  const largest = ease + loosest - most - step / 2;
  if (most > loosest + TOLERANCE.length) {
    const less = roundDown(largest, steps.less);
    return less >= 0 ? less : null;
  }
  const more = roundUp(Math.max(error, ease + Math.max(0, error - least)), steps.more);
  return more <= Math.max(largest, ease) + TOLERANCE.length ? more : null;
}
