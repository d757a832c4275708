import { randomDraws } from '../../src/core/math/randomDraws.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import { cross3, unit3, type Vec3 } from '../../src/core/math/vec3.ts';

/** How much of a light reaches each place of the ground, 0 to 1. */
export interface ShadowMap {
  readonly at: (x: number, y: number) => number;
}

/** Millimetres a dot, and half of the map's side. */
const DOT = 1.5;
const REACH = 600;
const SIDE = Math.round((2 * REACH) / DOT);

/** The shadow of the hull of some points by light from many directions, each of the same strength. */
export function shadowMap(points: readonly Vec3[], directions: readonly Vec3[]): ShadowMap {
  const hits = new Float32Array(SIDE * SIDE);
  for (const [dx, dy, dz] of directions) {
    const hull = hullOf(points.map(([x, y, z]): Vec2 => [x - (z * dx) / dz, y - (z * dy) / dz]));
    fill(hull, hits, 1 / directions.length);
  }
  return {
    at: (x, y) => {
      const [a, b] = [(x + REACH) / DOT - 0.5, (y + REACH) / DOT - 0.5];
      const [column, row] = [Math.floor(a), Math.floor(b)];
      if (column < 0 || row < 0 || column >= SIDE - 1 || row >= SIDE - 1) return 1;
      const [p, q] = [a - column, b - row];
      const i = row * SIDE + column;
      return (
        1 -
        (hits[i]! * (1 - p) + hits[i + 1]! * p) * (1 - q) -
        (hits[i + SIDE]! * (1 - p) + hits[i + SIDE + 1]! * p) * q
      );
    },
  };
}

/** Directions to a round lamp, evenly over its disc. */
export function lampDirections(sun: Vec3, softness: number, count: number): Vec3[] {
  const toward = unit3(sun);
  const side = unit3(cross3(toward, Math.abs(toward[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]));
  const up = cross3(toward, side);
  return Array.from({ length: count }, (_, i) => {
    // Sunflower seeds: the golden angle.
    const [radius, angle] = [softness * Math.sqrt((i + 0.5) / count), 2.399963 * i];
    const [a, b] = [radius * Math.cos(angle), radius * Math.sin(angle)];
    const [x, y, z] = [0, 1, 2].map((k) => toward[k]! + a * side[k]! + b * up[k]!) as [number, number, number];
    return [x, y, Math.max(z, 0.05)];
  });
}

/** Directions over the whole sky, as many as their light counts on level ground. */
export function skyDirections(count: number, seed: number): Vec3[] {
  const turn = randomDraws(seed)();
  return Array.from({ length: count }, (_, i) => {
    const [radius, angle] = [Math.sqrt((i + 0.5) / count), 2.399963 * (i + turn)];
    return [radius * Math.cos(angle), radius * Math.sin(angle), Math.max(0.1, Math.sqrt(1 - radius * radius))];
  });
}

/** Convex hull, counterclockwise (Andrew 1979, monotone chain). */
function hullOf(points: readonly Vec2[]): Vec2[] {
  const sorted = points.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly Vec2[]): Vec2[] => {
    const chain: Vec2[] = [];
    for (const p of list) {
      for (let n = chain.length; n >= 2; n = chain.length) {
        const [a, b] = [chain[n - 2]!, chain[n - 1]!];
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break;
        chain.pop();
      }
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
}

function fill(polygon: readonly Vec2[], hits: Float32Array, by: number): void {
  const ys = polygon.map(([, y]) => (y + REACH) / DOT);
  const first = Math.max(0, Math.ceil(Math.min(...ys) - 0.5));
  const last = Math.min(SIDE - 1, Math.floor(Math.max(...ys) - 0.5));
  for (let row = first; row <= last; row++) {
    const y = row + 0.5;
    let [left, right] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    polygon.forEach((from, i) => {
      const to = polygon[(i + 1) % polygon.length]!;
      const [a, b] = [ys[i]!, ys[(i + 1) % polygon.length]!];
      if (a > y === b > y) return;
      const x = (from[0] + ((y - a) / (b - a)) * (to[0] - from[0]) + REACH) / DOT;
      left = Math.min(left, x);
      right = Math.max(right, x);
    });
    const from = Math.max(0, Math.ceil(left - 0.5));
    const to = Math.min(SIDE - 1, Math.floor(right - 0.5));
    for (let column = from; column <= to; column++) hits[row * SIDE + column]! += by;
  }
}
