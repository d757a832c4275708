import type { BookModel } from '../book/bookModel.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { caseShape } from './caseMesh.ts';
import { gridOf, gridSolid } from './gridSolid.ts';
import type { Face, MeshData } from './meshData.ts';

/** How the half text block at the back stands. */
export interface PagesPlace {
  /** Tilt of the closed board from the middle plane, radians. */
  readonly tilt: number;
  /** How far the leaves have swung with their board, radians. */
  readonly swing: number;
  /** Thickness of the pocket that the leaves give way to, 0 for none, and its mouth's distance from the hinge, mm. */
  readonly pocket: number;
  readonly mouth: number;
}

/** Play between the leaves and the case beside them, mm. Between the two half blocks a play would show as a crack. */
const PLAY = 0.02;
/** Least thickness of a half text block where the pockets press on it, as a share of what is there. */
const LEAST_PAGES = 0.05;
const LEAVES = 8;
const ARC_STEPS = 10;
const FLAT_STEPS = 6;

/** A place in the half block: along the leaf from the joint's inner corner, and depth from the closed board. */
type Leaf = readonly [along: number, depth: number];

/**
 * Half text block at the back, fanning about the joint's inner corner.
 *
 * A leaf at depth q leaves the spine straight, turns by the swing on radius q about the corner and goes on parallel to the
 * board. That map takes every place of the closed block to one place of the open one, so leaves cannot cross, their
 * length is kept and the open fore-edge is bevelled.
 */
export function backPagesMesh(book: BookModel, place: PagesPlace): MeshData {
  const shape = leafShape(book, place);
  const grid: { x: number; y: number; along: number; depth: number }[][] = [];
  for (let k = 0; k <= LEAVES; k++) grid.push(leafPoints(shape, place, k / LEAVES));
  return blockSolid(grid, book.height - 2 * book.square);
}

/** Distance of the half block's middle plane and of its board side from the board, and the ends of each leaf. */
interface LeafShape {
  readonly corner: readonly [number, number];
  readonly tilt: number;
  depth(share: number, along: number): number;
  start(share: number): number;
  readonly length: number;
  /** Where the leaves have given way to the whole thickness of the pocket. */
  readonly given: number;
}

/**
 * Distance of the joint's inner corner from the hinge along the board: from b on it is clear of the board at every swing,
 * and it must lie beyond the spine piece, which runs on over a rounded edge.
 */
function cornerDistance(book: BookModel): number {
  return Math.min(Math.max(book.board, book.edgeRadius) + PLAY, book.width / 2);
}

function leafShape(book: BookModel, { tilt, pocket, mouth }: PagesPlace): LeafShape {
  const from = cornerDistance(book);
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  // Back half, drawn with the book above: the board's inner face is at the bottom, depth counts upward.
  const corner: [number, number] = [from * c + book.board * s, -(book.thickness / 2 + from * s - book.board * c)];
  const toMiddle = (along: number): number => (-corner[1] + along * s) / c;
  const given = mouth - from - 1;
  const wedge = (along: number): number => {
    const ramp = given > 0 ? Math.max(0, Math.min(1, along / given)) : 1;
    return Math.min(PLAY + ramp * pocket, (1 - LEAST_PAGES) * toMiddle(along));
  };
  const depth = (share: number, along: number): number => {
    const low = wedge(along);
    return low + share * (toMiddle(along) - low);
  };
  const inside = caseShape(book).spineInside;
  const start = (share: number): number => {
    let along = 0;
    for (let k = 0; k < 4; k++) {
      const q = depth(share, along);
      const y = corner[1] - along * s + q * c;
      along = (inside(y) + 5 * PLAY - corner[0] - q * s) / c;
    }
    return along;
  };
  return { corner, tilt, depth, start, length: book.width - book.square - from - start(0), given };
}

function leafPoints(shape: LeafShape, { swing }: PagesPlace, share: number) {
  const start = shape.start(share);
  const end = start + Math.max(1, shape.length);
  // Length taken up by the turn: along = depth(along) swing; the depth changes little over it.
  let turned = 0;
  for (let k = 0; k < 6; k++) turned = shape.depth(share, turned) * swing;
  const first = Math.max(start, Math.min(0, end));
  const bent = Math.max(first, Math.min(turned, end));
  const places = [start, (start + first) / 2];
  for (let k = 0; k <= ARC_STEPS; k++) places.push(first + ((bent - first) * k) / ARC_STEPS);
  const knee = Math.max(bent, Math.min(shape.given, end));
  for (let k = 1; k <= FLAT_STEPS; k++) places.push(bent + ((knee - bent) * k) / FLAT_STEPS);
  for (let k = 1; k <= FLAT_STEPS; k++) places.push(knee + ((end - knee) * k) / FLAT_STEPS);
  return places.map((along) => {
    const depth = shape.depth(share, along);
    const [x, y] = bend([along, depth], swing);
    const [c, s] = [Math.cos(shape.tilt), Math.sin(shape.tilt)];
    // Board direction is (c, -s) at the back, inward (s, c).
    return { x: shape.corner[0] + x * c + y * s, y: shape.corner[1] - x * s + y * c, along: along - start, depth };
  });
}

/** Turns a place of the closed block about the corner: coordinates along and into the closed block. */
function bend([along, depth]: Leaf, swing: number): [number, number] {
  if (along <= 0 || swing === 0) return [along, depth];
  const angle = depth > 0 ? Math.min(swing, along / depth) : swing;
  const rest = along - angle * depth;
  // The back board swings away clockwise, from along toward the board's outer side.
  return [depth * Math.sin(angle) + rest * Math.cos(angle), depth * Math.cos(angle) - rest * Math.sin(angle)];
}

