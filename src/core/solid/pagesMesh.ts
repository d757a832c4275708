import type { BookModel } from '../book/bookModel.ts';
import { addScaled, heading, leftOf, subtract, type Vec2 } from '../math/vec2.ts';
import { caseShape } from './caseMesh.ts';
import type { MeshData } from './meshData.ts';
import { profileSolid } from './profileSolid.ts';

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

/**
 * Half text block at the back, fanning about the joint's inner corner.
 *
 * A leaf at depth q leaves the spine straight, turns by the swing on radius q about the corner and goes on parallel to the
 * board. That map takes every place of the closed block to one place of the open one, so leaves cannot cross, their
 * length is kept and the open fore-edge is bevelled.
 */
export function backPagesMesh(book: BookModel, place: PagesPlace): MeshData {
  const shape = leafShape(book, place);
  const leaves = Array.from({ length: LEAVES + 1 }, (_, k) => leafPoints(shape, place, k / LEAVES));
  return blockSolid(leaves, book.height - 2 * book.square);
}

/** Distance of the half block's middle plane and of its board side from the board, and the ends of each leaf. */
interface LeafShape {
  readonly corner: Vec2;
  readonly tilt: number;
  depth(share: number, along: number): number;
  start(share: number): number;
  readonly length: number;
  /** Where the leaves have given way to the whole thickness of the pocket. */
  readonly given: number;
}

function leafShape(book: BookModel, { tilt, pocket, mouth }: PagesPlace): LeafShape {
  // The corner is clear of the board at every swing from b on, and lies beyond a spine piece that runs on over its edge.
  const from = Math.min(Math.max(book.board, book.edgeRadius) + PLAY, book.width / 2);
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  // Back half, drawn with the book above: the board's inner face is at the bottom, depth counts upward.
  const corner: Vec2 = [from * c + book.board * s, -(book.thickness / 2 + from * s - book.board * c)];
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

interface LeafPoint {
  readonly at: Vec2;
  /** From the spine end along the leaf, and depth from the closed board, mm. */
  readonly along: number;
  readonly depth: number;
}

function leafPoints(shape: LeafShape, { swing }: PagesPlace, share: number): LeafPoint[] {
  const start = shape.start(share);
  const end = start + Math.max(1, shape.length);
  // Length taken up by the turn: along = depth(along) swing; the depth changes little over it.
  let turned = 0;
  for (let k = 0; k < 6; k++) turned = shape.depth(share, turned) * swing;
  const first = Math.max(start, Math.min(0, end));
  const arcEnd = Math.max(first, Math.min(turned, end));
  const places = [start, (start + first) / 2];
  for (let k = 0; k <= ARC_STEPS; k++) places.push(first + ((arcEnd - first) * k) / ARC_STEPS);
  const knee = Math.max(arcEnd, Math.min(shape.given, end));
  for (let k = 1; k <= FLAT_STEPS; k++) places.push(arcEnd + ((knee - arcEnd) * k) / FLAT_STEPS);
  for (let k = 1; k <= FLAT_STEPS; k++) places.push(knee + ((end - knee) * k) / FLAT_STEPS);
  return places.map((along) => {
    const depth = shape.depth(share, along);
    const [x, y] = bent(along, depth, swing);
    const board = heading(-shape.tilt);
    return { at: addScaled(addScaled(shape.corner, board, x), leftOf(board), y), along: along - start, depth };
  });
}

/** Turns a place of the closed block about the corner: coordinates along and into the closed block. */
function bent(along: number, depth: number, swing: number): Vec2 {
  if (along <= 0 || swing === 0) return [along, depth];
  const angle = depth > 0 ? Math.min(swing, along / depth) : swing;
  const rest = along - angle * depth;
  // The back board swings away clockwise, from along toward the board's outer side.
  return [depth * Math.sin(angle) + rest * Math.cos(angle), depth * Math.cos(angle) - rest * Math.sin(angle)];
}

/** Closes the block: two page faces, and edges at fore-edge, spine, head and tail with u across the leaves. */
function blockSolid(leaves: readonly (readonly LeafPoint[])[], height: number): MeshData {
  const places = leaves[0]!.length;
  const [board, middle] = [leaves[0]!, leaves[LEAVES]!];
  const sheet = profileSolid(
    board.map(({ at }) => at),
    middle.map(({ at }) => at),
    board.map(({ along }) => along),
    height,
    { part: 'backPages', faces: { outer: 'pageFace', inner: 'pageFace', edge: 'pageEdge' } },
  );
  // The two faces are the sheet's, two rows of vertices each; its edges give way to ones that run across the leaves.
  const faces = sheet.faces.slice(0, 2);
  const vertices = 4 * places;
  const edgeStart = faces[0]!.count + faces[1]!.count;
  const positions = [...sheet.positions.subarray(0, 3 * vertices)];
  const normals = [...sheet.normals.subarray(0, 3 * vertices)];
  const uvs = [...sheet.uvs.subarray(0, 2 * vertices)];
  const indices = [...sheet.indices.subarray(0, edgeStart)];
  const across = (k: number, i: number): number => leaves[k]![i]!.depth - board[i]!.depth;
  for (const i of [0, places - 1]) {
    // Spine end and fore-edge: strips across the leaves.
    const base = positions.length / 3;
    const way = i === 0 ? -1 : 1;
    leaves.forEach((leaf, k) => {
      const [dx, dy] = subtract(leaves[Math.min(LEAVES, k + 1)]![i]!.at, leaves[Math.max(0, k - 1)]![i]!.at);
      const length = Math.hypot(dx, dy) || 1;
      for (const z of [-height / 2, height / 2]) {
        positions.push(...leaf[i]!.at, z);
        normals.push((way * dy) / length, (-way * dx) / length, 0);
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
      leaf.forEach(({ at, along }, i) => {
        positions.push(...at, (way * height) / 2);
        normals.push(0, 0, way);
        uvs.push(across(k, i), along);
        if (k === 0 || i === 0) return;
        const d = base + k * places + i;
        const [a, b, c] = [d - places - 1, d - places, d - 1];
        if (way > 0) indices.push(a, b, d, a, d, c);
        else indices.push(a, d, b, a, c, d);
      });
    });
  }
  return {
    part: 'backPages',
    positions: new Float32Array(positions),
    normals: new Float32Array(normals),
    uvs: new Float32Array(uvs),
    indices: new Uint32Array(indices),
    faces: [...faces, { face: 'pageEdge', start: edgeStart, count: indices.length - edgeStart }],
  };
}
