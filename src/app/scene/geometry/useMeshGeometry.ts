import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useState } from 'react';
import { BufferAttribute, BufferGeometry } from 'three';
import type { MeshData } from '../../../core/index.ts';
import { FACES } from '../material/coverMaterials.ts';

/** A geometry that follows a mesh: its buffers are written in place while their sizes stay the same. */
export function useMeshGeometry(mesh: MeshData): BufferGeometry {
  const [geometry] = useState(() => new BufferGeometry());
  const invalidate = useThree((state) => state.invalidate);

  useLayoutEffect(() => {
    const resized =
      [
        writeAttribute(geometry, 'position', mesh.positions, 3),
        writeAttribute(geometry, 'normal', mesh.normals, 3),
        writeAttribute(geometry, 'uv', mesh.uvs, 2),
        writeIndex(geometry, mesh.indices),
      ].filter(Boolean).length > 0;
    // The renderer keeps buffers by attribute; dropping them makes it ask for the new ones.
    if (resized) geometry.dispose();
    geometry.clearGroups();
    for (const { face, start, count } of mesh.faces) geometry.addGroup(start, count, FACES.indexOf(face));
    geometry.computeBoundingBox();
    geometry.computeBoundingSphere();
    invalidate();
  }, [geometry, mesh, invalidate]);

  useEffect(() => () => geometry.dispose(), [geometry]);
  return geometry;
}

function writeAttribute(geometry: BufferGeometry, name: string, values: Float32Array, size: number): boolean {
  const known = geometry.getAttribute(name);
  if (known?.array.length === values.length) {
    known.array.set(values);
    known.needsUpdate = true;
    return false;
  }
  geometry.setAttribute(name, new BufferAttribute(values.slice(), size));
  return true;
}

function writeIndex(geometry: BufferGeometry, values: Uint32Array): boolean {
  const known = geometry.getIndex();
  if (known?.array.length === values.length) {
    known.array.set(values);
    known.needsUpdate = true;
    return false;
  }
  geometry.setIndex(new BufferAttribute(values.slice(), 1));
  return true;
}
