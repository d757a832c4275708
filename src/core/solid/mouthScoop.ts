import type { CoverDesign } from '../fold/coverDesign.ts';
import { circularSegment } from '../math/circularSegment.ts';
import { mouthSagitta } from '../pattern/mouth.ts';

/** Rows over a scooped mouth: so many for each mm of its depth, within bounds. */
const ROWS = { each: 2, least: 9, most: 41 };

/** Rows that follow a scooped mouth, as shares of the way along it, even along its arc; undefined where it is straight. */
export function mouthRows({ job, pieces }: CoverDesign): number[] | undefined {
  const sagitta = mouthSagitta(job, pieces);
  if (sagitta === 0) return undefined;
  const count = Math.max(ROWS.least, Math.min(ROWS.most, Math.ceil(ROWS.each * sagitta)));
  const { halfAngle } = circularSegment(pieces.outside.height, sagitta);
  return Array.from({ length: count }, (_, i) => {
    const angle = halfAngle * ((2 * (i + 1)) / (count + 1) - 1);
    return (1 + Math.sin(angle) / Math.sin(halfAngle)) / 2;
  });
}

/** How far the mouth of a pocket is scooped at a distance v from the tail edge, mm; null where it is straight. */
export function mouthScoop({ job, pieces }: CoverDesign): ((v: number) => number) | null {
  const sagitta = mouthSagitta(job, pieces);
  if (sagitta === 0) return null;
  const { height } = pieces.outside;
  const { radius } = circularSegment(height, sagitta);
  return (v) => Math.sqrt(radius ** 2 - (v - height / 2) ** 2) - (radius - sagitta);
}

/** Distances from either end at which a scooped mouth stands so far in, mm: as `mouthScoop` the other way round. */
export function scoopedAt({ job, pieces }: CoverDesign, depths: readonly number[]): number[] {
  const sagitta = mouthSagitta(job, pieces);
  if (sagitta === 0) return [];
  const { height } = pieces.outside;
  const { radius } = circularSegment(height, sagitta);
  const crossed = depths.filter((depth) => depth > 0 && depth < sagitta);
  return crossed.map((depth) => height / 2 - Math.sqrt(radius ** 2 - (radius - sagitta + depth) ** 2));
}
