/** Repeatable number in [0, 1) for a lattice point. */
export function lattice(x: number, y: number, seed: number): number {
  let h = Math.imul(x, 0x9e3779b1) ^ Math.imul(y, 0x85ebca77) ^ Math.imul(seed + 1, 0xc2b2ae3d);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  h = Math.imul(h ^ (h >>> 12), 0x297a2d39);
  return ((h ^ (h >>> 15)) >>> 0) / 4294967296;
}

const wrap = (i: number, period: number): number => ((i % period) + period) % period;
const ease = (f: number): number => f * f * (3 - 2 * f);

/** Smooth noise in [0, 1] that repeats after `period` lattice steps both ways. */
export function valueNoise(x: number, y: number, period: number, seed: number): number {
  const [x0, y0] = [Math.floor(x), Math.floor(y)];
  const [fx, fy] = [ease(x - x0), ease(y - y0)];
  const at = (i: number, j: number): number => lattice(wrap(x0 + i, period), wrap(y0 + j, period), seed);
  const low = at(0, 0) + (at(1, 0) - at(0, 0)) * fx;
  const high = at(0, 1) + (at(1, 1) - at(0, 1)) * fx;
  return low + (high - low) * fy;
}

/** Irregular cells that repeat after `period`: how far inside its cell a point lies (0 at the border), and which cell. */
export function cells(x: number, y: number, period: number, seed: number): { inside: number; cell: number } {
  const [x0, y0] = [Math.floor(x), Math.floor(y)];
  let [first, second, cell] = [9, 9, 0];
  for (let j = -1; j <= 1; j++) {
    for (let i = -1; i <= 1; i++) {
      const [cx, cy] = [wrap(x0 + i, period), wrap(y0 + j, period)];
      const dx = x0 + i + 0.15 + 0.7 * lattice(cx, cy, seed) - x;
      const dy = y0 + j + 0.15 + 0.7 * lattice(cx, cy, seed + 7) - y;
      const distance = Math.hypot(dx, dy);
      if (distance < first) {
        second = first;
        first = distance;
        cell = lattice(cx, cy, seed + 13);
      } else if (distance < second) second = distance;
    }
  }
  return { inside: second - first, cell };
}
