function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

/**
 * Writes `steps` / `denominator` as a reduced mixed number: 136/16 is `8 1/2`, 6/16 is `3/8`, 0 is `0`, -24/16 is `−1 1/2`.
 *
 * `steps` is a whole number of either sign, `denominator` a whole number from 1.
 */
export function formatFraction(steps: number, denominator: number): string {
  const sign = steps < 0 ? '−' : '';
  const size = Math.abs(steps);
  const whole = Math.floor(size / denominator);
  const over = size % denominator;
  if (over === 0) return `${sign}${whole}`;
  const divisor = greatestCommonDivisor(over, denominator);
  const part = `${over / divisor}/${denominator / divisor}`;
  return whole === 0 ? `${sign}${part}` : `${sign}${whole} ${part}`;
}
