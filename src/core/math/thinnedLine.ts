import { pointToSegment } from './polygonDistance.ts';
import type { Vec2 } from './vec2.ts';

/**
 * A line of fewer points, some of its own, so that none of its points lies further than a tolerance from the new line
 * (Douglas and Peucker 1973, with the distance from the segment and not from the line through it, so that a stroke that runs back on
 * itself keeps its turn). Its first and last point stay.
 * @param tolerance mm, 0 or more
 */
export function thinnedLine(points: readonly Vec2[], tolerance: number): Vec2[] {
  const kept = new Set([0, points.length - 1]);
  const spans: [number, number][] = [[0, points.length - 1]];
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span;
    let [far, most] = [from, tolerance];
    for (let i = from + 1; i < to; i++) {
      const off = pointToSegment(points[i]!, points[from]!, points[to]!);
      if (off > most) [far, most] = [i, off];
    }
    if (far === from) continue;
    kept.add(far);
    spans.push([from, far], [far, to]);
  }
  return points.filter((_, i) => kept.has(i));
}