/** Closes the block: two page faces, and edges at fore-edge, spine, head and tail with u across the leaves. */
function blockSolid(
  leaves: readonly (readonly { x: number; y: number; along: number; depth: number }[])[],
  height: number,
): MeshData {
  const places = leaves[0]!.length;
  const solids = sheetOf(leaves[0]!, leaves[LEAVES]!, height);
  const positions: number[] = [];
  const normals: number[] = [];
  const uvs: number[] = [];
  const indices: number[] = [];
  const faces: { face: Face; start: number; count: number }[] = [];

  const take = (source: MeshData, run: { start: number; count: number }, face: Face): void => {
    const base = positions.length / 3;
    const seen = new Map<number, number>();
    faces.push({ face, start: indices.length, count: run.count });
    for (let k = run.start; k < run.start + run.count; k++) {
      const from = source.indices[k]!;
      let to = seen.get(from);
      if (to === undefined) {
        to = base + seen.size;
        seen.set(from, to);
        positions.push(...source.positions.subarray(3 * from, 3 * from + 3));
        normals.push(...source.normals.subarray(3 * from, 3 * from + 3));
        uvs.push(...source.uvs.subarray(2 * from, 2 * from + 2));
      }
      indices.push(to);
    }
  };
  for (const run of solids.faces.slice(0, 2)) take(solids, run, 'pageFace');

  const edgeStart = indices.length;
  const across = (k: number, i: number): number => leaves[k]![i]!.depth - leaves[0]![i]!.depth;
  for (const i of [0, places - 1]) {
    // Spine end and fore-edge: strips across the leaves.
    const base = positions.length / 3;
    leaves.forEach((leaf, k) => {
      const { x, y } = leaf[i]!;
      const a = leaves[Math.max(0, k - 1)]![i]!;
      const b = leaves[Math.min(LEAVES, k + 1)]![i]!;
      const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
      const way = i === 0 ? -1 : 1;
      for (const z of [-height / 2, height / 2]) {
        positions.push(x, y, z);
        normals.push((way * (b.y - a.y)) / length, (-way * (b.x - a.x)) / length, 0);
        uvs.push(across(k, i), z + height / 2);
      }
      if (k === 0) return;
      const at = base + 2 * k;
      if (i === 0) indices.push(at - 2, at - 1, at + 1, at - 2, at + 1, at);
      else indices.push(at - 2, at, at + 1, at - 2, at + 1, at - 1);
    });
  }
  for (const way of [-1, 1]) {
    const base = positions.length / 3;
    leaves.forEach((leaf, k) => {
      leaf.forEach(({ x, y, along }, i) => {
        positions.push(x, y, (way * height) / 2);
        normals.push(0, 0, way);
        uvs.push(across(k, i), along);
        if (k === 0 || i === 0) return;
        const at = base + k * places + i;
        const [a, b, c, d] = [at - places - 1, at - places, at, at - 1];
        if (way > 0) indices.push(a, b, c, a, c, d);
        else indices.push(a, c, b, a, d, c);
      });
    });
  }
  faces.push({ face: 'pageEdge', start: edgeStart, count: indices.length - edgeStart });
  return {
    part: 'backPages',
    positions: new Float32Array(positions),
    normals: new Float32Array(normals),
    uvs: new Float32Array(uvs),
    indices: new Uint32Array(indices),
    faces,
  };
}

/** The first and last leaf as the two faces of a sheet. */
function sheetOf(
  board: readonly { x: number; y: number; along: number }[],
  middle: readonly { x: number; y: number; along: number }[],
  height: number,
): MeshData {
  const grids = [board, middle].map((leaf) => {
    const grid = gridOf(leaf.length, 2);
    leaf.forEach(({ x, y }, i) => {
      grid.points.set([x, y, -height / 2, x, y, height / 2], 6 * i);
    });
    return grid;
  });
  const uvs = new Float64Array(4 * board.length);
  board.forEach(({ along }, i) => {
    uvs.set([along, 0, along, height], 4 * i);
  });
  const solid = gridSolid({
    part: 'backPages',
    outer: grids[0]!,
    inner: grids[1]!,
    normals: profileNormals(board),
    uvs,
    faces: { outer: 'pageFace', inner: 'pageFace', edge: 'pageEdge' },
  });
  // The two faces are not parallel: the middle leaf has normals of its own.
  const own = profileNormals(middle);
  for (let k = 0; k < own.length; k++) solid.normals[own.length + k] = -own[k]!;
  return solid;
}

function profileNormals(leaf: readonly { x: number; y: number }[]): Float64Array {
  const normals = new Float64Array(6 * leaf.length);
  leaf.forEach((_, i) => {
    let [nx, ny] = [0, 0];
    for (const [a, b] of [
      [leaf[Math.max(0, i - 1)]!, leaf[i]!],
      [leaf[i]!, leaf[Math.min(leaf.length - 1, i + 1)]!],
    ] as const) {
      const length = Math.hypot(b.x - a.x, b.y - a.y);
      if (length < TOLERANCE.length) continue;
      nx += (b.y - a.y) / length;
      ny -= (b.x - a.x) / length;
    }
    const length = Math.hypot(nx, ny) || 1;
    normals.set([nx / length, ny / length, 0, nx / length, ny / length, 0], 6 * i);
  });
  return normals;
}
