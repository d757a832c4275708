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

/** How far from the axis of a hole each strand goes through a depth of it, mm, of those within 2 mm. */
export function crossings(strands: readonly Strand[], at: Vec3, out: Vec3, depth: number): number[] {
  const level = dot3(at, out) - depth;
  return strands.flatMap(({ points }) => {
    const found: number[] = [];
    for (let i = 0; i + 3 < points.length; i += 3) {
      const [p, q] = [tripleAt(points, i / 3), tripleAt(points, i / 3 + 1)];
      const [a, b] = [dot3(p, out) - level, dot3(q, out) - level];
      if (a > 0 === b > 0) continue;
      const on = combine3(p, b / (b - a), q, -a / (b - a));
      const off = combine3(on, 1, combine3(at, 1, out, -depth), -1);
      const distance = Math.hypot(...off);
      if (distance < 2) found.push(distance);
    }
    return found;
  });
}

/** Length of strands, mm. */
export const strandLength = (strands: readonly Strand[]): number =>
  strands.reduce((sum, { points }) => {
    let length = 0;
    for (let i = 1; 3 * i < points.length; i++)
      length += Math.hypot(...combine3(tripleAt(points, i), 1, tripleAt(points, i - 1), -1));
    return sum + length;
  }, 0);
