import { roundDown, roundUp } from '../../allowance/roundUp.ts';
import { TOLERANCE } from '../../math/tolerance.ts';
import { MM_PER_INCH } from '../../units/mm.ts';
import type { LengthUnit } from '../../units/parseLength.ts';

/** One edge of a cover: what its gap is over the weight range, and what is asked of it; mm. */
export interface EdgeGap {
  /** Smallest and largest gap over the weight range. */
  readonly least: number;
  readonly most: number;
  /** Ease wished at the thick end. */
  readonly ease: number;
  /** What the measures may take away. */
  readonly error: number;
  readonly loosest: number;
}

/**
 * The size at which every edge that shares it fits: as much ease as is wished, else what the measuring error asks for, else
 * none; never so much that a gap is over the loosest.
 * @param size as cut now, mm; two edges share it, so that a gap grows by half of what the size grows
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
  // A cover that is not too loose is never cut smaller.
  const least = most < size ? 0 : size;
  return sizes.find((each) => each >= least - TOLERANCE.length && each <= most + TOLERANCE.length) ?? null;
}

/** Steps to which an ease is rounded that a remedy asks for, mm: more of it in 0.5 mm or 1/32 in, less in 0.1 mm or 1/64 in. */
const EASE_STEPS = {
  mm: { more: 0.5, less: 0.1 },
  in: { more: MM_PER_INCH / 32, less: MM_PER_INCH / 64 },
} as const;

/**
 * The ease at which an edge fits whose size the tool decides: more where the measures may take it all away, less where the
 * gap is over the loosest.
 * @param step cut sizes are rounded up to this, mm: the gap may come out larger by half of it
 * @returns mm, or null where no ease does it
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
