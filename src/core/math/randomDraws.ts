/** Draws evenly from [0, 1), the same series for the same seed. */
export type Draws = () => number;

/**
 * Seeded draws by mulberry32: a 32-bit counter stepped by 0x6d2b79f5 and mixed by two xor-shift-multiply rounds. Period
 * 2^32. Algorithm by Tommy Ettinger, public domain; written from memory. For trials, not for secrets.
 * @param seed a whole number; its lowest 32 bits count
 */
export function randomDraws(seed: number): Draws {
  let counter = seed | 0;
  return () => {
    counter = (counter + 0x6d2b79f5) | 0;
    let mixed = Math.imul(counter ^ (counter >>> 15), counter | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** One draw from the standard normal distribution: sqrt(-2 ln u) cos(2 pi v). Box and Muller 1958, Ann. Math. Stat. 29, 610. */
export function normalDraw(draws: Draws): number {
  const radius = Math.sqrt(-2 * Math.log(1 - draws()));
  return radius * Math.cos(2 * Math.PI * draws());
}
