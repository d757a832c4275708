import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useRef } from 'react';
import type { BufferGeometry, InstancedMesh, Material, Matrix4 } from 'three';

interface InstancesProps {
  readonly name: string;
  /** Owned by this component from here on: disposed when replaced. */
  readonly geometry: BufferGeometry;
  readonly material: Material;
  readonly places: readonly Matrix4[];
}

/** One geometry drawn at many places. */
export function Instances({ name, geometry, material, places }: InstancesProps) {
  const mesh = useRef<InstancedMesh>(null);
  const invalidate = useThree((state) => state.invalidate);
  useLayoutEffect(() => {
    if (!mesh.current) return;
    for (const [i, place] of places.entries()) mesh.current.setMatrixAt(i, place);
    mesh.current.instanceMatrix.needsUpdate = true;
    mesh.current.computeBoundingSphere();
    invalidate();
  }, [places, invalidate]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  if (places.length === 0) return null;
  return (
    <instancedMesh
      key={places.length}
      ref={mesh}
      name={name}
      args={[geometry, material, places.length]}
      castShadow
      receiveShadow
    />
  );
}
