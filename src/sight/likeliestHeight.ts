/** Heights of books lying, mm, and by what factor the one that is tried next is higher. */
const LOWEST = 3;
const HIGHEST = 100;
const FACTOR = 1.08;
/** Trials about the best of them. */
const FINER = 4;

/**
 * The height at which most fits: every one of a series is tried, and then those about the best. Null where it is the lowest, for what is thinner than
 * that fits there too.
 */
export function likeliestHeight(fitAt: (height: number) => number): number | null {
  let best = { height: LOWEST, fit: Number.NEGATIVE_INFINITY };
  const attempt = (height: number): number => {
    const fit = fitAt(height);
    if (fit > best.fit) best = { height, fit };
    return fit;
  };
  for (let height = LOWEST; height < HIGHEST; height *= FACTOR) attempt(height);
  let factor = FACTOR;
  for (let i = 0; i < FINER; i++) {
    const { height } = best;
    factor = Math.sqrt(factor);
    attempt(height * factor);
    attempt(height / factor);
  }
  return best.height < LOWEST * FACTOR * FACTOR ? null : best.height;
}
