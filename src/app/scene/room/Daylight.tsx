import { useThree } from '@react-three/fiber';
import { useLayoutEffect, useMemo } from 'react';
import { type Box3, Object3D, Vector3 } from 'three';
import type { Look } from '../material/coverMaterials.ts';
import { SCHEMES, type Scheme } from '../material/palette.ts';
import { daylightEnvironment } from './daylightEnvironment.ts';

/** Direction of the window's light. */
const FROM_WINDOW = new Vector3(-0.62, 1, 0.42).normalize();

/** Daylight reflected by bench and floor, which lights the underside. */
const FROM_BELOW = new Vector3(0.12, -1, -0.2);

/** Light of the workshop: a window from the left, sky and bench around it, with shadows in the full look. */
export function Daylight({ bounds, look, scheme }: { bounds: Box3; look: Look; scheme: Scheme }) {
  const { sky, ground, daylight } = SCHEMES[scheme];
  const full = look === 'full';
  return (
    <>
      {full && <Surroundings intensity={0.55 * daylight} />}
      <hemisphereLight args={[sky, ground, (full ? 0.35 : 1.9) * daylight]} />
      <directionalLight position={FROM_BELOW} intensity={4.5 * daylight} color={ground} />
      <Window bounds={bounds} intensity={(full ? 2.5 : 2) * daylight} shadow={full} />
    </>
  );
}

function Surroundings({ intensity }: { intensity: number }) {
  const { gl, scene, invalidate } = useThree();
  useLayoutEffect(() => {
    const { texture, dispose } = daylightEnvironment(gl);
    scene.environment = texture;
    invalidate();
    return () => {
      scene.environment = null;
      dispose();
    };
  }, [gl, scene, invalidate]);
  useLayoutEffect(() => {
    scene.environmentIntensity = intensity;
    invalidate();
  }, [scene, intensity, invalidate]);
  return null;
}

function Window({ bounds, intensity, shadow }: { bounds: Box3; intensity: number; shadow: boolean }) {
  const target = useMemo(() => new Object3D(), []);
  const centre = bounds.getCenter(new Vector3());
  const radius = bounds.getSize(new Vector3()).length() / 2 + 20;
  const position = centre.clone().addScaledVector(FROM_WINDOW, 2 * radius);
  return (
    <>
      <primitive object={target} position={centre} />
      <directionalLight
        // A shadow camera keeps its first extent; a new light takes the new one.
        key={Math.ceil(radius / 40)}
        position={position}
        target={target}
        intensity={intensity}
        color="#fff6e8"
        castShadow={shadow}
        shadow-mapSize={[1024, 1024]}
        shadow-normalBias={0.03}
        shadow-bias={-0.0004}
        shadow-radius={9}
        shadow-intensity={0.8}
      >
        <orthographicCamera attach="shadow-camera" args={shadowExtent(radius)} />
      </directionalLight>
    </>
  );
}

function shadowExtent(radius: number): [number, number, number, number, number, number] {
  const reach = Math.ceil(radius / 40) * 40;
  return [-reach, reach, reach, -reach, 1, 4 * reach];
}
