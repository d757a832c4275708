/** Steps after which the bracket is surely down to the spacing of floating-point numbers. */
const MOST_STEPS = 100;

/**
 * Finds where a continuous function that does not decrease reaches a level.
 *
 * False position with the Illinois weighting (Dowell and Jarratt 1971, BIT 11, 168), which keeps the root bracketed and
 * converges faster than linearly; every third step halves the bracket, so that kinks cannot stall it.
 *
 * @param f function on [low, high], not decreasing
 * @param level value sought; f(low) <= level <= f(high) for an exact answer, else the nearer end is returned
 * @returns the argument, to within 1e-13 of the interval
 */
export function findLevel(f: (x: number) => number, level: number, low: number, high: number): number {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a) - level, f(b) - level];
  if (fa >= 0) return a;
  if (fb <= 0) return b;
  const enough = 1e-13 * (high - low);
  for (let step = 1; step <= MOST_STEPS && b - a > enough; step++) {
    const guess = step % 3 === 0 ? (a + b) / 2 : a - (fa * (b - a)) / (fb - fa);
    const x = guess > a && guess < b ? guess : (a + b) / 2;
    const fx = f(x) - level;
    if (fx === 0) return x;
    if (fx < 0) {
      a = x;
      fa = fx;
      fb /= 2;
    } else {
      b = x;
      fb = fx;
      fa /= 2;
    }
  }
  return (a + b) / 2;
}
