import {
  DirectionalLight,
  HemisphereLight,
  Mesh,
  MeshBasicMaterial,
  PerspectiveCamera,
  RingGeometry,
  Scene,
  Vector3,
  WebGLRenderer,
} from 'three';
import type { CoverDesign } from '../../../core/index.ts';
import { coverModel } from './coverModel.ts';

/** The ring that shows where the book would lie, metres. */
const RING = { inner: 0.05, outer: 0.06 } as const;

/**
 * Shows the cover in its true size in what the camera of the device sees: a ring follows the surface that it points at (WebXR Hit
 * Test Module), and a tap lays the book there. Ends with the session.
 * @param session of the kind `immersive-ar`, with `hit-test`
 */
export async function placeOnTable(design: CoverDesign, session: XRSession): Promise<void> {
  const renderer = new WebGLRenderer({ alpha: true, antialias: true });
  renderer.xr.enabled = true;
  renderer.xr.setReferenceSpaceType('local');
  await renderer.xr.setSession(session);
  const source = await session.requestHitTestSource?.({ space: await session.requestReferenceSpace('viewer') });
  if (source === undefined) throw new Error('This device finds no table.');

  const scene = new Scene();
  const sun = new DirectionalLight('#fff4e0', 2);
  sun.position.set(0.5, 2, 1);
  const ring = new Mesh(new RingGeometry(RING.inner, RING.outer, 48).rotateX(-Math.PI / 2), new MeshBasicMaterial());
  ring.matrixAutoUpdate = false;
  ring.visible = false;
  const model = coverModel(design);
  model.visible = false;
  scene.add(new HemisphereLight('#ffffff', '#b8a888', 1.5), sun, ring, model);

  const camera = new PerspectiveCamera();
  const eye = new Vector3();
  session.addEventListener('select', () => {
    if (!ring.visible) return;
    model.position.setFromMatrixPosition(ring.matrix);
    // Upright on the table, its head away from whoever holds the device.
    renderer.xr.getCamera().getWorldPosition(eye);
    model.rotation.set(0, Math.atan2(eye.x - model.position.x, eye.z - model.position.z), 0);
    model.visible = true;
  });
  renderer.setAnimationLoop((_time, frame?: XRFrame) => {
    const space = renderer.xr.getReferenceSpace();
    const pose = space && frame?.getHitTestResults(source)[0]?.getPose(space);
    ring.visible = Boolean(pose);
    if (pose) ring.matrix.fromArray(pose.transform.matrix);
    renderer.render(scene, camera);
  });
  await new Promise<void>((resolve) => {
    session.addEventListener('end', () => resolve());
  });
  renderer.setAnimationLoop(null);
  renderer.dispose();
}
