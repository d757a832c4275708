import type { Mm } from './mm.ts';

/** Which way a length is rounded to a printed step: up is toward the larger value, down toward the smaller. */
export type Rounding = 'up' | 'nearest' | 'down';

/**
 * A length this close to a step, in mm, lies on it. Sums of lengths below 10 m carry floating-point noise near 1e-11 mm,
 * and a nanometre is far below anything leather, paper or a ruler can show; so 8 1/2 in prints as 8 1/2 in, not 8 33/64.
 */
export const ROUNDING_NOISE_MM = 1e-6;

/**
 * Counts the steps of `step` mm (above 0) in `value`, rounded; nearest sends a half up.
 *
 * Up gives steps * step >= value - ROUNDING_NOISE_MM and down the mirror image. Throws RangeError unless `value` is finite.
 */
export function roundToSteps(value: Mm, step: number, round: Rounding): number {
  if (!Number.isFinite(value)) {
    throw new RangeError(`Got a length of ${value} mm; allowed: a finite number. Check the calculation that made it.`);
  }
  const exact = value / step;
  const nearest = Math.round(exact);
  const onStep = Math.abs(exact - nearest) * step <= ROUNDING_NOISE_MM;
  if (onStep || round === 'nearest') return nearest;
  return round === 'up' ? Math.ceil(exact) : Math.floor(exact);
}
