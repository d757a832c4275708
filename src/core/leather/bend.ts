import { type Mm, mm } from '../units/mm.ts';

/**
 * Length of leather used by one bend, on its neutral line: L = A (r + K t).
 * @param angle A, radians, 0 or more
 * @param insideRadius r, mm, 0 or more
 * @param thickness t, mm, over 0
 * @param neutral K, depth of the neutral line from the inside face over t; 2/pi makes a right-angled bend take up
 *   exactly one thickness at r = 0 (the trade's "one thickness a fold", common practice, no source)
 */
export function bendLength(angle: number, insideRadius: number, thickness: number, neutral: number): Mm {
  return mm(angle * (insideRadius + neutral * thickness));
}

/**
 * Stretch of the grain side at a bend: (1 - K) / (r/t + K), elementary bending about the neutral line.
 * @param insideRadius r, mm, 0 or more
 * @param thickness t, mm, over 0
 * @param neutral K
 * @returns strain, dimensionless; falls toward 0 as r grows
 */
export function outerStrain(insideRadius: number, thickness: number, neutral: number): number {
  return (1 - neutral) / (insideRadius / thickness + neutral);
}

/**
 * Least inside radius over thickness of a bend whose grain side stretches by no more than a limit: (1 - K) / limit - K, the
 * inverse of `outerStrain`.
 * @param limit over 0
 * @param neutral K
 * @returns 0 where even a sharp bend keeps the limit
 */
export function leastBendRatio(limit: number, neutral: number): number {
  return Math.max(0, (1 - neutral) / limit - neutral);
}
