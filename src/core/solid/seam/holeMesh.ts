import { combine3, cross3, unit3 } from '../../math/vec3.ts';
import type { FoldedHole } from '../meshData.ts';
import type { SeamCourse } from './seamCourse.ts';
import type { SeamMesh } from './strandSweep.ts';

/** How far a mark stands off the leather, mm, so that it is seen. */
const OFF = 0.03;
/** Width of a slit that is open, mm. Judged by eye. */
const SLIT_OPEN = 0.4;
/** Corners of a round hole. */
const CORNERS = 10;

/**
 * Holes or slits of a seam as they show on both faces, mm: discs of the hole's diameter, or slits of their width at their
 * angle to the seam.
 * @param stack thickness of the layers that are there, for a seam that is punched before they are joined; without it that of
 *   each hole
 */
export function holeMesh({ slit, opening }: SeamCourse, seam: readonly FoldedHole[], stack?: number): SeamMesh {
  const outline = Array.from({ length: slit === null ? CORNERS : 4 }, (_, i): readonly [number, number] => {
    const angle = (2 * Math.PI * (i + 0.5)) / (slit === null ? CORNERS : 4);
    if (slit === null) return [(opening / 2) * Math.cos(angle), (opening / 2) * Math.sin(angle)];
    return [(opening / 2) * Math.sign(Math.cos(angle)), (SLIT_OPEN / 2) * Math.sign(Math.sin(angle))];
  });
  const size = outline.length;
  const positions = new Float32Array(6 * size * seam.length);
  const normals = new Float32Array(6 * size * seam.length);
  const indices = new Uint32Array(6 * (size - 2) * seam.length);
  let [v, n] = [0, 0];
  const [c, s] = [Math.cos(slit ?? 0), Math.sin(slit ?? 0)];
  for (const hole of seam) {
    const long = combine3(hole.along, c, hole.edgeward, -s);
    const wide = unit3(cross3(hole.out, long));
    for (const [deep, out] of [
      [0, hole.out],
      [stack ?? hole.stack, combine3(hole.out, -1, hole.out, 0)],
    ] as const) {
      const middle = combine3(combine3(hole.at, 1, hole.out, -deep), 1, out, OFF);
      const first = v / 3;
      for (const [x, y] of outline) {
        // Written one by one: this runs for every hole in every frame of the film.
        for (let axis = 0; axis < 3; axis++, v++) {
          positions[v] = middle[axis]! + x * long[axis]! + y * wide[axis]!;
          normals[v] = out[axis]!;
        }
      }
      for (let k = 1; k + 1 < size; k++) {
        const [a, b] = deep === 0 ? [k, k + 1] : [k + 1, k];
        indices[n++] = first;
        indices[n++] = first + a;
        indices[n++] = first + b;
      }
    }
  }
  return { positions, normals, uvs: new Float32Array(4 * size * seam.length), indices };
}
