/** Steps after which the bracket is surely down to the spacing of floating-point numbers. */
const MOST_STEPS = 100;

/**
 * Finds where a continuous function that does not decrease reaches a level.
 *
 * Chandrupatla's method (1997, Advances in Engineering Software 28, 145): inverse quadratic interpolation through the last
 * three places where they allow it, else the middle of the bracket. The root stays bracketed and no kink stalls it; a smooth
 * function takes about ten steps.
 *
 * @param f function on [low, high], not decreasing
 * @param level value sought; f(low) <= level <= f(high) for an exact answer, else the nearer end is returned
 * @returns the argument, to within 1e-13 of the interval
 */
export function findLevel(f: (x: number) => number, level: number, low: number, high: number): number {
  // The newest place, the one across the root from it, and the one before it.
  let [a, b, c] = [low, high, low];
  let [fa, fb] = [f(a) - level, f(b) - level];
  if (fa >= 0) return a;
  if (fb <= 0) return b;
  let fc = fa;
  const enough = 1e-13 * (high - low);
  let share = 0.5;
  for (let step = 1; step <= MOST_STEPS && Math.abs(b - a) > enough; step++) {
    const least = enough / 2 / Math.abs(b - a);
    const x = a + Math.max(least, Math.min(1 - least, share)) * (b - a);
    const fx = f(x) - level;
    if (fx === 0) return x;
    if (fx < 0 === fa < 0) [c, fc] = [a, fa];
    else [c, fc, b, fb] = [b, fb, a, fa];
    [a, fa] = [x, fx];
    const xi = (a - b) / (c - b);
    const phi = (fa - fb) / (fc - fb);
    share =
      phi ** 2 < xi && (1 - phi) ** 2 < 1 - xi
        ? (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb))
        : 0.5;
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}
