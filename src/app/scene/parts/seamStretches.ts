import { Vector3 } from 'three';
import type { FoldedHole, Vec3 } from '../../../core/index.ts';

/** Two holes farther apart than this many pitches belong to different rows. */
const FARTHEST = 1.6;

/**
 * Stretches of a seam from each hole straight to the next of its row: `along` and `pitch` lead to where that hole is on
 * the folded cover, the other axes are midway between both and square to it.
 */
export function seamStretches(seam: readonly FoldedHole[]): FoldedHole[] {
  return seam.flatMap((hole, i) => {
    const next = seam[(i + 1) % seam.length]!;
    const way = vector(next.at).sub(vector(hole.at));
    const distance = way.length();
    if (distance < 1e-6 || distance > FARTHEST * hole.pitch) return [];
    const along = way.divideScalar(distance);
    const out = squareTo(vector(hole.out).add(vector(next.out)), along);
    const edgeward = along.clone().cross(out);
    if (edgeward.dot(vector(hole.edgeward)) < 0) edgeward.negate();
    return [
      {
        at: hole.at,
        along: along.toArray(),
        out: out.toArray(),
        edgeward: edgeward.toArray(),
        pitch: distance,
        stack: Math.min(hole.stack, next.stack),
      },
    ];
  });
}

const vector = (v: Vec3): Vector3 => new Vector3(...v);

const squareTo = (v: Vector3, axis: Vector3): Vector3 => v.addScaledVector(axis, -v.dot(axis)).normalize();
