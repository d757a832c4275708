import { cross3, dot3, tripleAt } from '../math/vec3.ts';
import type { MeshData } from './meshData.ts';

/** What is wrong with a mesh as a closed solid; empty when nothing is. */
export function validateSolid(mesh: MeshData): string[] {
  const faults: string[] = [];
  for (const name of ['positions', 'normals', 'uvs'] as const)
    if (!mesh[name].every(Number.isFinite)) faults.push(`${mesh.part}: ${name} are not all finite`);
  let next = 0;
  for (const { start, count } of mesh.faces) {
    if (start !== next) faults.push(`${mesh.part}: faces leave a gap or overlap at index ${start}`);
    next = start + count;
  }
  if (next !== mesh.indices.length) faults.push(`${mesh.part}: faces end at ${next} of ${mesh.indices.length} indices`);
  const ids = weld(mesh);
  const edges = new Map<number, number>();
  const welded = mesh.indices.map((vertex) => ids[vertex]!);
  welded.forEach((from, k) => {
    const to = welded[k % 3 === 2 ? k - 2 : k + 1]!;
    if (from === to) return;
    const key = Math.min(from, to) * ids.length + Math.max(from, to);
    edges.set(key, (edges.get(key) ?? 0) + (from < to ? 1 : -1));
  });
  const open = [...edges.values()].filter((balance) => balance !== 0).length;
  if (open > 0) faults.push(`${mesh.part}: ${open} edges are not shared by two opposite triangles`);
  const volume = solidVolume(mesh);
  if (!(volume > 0)) faults.push(`${mesh.part}: volume is ${volume.toFixed(3)} mm3`);
  return faults;
}

/** Volume of a closed solid, mm3: sum over its triangles of a . (b x c) / 6. */
export function solidVolume({ positions, indices }: MeshData): number {
  let volume = 0;
  for (let t = 0; t < indices.length / 3; t++) {
    const [a, b, c] = tripleAt(indices, t);
    volume += dot3(tripleAt(positions, a), cross3(tripleAt(positions, b), tripleAt(positions, c))) / 6;
  }
  return volume;
}

/** Index of the first vertex at the place of each vertex, so that vertices kept apart for shading count as one. */
export function weld({ positions }: MeshData): Uint32Array {
  const first = new Map<string, number>();
  return Uint32Array.from({ length: positions.length / 3 }, (_, v) => {
    const key = `${positions[3 * v]},${positions[3 * v + 1]},${positions[3 * v + 2]}`;
    const id = first.get(key) ?? v;
    if (id === v) first.set(key, v);
    return id;
  });
}
