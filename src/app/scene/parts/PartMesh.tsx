import type { MeshData } from '../../../core/index.ts';
import { useMeshGeometry } from '../geometry/useMeshGeometry.ts';
import { type CoverMaterials, materialsOf } from '../material/coverMaterials.ts';

/** One solid of the assembly. */
export function PartMesh({ mesh, materials }: { mesh: MeshData; materials: CoverMaterials }) {
  const geometry = useMeshGeometry(mesh);
  return (
    <mesh name={mesh.part} geometry={geometry} material={materialsOf(materials, mesh.part)} castShadow receiveShadow />
  );
}
