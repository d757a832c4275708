import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo } from 'react';
import { type Box3, PlaneGeometry, Vector3 } from 'three';
import type { SlicePlane } from '../geometry/slicePlane.ts';
import type { Look } from '../material/coverMaterials.ts';
import { SCHEMES, type Scheme } from '../material/palette.ts';
import { benchMaterial } from './benchMaterial.ts';
import { footShadow } from './footShadow.ts';

/** Rules on the cutting surface: pitch in mm, and number of pitches between strong rules. */
const RULES = { mm: { pitch: 10, strong: 5 }, in: { pitch: 12.7, strong: 2 } } as const;

interface BenchProps {
  /** Extent of the work that lies on it, mm. */
  readonly bounds: Box3;
  /** Changes with whatever may cast a shadow. */
  readonly work: unknown;
  readonly cut: SlicePlane | null;
  readonly units: 'mm' | 'in';
  readonly look: Look;
  readonly scheme: Scheme;
}

/** The cutting surface that the work lies on, ruled to scale. From below it is transparent. */
export function Bench({ bounds, work, cut, units, look, scheme }: BenchProps) {
  const { gl, scene, invalidate } = useThree();
  const shadow = useMemo(footShadow, []);
  const geometry = useMemo(() => new PlaneGeometry(2, 2).rotateX(-Math.PI / 2), []);
  const { material, uniforms } = useMemo(() => benchMaterial(look, shadow), [look, shadow]);
  useEffect(() => () => material.dispose(), [material]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  useEffect(() => () => shadow.dispose(), [shadow]);

  const centre = bounds.getCenter(new Vector3());
  const reach = bounds.getSize(new Vector3()).length() * 1.5;
  useLayoutEffect(() => {
    const { bench, rule } = SCHEMES[scheme];
    const { pitch, strong } = RULES[units];
    material.color.set(bench);
    uniforms.rules.value.set(pitch, strong, rule, scheme === 'dark' ? 1 : 0);
    uniforms.fade.value.set(centre.x, centre.z, reach);
    invalidate();
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: redrawn when the work changes
  useLayoutEffect(() => shadow.draw(gl, scene, bounds, cut), [shadow, gl, scene, bounds, cut, work]);
  return (
    <mesh
      name="bench"
      geometry={geometry}
      material={material}
      position={[centre.x, bounds.min.y - 0.15, centre.z]}
      scale={[reach, 1, reach]}
      receiveShadow
      renderOrder={-1}
    />
  );
}
