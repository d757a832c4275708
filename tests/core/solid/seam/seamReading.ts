import type { Vec3 } from '../../../../src/core/math/vec3.ts';
import { combine3, dot3, tripleAt, unit3 } from '../../../../src/core/math/vec3.ts';
import type { MeshData } from '../../../../src/core/solid/meshData.ts';
import type { Strand } from '../../../../src/core/solid/seam/laidStrands.ts';
import { defined } from '../../../defined.ts';

/** Where a place of the pattern is on the grain side of a mesh, by the triangle that has it, and the way out there. */
export function onGrain({ positions, uvs, indices, faces }: MeshData, s: number, v: number): { at: Vec3; out: Vec3 } {
  const { start, count } = defined(faces.find(({ face }) => face === 'grain'));
  for (let k = start; k < start + count; k += 3) {
    const [a, b, c] = [0, 1, 2].map((i) => defined(indices[k + i])) as [number, number, number];
    const uv = (i: number): [number, number] => [defined(uvs[2 * i]), defined(uvs[2 * i + 1])];
    const [p, q, r] = [uv(a), uv(b), uv(c)];
    const area = (q[0] - p[0]) * (r[1] - p[1]) - (r[0] - p[0]) * (q[1] - p[1]);
    if (Math.abs(area) < 1e-9) continue;
    const x = ((q[0] - s) * (r[1] - v) - (r[0] - s) * (q[1] - v)) / area;
    const y = ((r[0] - s) * (p[1] - v) - (p[0] - s) * (r[1] - v)) / area;
    if (Math.min(x, y, 1 - x - y) < -1e-6) continue;
    const [A, B, C] = [a, b, c].map((i) => tripleAt(positions, i)) as [Vec3, Vec3, Vec3];
    const [e, f] = [combine3(B, 1, A, -1), combine3(C, 1, A, -1)];
    const out = unit3([e[1] * f[2] - e[2] * f[1], e[2] * f[0] - e[0] * f[2], e[0] * f[1] - e[1] * f[0]]);
    return { at: combine3(combine3(A, x, B, y), 1, C, 1 - x - y), out };
  }
  throw new Error(`no triangle has ${s}, ${v}`);
}

/** How far from a hole its strands are looked for, mm: less than the least pitch of the cases. */
const NEAR = 2;

/** One strand through one hole. */
interface Passage {
  /** Greatest distance from the axis of the hole at a quarter and three quarters of the depth, mm. */
  readonly off: number;
  /** 1, or 1/2 for a strand that ends in the hole. */
  readonly share: number;
}

/**
 * The passages of strands through a hole: from a quarter of its depth to three quarters, or the other way. A stitch beside the
 * hole, which on a bend dips under the level of a quarter and comes up again, is none.
 */
export function passages(strands: readonly Strand[], at: Vec3, out: Vec3, stack: number): Passage[] {
  const depthOf = (p: Vec3): number => dot3(combine3(at, 1, p, -1), out) / stack;
  return strands.flatMap(({ points }) => {
    const count = points.length / 3;
    const crossings: { level: number; off: number; segment: number }[] = [];
    for (let i = 0; i + 1 < count; i++) {
      const [p, q] = [tripleAt(points, i), tripleAt(points, i + 1)];
      const [a, b] = [depthOf(p), depthOf(q)];
      for (const level of a < b ? [0.25, 0.75] : [0.75, 0.25]) {
        if (a > level === b > level) continue;
        const share = (level - a) / (b - a);
        const on = combine3(p, 1 - share, q, share);
        const off = Math.hypot(...combine3(on, 1, combine3(at, 1, out, -level * stack), -1));
        if (off < NEAR) crossings.push({ level, off, segment: i });
      }
    }
    const isWithin = (i: number): boolean => {
      const depth = depthOf(tripleAt(points, i));
      return depth > 0.25 && depth < 0.75;
    };
    const found: Passage[] = [];
    const [first, last] = [crossings[0], crossings.at(-1)];
    // From an end in the hole to its mouth.
    if (first && isWithin(0) && first.segment < 3) found.push({ off: first.off, share: 1 / 2 });
    if (last && isWithin(count - 1) && last.segment > count - 5) found.push({ off: last.off, share: 1 / 2 });
    crossings.forEach(({ level, off, segment }, i) => {
      const before = crossings[i - 1];
      if (before && before.level !== level && segment - before.segment < 4)
        found.push({ off: Math.max(off, before.off), share: 1 });
    });
    return found;
  });
}

/** How often strands go through a hole. */
export const timesThrough = (through: readonly Passage[]): number => through.reduce((sum, { share }) => sum + share, 0);

/** Length of strands, mm. */
export const strandLength = (strands: readonly Strand[]): number =>
  strands.reduce((sum, { points }) => {
    let length = 0;
    for (let i = 1; 3 * i < points.length; i++)
      length += Math.hypot(...combine3(tripleAt(points, i), 1, tripleAt(points, i - 1), -1));
    return sum + length;
  }, 0);
