import { combine3, cross3, dot3, tripleAt, unit3, type Vec3 } from '../math/vec3.ts';
import type { CoverGrid } from './coverGrid.ts';

/** A place on a face of the outside, with the surface's directions there. */
export interface CoverPlace {
  readonly at: Vec3;
  /** Unit vectors: out of the grain side, toward rising s, toward rising v. */
  readonly out: Vec3;
  readonly alongS: Vec3;
  readonly alongV: Vec3;
}

/**
 * Finds places of the pattern on the folded outside: s from the front cut edge, v from the tail cut edge, mm.
 * @param face grain side, or the inner face, which board and pocket see
 */
export function coverSampler(
  { s, uvs, normals, ...faces }: CoverGrid,
  face: 'grain' | 'inner' = 'grain',
): (s: number, v: number) => CoverPlace {
  const { rows, columns, points } = faces[face];
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
  const read = (from: Float64Array, i: number, [row, share]: [number, number]): Vec3 =>
    combine3(tripleAt(from, i * rows + row), 1 - share, tripleAt(from, i * rows + row + 1), share);
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
    const out = unit3(combine3(read(normals, low, a), 1 - share, read(normals, high, b), share));
    const near = share < 0.5 ? low : high;
    const [row] = share < 0.5 ? a : b;
    const up = combine3(read(points, near, [row, 1]), 1, read(points, near, [row, 0]), -1);
    const alongV = unit3(combine3(up, 1, out, -dot3(up, out)));
    return { at: combine3(p, 1 - share, q, share), out, alongS: cross3(alongV, out), alongV };
  };
}
