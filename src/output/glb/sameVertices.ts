import type { ModelFace, ModelMesh } from '../model/modelParts.ts';
import { type FlatPlace, flatLookup } from './flatLookup.ts';
import { vertexNormals } from './vertexNormals.ts';

/** The two sides of a leather; each covers the flat pattern once. */
const SIDES: readonly ModelFace[] = ['grain', 'flesh'];

/**
 * A corner of a cut edge lies on one side, within single precision, and a leather's thickness from the other. Its
 * distance to its side is at most this share of that to the other; else it belongs to neither.
 */
const CLEARLY_NEARER = 0.25;

/**
 * Gives meshes of a part the vertices of `wanted`, so that they can be morphed into it: each vertex is looked up by its
 * side and its place on the flat pattern, which is the same in every pose.
 * @returns a function that returns the mesh itself if its vertices match already, and null if they cannot be matched
 */
export function sameVertices(wanted: ModelMesh): (mesh: ModelMesh) => ModelMesh | null {
  let sides: Uint8Array | null | undefined;
  return (mesh) => {
    if (isAlike(mesh, wanted)) return mesh;
    if (sides === undefined) sides = sidesOf(wanted);
    if (sides === null) return null;
    const lookups = SIDES.map((side) => flatLookup(mesh.uvs, faceIndices(mesh, side)));
    const positions = new Float32Array(wanted.positions.length);
    for (let i = 0; i < sides.length; i++) {
      const place = lookups[sides[i]!]!(wanted.uvs[2 * i]!, wanted.uvs[2 * i + 1]!);
      if (place === null) return null;
      positions.set(pointAt(mesh, place), 3 * i);
    }
    return { ...wanted, positions, normals: vertexNormals(positions, wanted.indices, wanted.normals) };
  };
}

const pointAt = ({ positions }: ModelMesh, { corners, shares }: FlatPlace): [number, number, number] => {
  const along = (k: number): number =>
    shares[0] * positions[3 * corners[0] + k]! +
    shares[1] * positions[3 * corners[1] + k]! +
    shares[2] * positions[3 * corners[2] + k]!;
  return [along(0), along(1), along(2)];
};

const isAlike = (a: ModelMesh, b: ModelMesh): boolean =>
  a.positions.length === b.positions.length &&
  a.indices.length === b.indices.length &&
  a.indices.every((index, i) => index === b.indices[i]);

/** The triangles of one face. */
function faceIndices({ faces, indices }: ModelMesh, wanted: ModelFace): Uint32Array {
  const runs = faces.filter(({ face }) => face === wanted);
  const found = new Uint32Array(runs.reduce((sum, { count }) => sum + count, 0));
  let at = 0;
  for (const { start, count } of runs) {
    found.set(indices.subarray(start, start + count), at);
    at += count;
  }
  return found;
}

/** Index in `SIDES` of each vertex's side; null for a part that is not leather. */
function sidesOf(mesh: ModelMesh): Uint8Array | null {
  if (!SIDES.every((side) => mesh.faces.some(({ face }) => face === side))) return null;
  const sides = new Uint8Array(mesh.positions.length / 3);
  const lookups = SIDES.map((side) => flatLookup(mesh.uvs, faceIndices(mesh, side)));
  for (const { face, start, count } of mesh.faces)
    for (const vertex of new Set(mesh.indices.subarray(start, start + count))) {
      const own = SIDES.indexOf(face);
      const side = own >= 0 ? own : nearerSide(mesh, vertex, lookups);
      if (side === null) return null;
      sides[vertex] = side;
    }
  return sides;
}

/** Index in `SIDES` of the side on which a corner of a cut edge lies; null for neither. */
function nearerSide(mesh: ModelMesh, vertex: number, lookups: readonly ReturnType<typeof flatLookup>[]): number | null {
  const [grain, flesh] = lookups.map((lookup) => {
    const place = lookup(mesh.uvs[2 * vertex]!, mesh.uvs[2 * vertex + 1]!);
    if (place === null) return Number.POSITIVE_INFINITY;
    return Math.hypot(...pointAt(mesh, place).map((value, k) => value - mesh.positions[3 * vertex + k]!));
  }) as [number, number];
  if (grain <= CLEARLY_NEARER * flesh) return 0;
  return flesh <= CLEARLY_NEARER * grain ? 1 : null;
}
