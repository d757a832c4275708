import { Matrix4, Vector3 } from 'three';
import type { FoldedHole } from '../../../core/index.ts';

/**
 * Axes of the stretch from a hole to the next: x along the seam, y out of the grain side, z toward the cut edge. They
 * are right-handed on every edge, since an instance cannot be mirrored: where the seam runs the other way, they start
 * at the next hole and point back.
 */
export function seamFrame({ at, along, out, edgeward, pitch }: FoldedHole): Matrix4 {
  const y = new Vector3(...out);
  const z = new Vector3(...edgeward);
  const x = y.clone().cross(z).normalize();
  const seam = new Vector3(...along);
  const origin = new Vector3(...at);
  if (x.dot(seam) < 0) origin.addScaledVector(seam, pitch);
  return new Matrix4().makeBasis(x, y, z).setPosition(origin);
}
