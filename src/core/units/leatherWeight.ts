import { formatFraction } from './fraction.ts';
import { MM_PER_INCH, type Mm, mm } from './mm.ts';
import { ROUNDING, type Rounding, roundToSteps } from './rounding.ts';

/** Thickness of one ounce of leather weight, in mm: 1/64 in (ASTM D1814, 1.2, which adds the conversion as 0.396 mm). */
export const MM_PER_OUNCE = MM_PER_INCH / 64;

/** Finest leather weight printed, in parts of an ounce; leather is sold by the half or whole ounce (common practice, no source). */
const OUNCE_PARTS = 4;

export const mmFromOunces = (ounces: number): Mm => mm(ounces * MM_PER_OUNCE);

export const ouncesFromMm = (thickness: Mm): number => thickness / MM_PER_OUNCE;

/** Prints a thickness as a leather weight in quarter ounces: `4 oz`, `4 1/2 oz`; rounded up unless told otherwise. */
export function formatLeatherWeight(thickness: Mm, round: Rounding = ROUNDING.thickness): string {
  return `${formatFraction(roundToSteps(thickness, MM_PER_OUNCE / OUNCE_PARTS, round), OUNCE_PARTS)} oz`;
}
