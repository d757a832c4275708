import type { Vec2 } from '../../core/index.ts';

/** Longest run that is thinned at once: the time for a run may grow with the square of its length. */
const RUN = 1000;

/**
 * Thins a polyline, so that no point that is left out is farther from the line than `tolerance` (Douglas and Peucker 1973,
 * Cartographica 10(2), 112, with the distance to the chord and not to the line through it, which would lose a spike along it).
 */
export function simplified(line: readonly Vec2[], tolerance: number): Vec2[] {
  const kept: Vec2[] = [];
  for (let start = 0; start < line.length - 1; start += RUN) {
    const run = line.slice(start, start + RUN + 1);
    const keeps = keptOf(run, tolerance);
    run.forEach((point, i) => {
      if (keeps[i] && i < run.length - 1) kept.push(point);
    });
  }
  const last = line.at(-1);
  if (last !== undefined) kept.push(last);
  return kept;
}

function keptOf(run: readonly Vec2[], tolerance: number): boolean[] {
  const keeps = run.map((_, i) => i === 0 || i === run.length - 1);
  const open: (readonly [number, number])[] = [[0, run.length - 1]];
  for (let chord = open.pop(); chord !== undefined; chord = open.pop()) {
    const [from, to] = chord;
    let [farthest, at] = [tolerance, -1];
    for (let i = from + 1; i < to; i++) {
      const off = distanceTo(run[i]!, run[from]!, run[to]!);
      if (off > farthest) [farthest, at] = [off, i];
    }
    if (at < 0) continue;
    keeps[at] = true;
    open.push([from, at], [at, to]);
  }
  return keeps;
}

function distanceTo([x, y]: Vec2, [ax, ay]: Vec2, [bx, by]: Vec2): number {
  const [dx, dy] = [bx - ax, by - ay];
  const length = dx * dx + dy * dy;
  const share = length === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / length));
  return Math.hypot(x - ax - share * dx, y - ay - share * dy);
}
