import { dot, subtract, type Vec2 } from '../math/vec2.ts';
import type { Gathering } from './halfBlock.ts';
import type { Face, MeshData, PartName } from './meshData.ts';

/** A gathering as it stands at the back, or at the front as the mirror image of one at the back. */
export interface Pages {
  readonly side: 'front' | 'back';
  readonly leaves: Gathering;
}

/**
 * Gatherings as closed solids in one mesh: their two page faces, and edges with u across the leaves.
 * @param height of the leaves, mm, about z = 0
 * @param boardSide what the faces toward the board are
 */
export function pagesMesh(part: PartName, gatherings: readonly Pages[], height: number, boardSide: Face): MeshData {
  let [vertices, pageQuads, edgeQuads] = [0, 0, 0];
  for (const { leaves } of gatherings) {
    const [count, places] = [leaves.length, leaves[0]!.length];
    vertices += 4 * places + 4 * count + 2 * count * places;
    pageQuads += places - 1;
    edgeQuads += 2 * (count - 1) + 2 * (count - 1) * (places - 1);
  }
  const positions = new Float32Array(3 * vertices);
  const normals = new Float32Array(3 * vertices);
  const uvs = new Float32Array(2 * vertices);
  const indices = new Uint32Array(6 * (2 * pageQuads + edgeQuads));
  let [v, n] = [0, 0];
  let side = 1;
  // Written one by one: this runs for every leaf in every frame of the film.
  const vertex = ([x, y]: Vec2, z: number, nx: number, ny: number, nz: number, u: number, w: number): void => {
    const at = 3 * v;
    positions[at] = x;
    positions[at + 1] = side * y;
    positions[at + 2] = z;
    normals[at] = nx;
    normals[at + 1] = side * ny;
    normals[at + 2] = nz;
    uvs[2 * v] = u;
    uvs[2 * v + 1] = w;
    v++;
  };
  const quad = (a: number, b: number, c: number, d: number): void => {
    const turned = side < 0;
    indices[n++] = a;
    indices[n++] = turned ? c : b;
    indices[n++] = turned ? b : c;
    indices[n++] = a;
    indices[n++] = turned ? d : c;
    indices[n++] = turned ? c : d;
  };
  const ends = [-height / 2, height / 2] as const;
  /** A page face, its normals to the right of the leaf (1) or to its left (-1). */
  const page = (leaf: Gathering[number], way: 1 | -1): void => {
    leaf.forEach(({ at, along }, i) => {
      const [dx, dy] = tangent(leaf[Math.max(0, i - 1)]!.at, at, leaf[Math.min(leaf.length - 1, i + 1)]!.at);
      for (const z of ends) vertex(at, z, way * dy, -way * dx, 0, along, z + height / 2);
      if (i === 0) return;
      const [a, b, c, d] = [v - 4, v - 3, v - 2, v - 1];
      if (way > 0) quad(a, c, d, b);
      else quad(a, b, d, c);
    });
  };
  const edges = (leaves: Gathering): void => {
    const last = leaves[0]!.length - 1;
    for (const [i, way] of [
      [0, -1],
      [last, 1],
    ] as const)
      leaves.forEach((leaf, k) => {
        const beside = [leaves[Math.max(0, k - 1)]!, leaves[Math.min(leaves.length - 1, k + 1)]!];
        const [dx, dy] = tangent(beside[0]![i]!.at, leaf[i]!.at, beside[1]![i]!.at);
        for (const z of ends) vertex(leaf[i]!.at, z, way * dy, -way * dx, 0, leaf[i]!.across, z + height / 2);
        if (k === 0) return;
        const [a, b, c, d] = [v - 4, v - 3, v - 2, v - 1];
        if (way > 0) quad(a, c, d, b);
        else quad(a, b, d, c);
      });
    for (const z of ends) {
      const first = v;
      for (const leaf of leaves)
        for (const { at, along, across } of leaf) vertex(at, z, 0, 0, Math.sign(z), across, along);
      for (let k = 1; k < leaves.length; k++)
        for (let i = 1; i <= last; i++) {
          const d = first + k * (last + 1) + i;
          const [a, b, c] = [d - last - 2, d - last - 1, d - 1];
          if (z > 0) quad(a, b, d, c);
          else quad(a, c, d, b);
        }
    }
  };
  const drawn = (draw: (leaves: Gathering) => void): void => {
    for (const gathering of gatherings) {
      side = gathering.side === 'back' ? 1 : -1;
      draw(gathering.leaves);
    }
  };
  drawn((leaves) => page(leaves[0]!, 1));
  drawn((leaves) => page(leaves[leaves.length - 1]!, -1));
  drawn(edges);
  const count = 6 * pageQuads;
  return {
    part,
    positions,
    normals,
    uvs,
    indices,
    faces: [
      ...(boardSide === 'pageFace'
        ? [{ face: boardSide, start: 0, count: 2 * count }]
        : [
            { face: boardSide, start: 0, count },
            { face: 'pageFace' as const, start: count, count },
          ]),
      { face: 'pageEdge', start: 2 * count, count: 6 * edgeQuads },
    ],
  };
}

/** A place on a page: in the section, and from the spine end along the page, mm. */
export interface PagePlace {
  readonly at: Vec2;
  readonly along: number;
}

/** The page of a mesh of gatherings that was drawn last, spine to fore-edge: of the leaves of a book the open one at the back. */
export function lastPage({ positions, uvs, faces, indices }: MeshData): PagePlace[] {
  const edge = faces.at(-1)!.start;
  let v = indices.subarray(0, edge).reduce((most, index) => Math.max(most, index), 0);
  const page: PagePlace[] = [];
  for (let nearer = Number.POSITIVE_INFINITY; v >= 0 && uvs[2 * v]! < nearer; v -= 2) {
    nearer = uvs[2 * v]!;
    page.push({ at: [positions[3 * v]!, positions[3 * v + 1]!], along: nearer });
  }
  return page.reverse();
}

/** Unit tangent at the middle one of three points, of the mean of the directions to and from it. */
function tangent(before: Vec2, at: Vec2, after: Vec2): Vec2 {
  let [x, y] = [0, 0];
  for (const [dx, dy] of [subtract(at, before), subtract(after, at)]) {
    const length = Math.hypot(dx, dy) || 1;
    x += dx / length;
    y += dy / length;
  }
  const length = Math.sqrt(dot([x, y], [x, y])) || 1;
  return [x / length, y / length];
}
