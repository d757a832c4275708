import type { MeshData, PartName } from '../meshData.ts';

/** Solids of one face each as one mesh. */
export function joined(part: PartName, meshes: readonly MeshData[]): MeshData {
  const face = meshes[0]!.faces[0]!.face;
  let first = 0;
  const indices = meshes.flatMap((mesh) => {
    const own = Array.from(mesh.indices, (index) => index + first);
    first += mesh.positions.length / 3;
    return own;
  });
  const all = (name: 'positions' | 'normals' | 'uvs'): Float32Array =>
    Float32Array.from(meshes.flatMap((mesh) => [...mesh[name]]));
  return {
    part,
    positions: all('positions'),
    normals: all('normals'),
    uvs: all('uvs'),
    indices: Uint32Array.from(indices),
    faces: [{ face, start: 0, count: indices.length }],
  };
}
