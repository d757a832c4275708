import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry, type Material } from 'three';
import type { SeamMesh } from '../../../core/index.ts';

interface StrandMeshProps {
  readonly name: string;
  readonly mesh: SeamMesh;
  readonly material: Material;
  /** Number of indices that are drawn; all without it. */
  readonly shown?: number | undefined;
}

/** Triangles of the seam. While uvs and indices stay the same lists, only vertices are written. */
export function StrandMesh({ name, mesh, material, shown }: StrandMeshProps) {
  const invalidate = useThree((state) => state.invalidate);
  const { positions, normals, uvs, indices } = mesh;
  const geometry = useMemo(() => {
    const made = new BufferGeometry();
    made.setAttribute('position', new BufferAttribute(new Float32Array((3 * uvs.length) / 2), 3));
    made.setAttribute('normal', new BufferAttribute(new Float32Array((3 * uvs.length) / 2), 3));
    made.setAttribute('uv', new BufferAttribute(uvs, 2));
    made.setIndex(new BufferAttribute(indices, 1));
    return made;
  }, [uvs, indices]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  useLayoutEffect(() => {
    for (const [at, values] of Object.entries({ position: positions, normal: normals })) {
      const attribute = geometry.getAttribute(at);
      attribute.array.set(values);
      attribute.needsUpdate = true;
    }
    geometry.computeBoundingSphere();
    invalidate();
  }, [geometry, positions, normals, invalidate]);
  useLayoutEffect(() => {
    geometry.setDrawRange(0, shown ?? Number.POSITIVE_INFINITY);
    invalidate();
  }, [geometry, shown, invalidate]);
  return <mesh name={name} geometry={geometry} material={material} castShadow receiveShadow />;
}
