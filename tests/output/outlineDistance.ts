import type { Vec2 } from '../../src/core/math/vec2.ts';
import { nth } from '../nth.ts';

/** From a point to a chain of straight stretches, mm. */
export function toChain([x, y]: Vec2, chain: readonly Vec2[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < chain.length; i++) {
    const [a, b] = [nth(chain, i - 1), nth(chain, i)];
    const [u, v] = [b[0] - a[0], b[1] - a[1]];
    const share = Math.max(0, Math.min(1, ((x - a[0]) * u + (y - a[1]) * v) / (u * u + v * v || 1)));
    least = Math.min(least, Math.hypot(x - a[0] - share * u, y - a[1] - share * v));
  }
  return least;
}

/** Greatest distance between two chains, either way, over their own points. */
export const apart = (a: readonly Vec2[], b: readonly Vec2[]): number =>
  Math.max(...a.map((point) => toChain(point, b)), ...b.map((point) => toChain(point, a)));

export function boundsOf(points: readonly Vec2[]): { low: Vec2; high: Vec2; width: number; height: number } {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const low: Vec2 = [Math.min(...xs), Math.min(...ys)];
  const high: Vec2 = [Math.max(...xs), Math.max(...ys)];
  return { low, high, width: high[0] - low[0], height: high[1] - low[1] };
}

export const moved = (points: readonly Vec2[], [x, y]: Vec2): Vec2[] =>
  points.map((point) => [point[0] + x, point[1] + y]);
