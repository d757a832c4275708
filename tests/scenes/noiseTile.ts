import { randomDraws } from '../../src/core/math/randomDraws.ts';

const SIDE = 512;

/** Smooth noise from -1 to 1 that repeats: of several sizes of grain, each half as strong as the larger one before it. */
export interface NoiseTile {
  /** Places are in the smallest grains. */
  readonly at: (x: number, y: number) => number;
}

export function noiseTile(seed: number): NoiseTile {
  const draws = randomDraws(seed);
  const values = new Float32Array(SIDE * SIDE);
  let most = 0;
  for (let grain = 64, weight = 1; grain >= 1; grain /= 2, weight /= 1.6) {
    const n = SIDE / grain;
    const knots = Float32Array.from({ length: n * n }, () => 2 * draws() - 1);
    most += weight * weight;
    for (let y = 0; y < SIDE; y++) {
      const [row, down] = [Math.floor(y / grain), (y % grain) / grain];
      const under = (row + 1) % n;
      for (let x = 0; x < SIDE; x++) {
        const [column, right] = [Math.floor(x / grain), (x % grain) / grain];
        const next = (column + 1) % n;
        const upper = knots[row * n + column]! * (1 - right) + knots[row * n + next]! * right;
        const lower = knots[under * n + column]! * (1 - right) + knots[under * n + next]! * right;
        values[y * SIDE + x]! += weight * (upper * (1 - down) + lower * down);
      }
    }
  }
  // Near 1 at its usual largest.
  const scale = 1 / Math.sqrt(most);
  for (let i = 0; i < values.length; i++) values[i]! *= scale;
  return {
    at: (x, y) => {
      const [a, b] = [Math.floor(x), Math.floor(y)];
      const [p, q] = [x - a, y - b];
      const [left, right] = [a & (SIDE - 1), (a + 1) & (SIDE - 1)];
      const [upper, lower] = [(b & (SIDE - 1)) * SIDE, ((b + 1) & (SIDE - 1)) * SIDE];
      return (
        (values[upper + left]! * (1 - p) + values[upper + right]! * p) * (1 - q) +
        (values[lower + left]! * (1 - p) + values[lower + right]! * p) * q
      );
    },
  };
}
