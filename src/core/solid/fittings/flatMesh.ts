import type { Vec2 } from '../../math/vec2.ts';
import { combine3, type Vec3 } from '../../math/vec3.ts';
import type { Face, MeshData, PartName } from '../meshData.ts';

/** A flat piece cut into triangles, in the frame of its pattern, mm. */
export interface FlatMesh {
  readonly points: readonly Vec2[];
  /** Three indices each, counterclockwise. */
  readonly triangles: readonly number[];
  /** The cut edges: the outline counterclockwise, each hole clockwise. */
  readonly loops: readonly (readonly number[])[];
}

/** Where a point of a piece lies once it is folded, and its directions there. */
export interface SheetPlace {
  readonly outer: Vec3;
  readonly inner: Vec3;
  /** Unit vectors: out of the outer face, along the pattern's x and y. */
  readonly out: Vec3;
  readonly alongX: Vec3;
  readonly alongY: Vec3;
}

/** Closes a flat piece to a solid: outer face, inner face, and the cut edges with vertices of their own. */
export function foldedSolid(
  part: PartName,
  flat: FlatMesh,
  place: (point: Vec2, index: number) => SheetPlace,
  faces: { readonly outer: Face; readonly inner: Face; readonly edge: Face },
): MeshData {
  const places = flat.points.map(place);
  const positions: number[] = [];
  const normals: number[] = [];
  const uvs: number[] = [];
  const add = (at: Vec3, normal: Vec3, uv: Vec2): void => {
    positions.push(...at);
    normals.push(...normal);
    uvs.push(...uv);
  };
  for (const [i, { outer, out }] of places.entries()) add(outer, out, flat.points[i]!);
  for (const [i, { inner, out }] of places.entries()) add(inner, combine3(out, -1, out, 0), flat.points[i]!);
  const count = places.length;
  const outerFace = [...flat.triangles];
  const innerFace: number[] = [];
  for (let k = 0; k < outerFace.length; k += 3)
    innerFace.push(count + outerFace[k]!, count + outerFace[k + 2]!, count + outerFace[k + 1]!);
  const rim: number[] = [];
  for (const loop of flat.loops)
    loop.forEach((from, k) => {
      const to = loop[(k + 1) % loop.length]!;
      const [a, b] = [flat.points[from]!, flat.points[to]!];
      const size = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
      // The piece is on the left of its edge.
      const away: Vec2 = [(b[1] - a[1]) / size, (a[0] - b[0]) / size];
      const first = positions.length / 3;
      for (const i of [from, to]) {
        const { outer, inner, alongX, alongY } = places[i]!;
        const normal = combine3(alongX, away[0], alongY, away[1]);
        add(outer, normal, flat.points[i]!);
        add(inner, normal, flat.points[i]!);
      }
      rim.push(first, first + 1, first + 3, first, first + 3, first + 2);
    });
  return {
    part,
    positions: new Float32Array(positions),
    normals: new Float32Array(normals),
    uvs: new Float32Array(uvs),
    indices: new Uint32Array([...outerFace, ...innerFace, ...rim]),
    faces: [
      { face: faces.outer, start: 0, count: outerFace.length },
      { face: faces.inner, start: outerFace.length, count: innerFace.length },
      { face: faces.edge, start: outerFace.length + innerFace.length, count: rim.length },
    ],
  };
}
