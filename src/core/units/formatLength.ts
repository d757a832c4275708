import { formatFraction } from './fraction.ts';
import { MM_PER_INCH, type Mm } from './mm.ts';
import type { LengthUnit } from './parseLength.ts';
import { type Rounding, roundToSteps } from './rounding.ts';
import { signed } from './signed.ts';

/** How lengths are printed; one record serves both units, so a switch of unit keeps the other's choice. */
export interface LengthFormat {
  readonly unit: LengthUnit;
  /** Finest inch fraction, used with `in`. */
  readonly denominator: 16 | 32 | 64;
  /** Digits after the point, 0 to 4, used with `mm`; all of them are printed, so the precision shows. */
  readonly decimals: number;
  readonly round: Rounding;
}

/**
 * Prints a length as `8 1/2 in` (reduced fraction) or `215.9 mm`, rounded the stated way (see `roundToSteps`).
 *
 * `value` may be negative, as an overrun is. Throws RangeError for a value that is not finite.
 */
export function formatLength(value: Mm, { unit, denominator, decimals, round }: LengthFormat): string {
  if (unit === 'in') {
    return `${formatFraction(roundToSteps(value, MM_PER_INCH / denominator, round), denominator)} in`;
  }
  const perMm = 10 ** decimals;
  return `${signed((roundToSteps(value, 1 / perMm, round) / perMm).toFixed(decimals))} mm`;
}
