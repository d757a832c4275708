/**
 * How near two numbers count as equal. Sums of lengths below 10 m carry floating-point noise near 1e-11 mm, quotients and
 * angles near 1e-15; every value here lies well above that noise and well below what can be measured or cut.
 */
export const TOLERANCE = Object.freeze({
  /** Lengths, mm. */
  length: 1e-9,
  /** Quotients that are rounded to a whole number, and shares of a whole. */
  ratio: 1e-9,
  /** Angles, radians. */
  angle: 1e-9,
});
