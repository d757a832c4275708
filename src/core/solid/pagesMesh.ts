import type { Vec2 } from '../math/vec2.ts';
import type { Gathering, LeafPoint } from './halfBlock.ts';
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
  const { vertices, indices, pages } = topologyOf(gatherings);
  const positions = new Float32Array(3 * vertices);
  const normals = new Float32Array(3 * vertices);
  const uvs = new Float32Array(2 * vertices);
  let v = 0;
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
  /** Places at both ends of the spine, their normals to the right (1) or to the left (-1) of the way from neighbour to neighbour. */
  const pair = (before: LeafPoint, place: LeafPoint, after: LeafPoint, way: 1 | -1, u: number): void => {
    const [dx, dy] = tangent(before.at, place.at, after.at);
    vertex(place.at, -height / 2, way * dy, -way * dx, 0, u, 0);
    vertex(place.at, height / 2, way * dy, -way * dx, 0, u, height);
  };
  const page = (leaf: Gathering[number], way: 1 | -1): void => {
    for (let i = 0, last = leaf.length - 1; i <= last; i++)
      pair(leaf[Math.max(0, i - 1)]!, leaf[i]!, leaf[Math.min(last, i + 1)]!, way, leaf[i]!.along);
  };
  const edges = (leaves: Gathering): void => {
    const top = leaves.length - 1;
    for (const [i, way] of [
      [0, -1],
      [leaves[0]!.length - 1, 1],
    ] as const)
      for (let k = 0; k <= top; k++) {
        const place = leaves[k]![i]!;
        pair(leaves[Math.max(0, k - 1)]![i]!, place, leaves[Math.min(top, k + 1)]![i]!, way, place.across);
      }
    for (const end of [-1, 1])
      for (const leaf of leaves)
        for (const { at, along, across } of leaf) vertex(at, (end * height) / 2, 0, 0, end, across, along);
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
  return {
    part,
    positions,
    normals,
    uvs,
    indices,
    faces: [
      ...(boardSide === 'pageFace'
        ? [{ face: boardSide, start: 0, count: 2 * pages }]
        : [
            { face: boardSide, start: 0, count: pages },
            { face: 'pageFace' as const, start: pages, count: pages },
          ]),
      { face: 'pageEdge', start: 2 * pages, count: indices.length - 2 * pages },
    ],
  };
}

/** What gatherings have in common that have as many leaves and places on the same sides. */
interface Topology {
  readonly vertices: number;
  /** Never changed: many solids hold it. */
  readonly indices: Uint32Array;
  /** Indices of all pages on one side of the leaves. */
  readonly pages: number;
}

const topologies = new Map<string, Topology>();
/** Shapes kept: all that books of one kind of leaf have, and some to spare. */
const MOST_SHAPES = 16;

function topologyOf(gatherings: readonly Pages[]): Topology {
  const key = gatherings.map(({ side, leaves }) => `${side} ${leaves.length} ${leaves[0]!.length}`).join();
  const known = topologies.get(key);
  if (known) return known;
  if (topologies.size >= MOST_SHAPES) topologies.clear();
  const found = pagesTopology(gatherings);
  topologies.set(key, found);
  return found;
}

/** The triangles, in the order in which `pagesMesh` writes their corners. */
function pagesTopology(gatherings: readonly Pages[]): Topology {
  const indices: number[] = [];
  let v = 0;
  const quad = (side: Pages['side'], a: number, b: number, c: number, d: number): void => {
    indices.push(...(side === 'back' ? [a, b, c, a, c, d] : [a, c, b, a, d, c]));
  };
  /** A strip of pairs, each joined to the one before it. */
  const strip = (side: Pages['side'], pairs: number, way: 1 | -1): void => {
    for (let k = 1; k < pairs; k++) {
      const a = v + 2 * (k - 1);
      if (way > 0) quad(side, a, a + 2, a + 3, a + 1);
      else quad(side, a, a + 1, a + 3, a + 2);
    }
    v += 2 * pairs;
  };
  for (const { side, leaves } of gatherings) strip(side, leaves[0]!.length, 1);
  const pages = indices.length;
  for (const { side, leaves } of gatherings) strip(side, leaves[0]!.length, -1);
  for (const { side, leaves } of gatherings) {
    strip(side, leaves.length, -1);
    strip(side, leaves.length, 1);
    const count = leaves[0]!.length;
    for (const end of [-1, 1]) {
      for (let k = 1; k < leaves.length; k++)
        for (let i = 1; i < count; i++) {
          const d = v + k * count + i;
          const [a, b, c] = [d - count - 1, d - count, d - 1];
          if (end > 0) quad(side, a, b, d, c);
          else quad(side, a, c, d, b);
        }
      v += leaves.length * count;
    }
  }
  return { vertices: v, indices: Uint32Array.from(indices), pages };
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
function tangent([ax, ay]: Vec2, [bx, by]: Vec2, [cx, cy]: Vec2): Vec2 {
  const to = Math.sqrt((bx - ax) ** 2 + (by - ay) ** 2) || 1;
  const from = Math.sqrt((cx - bx) ** 2 + (cy - by) ** 2) || 1;
  const x = (bx - ax) / to + (cx - bx) / from;
  const y = (by - ay) / to + (cy - by) / from;
  const length = Math.sqrt(x * x + y * y) || 1;
  return [x / length, y / length];
}
