import type { CoverDesign } from '../fold/coverDesign.ts';
import { circularSegment } from '../math/circularSegment.ts';
import { mouthSagitta } from '../pattern/mouth.ts';

/** How far the mouth of a pocket is scooped at a distance v from the tail edge, mm; null where it is straight. */
export function mouthScoop({ job, pieces }: CoverDesign): ((v: number) => number) | null {
  const sagitta = mouthSagitta(job, pieces);
  if (sagitta === 0) return null;
  const { height } = pieces.outside;
  const { radius } = circularSegment(height, sagitta);
  return (v) => Math.sqrt(radius ** 2 - (v - height / 2) ** 2) - (radius - sagitta);
}
