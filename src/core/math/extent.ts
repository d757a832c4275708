import type { Vec2 } from './vec2.ts';

/** How far points reach along x (0) or y (1). */
export function extent(points: readonly Vec2[], axis: 0 | 1): number {
  const along = points.map((point) => point[axis]);
  return Math.max(...along) - Math.min(...along);
}
