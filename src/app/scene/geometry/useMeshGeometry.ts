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
    const attribute = (name: string, values: Float32Array, size: number): boolean =>
      write(geometry.getAttribute(name), values, size, (made) => geometry.setAttribute(name, made));
    const resized = [
      attribute('position', mesh.positions, 3),
      attribute('normal', mesh.normals, 3),
      attribute('uv', mesh.uvs, 2),
      geometry.userData.indices !== mesh.indices &&
        write(geometry.getIndex(), mesh.indices, 1, (made) => geometry.setIndex(made)),
    ].includes(true);
    // Solids of one shape share their triangles, which are then not sent again.
    geometry.userData.indices = mesh.indices;
    // Which vertices lie where in a cut edge changes with their number alone.
    if (resized && mesh.faces.some(({ face }) => face === 'cutEdge'))
      geometry.setAttribute('depth', new BufferAttribute(cutDepth(mesh), 1));
    // The renderer keeps buffers by attribute; dropping them makes it take the new ones.
    if (resized) geometry.dispose();
    geometry.clearGroups();
    for (const { face, start, count } of mesh.faces) geometry.addGroup(start, count, FACES.indexOf(face));
    geometry.computeBoundingBox();
    geometry.boundingSphere = geometry.boundingBox!.getBoundingSphere(geometry.boundingSphere ?? new Sphere());
    invalidate();
  }, [geometry, mesh, invalidate]);

  useEffect(() => () => geometry.dispose(), [geometry]);
  return geometry;
}

/** Writes values into the known attribute, or sets a new one if their number differs. Returns whether it is new. */
function write(
  known: ReturnType<BufferGeometry['getAttribute']> | null | undefined,
  values: Float32Array | Uint32Array,
  size: number,
  set: (made: BufferAttribute) => void,
): boolean {
  if (known?.array.length === values.length) {
    known.array.set(values);
    known.needsUpdate = true;
    return false;
  }
  set(new BufferAttribute(values.slice(), size));
  return true;
}
