import type { CoverGrid } from './coverGrid.ts';
import type { Vec3 } from './vec3.ts';

/** A place on the grain side of the outside, with the surface's directions there. */
export interface CoverPlace {
  readonly at: Vec3;
  /** Unit vectors: out of the grain side, toward rising s, toward rising v. */
  readonly out: Vec3;
  readonly alongS: Vec3;
  readonly alongV: Vec3;
}

/** Finds places of the pattern on the folded outside: s from the front cut edge, v from the tail cut edge, mm. */
export function coverSampler({ s, uvs, grain, normals }: CoverGrid): (s: number, v: number) => CoverPlace {
  const { rows, columns, points } = grain;
  const inColumn = (i: number, v: number): [row: number, share: number] => {
    let low = 0;
    let high = rows - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (uvs[2 * (i * rows + middle) + 1]! <= v) low = middle;
      else high = middle;
    }
    const [a, b] = [uvs[2 * (i * rows + low) + 1]!, uvs[2 * (i * rows + high) + 1]!];
    return [low, b > a ? Math.max(0, Math.min(1, (v - a) / (b - a))) : 0];
  };
  const read = (from: Float64Array, i: number, [row, share]: [number, number]): Vec3 => {
    const at = 3 * (i * rows + row);
    return [0, 1, 2].map((c) => from[at + c]! + share * (from[at + 3 + c]! - from[at + c]!)) as unknown as Vec3;
  };
  return (along, v) => {
    let low = 0;
    let high = columns - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (s[middle]! <= along) low = middle;
      else high = middle;
    }
    const share = Math.max(0, Math.min(1, (along - s[low]!) / (s[high]! - s[low]!)));
    const [a, b] = [inColumn(low, v), inColumn(high, v)];
    const [p, q] = [read(points, low, a), read(points, high, b)];
    const out = unit(mix(read(normals, low, a), read(normals, high, b), share));
    const near = share < 0.5 ? low : high;
    const [row] = share < 0.5 ? a : b;
    const up = difference(read(points, near, [row, 1]), read(points, near, [row, 0]));
    const alongV = unit(across(up, out));
    return { at: mix(p, q, share), out, alongS: cross(alongV, out), alongV };
  };
}

const mix = (a: Vec3, b: Vec3, t: number): Vec3 => [
  a[0] + t * (b[0] - a[0]),
  a[1] + t * (b[1] - a[1]),
  a[2] + t * (b[2] - a[2]),
];
const difference = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const unit = (a: Vec3): Vec3 => {
  const length = Math.hypot(...a) || 1;
  return [a[0] / length, a[1] / length, a[2] / length];
};
const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
/** The part of a vector square to a unit vector. */
const across = (a: Vec3, n: Vec3): Vec3 => {
  const k = dot(a, n);
  return [a[0] - k * n[0], a[1] - k * n[1], a[2] - k * n[2]];
};
