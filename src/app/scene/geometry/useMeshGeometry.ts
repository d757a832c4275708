import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useState } from 'react';
import { BufferAttribute, BufferGeometry, Sphere } from 'three';
import type { MeshData } from '../../../core/index.ts';
import { FACES } from '../material/coverMaterials.ts';
import { cutDepth } from './cutDepth.ts';

/** A geometry that follows a mesh: its buffers are written in place while their sizes stay the same. */
export function useMeshGeometry(mesh: MeshData): BufferGeometry {
  const [geometry] = useState(() => new BufferGeometry());
  const invalidate = useThree((state) => state.invalidate);

  useLayoutEffect(() => {
    const { position, normal, uv } = geometry.attributes;
    const index = geometry.getIndex();
    const isResized = position?.array.length !== mesh.positions.length || index?.array.length !== mesh.indices.length;
    if (isResized) {
      // The renderer keeps buffers by attribute, and gives back those of the attributes that are there now.
      geometry.dispose();
      geometry.setAttribute('position', new BufferAttribute(mesh.positions.slice(), 3));
      geometry.setAttribute('normal', new BufferAttribute(mesh.normals.slice(), 3));
      geometry.setAttribute('uv', new BufferAttribute(mesh.uvs.slice(), 2));
      geometry.setIndex(new BufferAttribute(mesh.indices.slice(), 1));
      // Which vertices lie where in a cut edge changes with their number alone.
      if (mesh.faces.some(({ face }) => face === 'cutEdge'))
        geometry.setAttribute('depth', new BufferAttribute(cutDepth(mesh), 1));
    } else {
      write(position, mesh.positions);
      write(normal, mesh.normals);
      write(uv, mesh.uvs);
      // Solids of one shape share their triangles, which are then not sent again.
      if (geometry.userData.indices !== mesh.indices) write(index, mesh.indices);
    }
    geometry.userData.indices = mesh.indices;
    geometry.clearGroups();
    for (const { face, start, count } of mesh.faces) geometry.addGroup(start, count, FACES.indexOf(face));
    geometry.computeBoundingBox();
    geometry.boundingSphere = geometry.boundingBox!.getBoundingSphere(geometry.boundingSphere ?? new Sphere());
    invalidate();
  }, [geometry, mesh, invalidate]);

  useEffect(() => () => geometry.dispose(), [geometry]);
  return geometry;
}

function write(
  known: Pick<BufferAttribute, 'array' | 'needsUpdate'> | null | undefined,
  values: Float32Array | Uint32Array,
): void {
  if (!known) return;
  known.array.set(values);
  known.needsUpdate = true;
}
