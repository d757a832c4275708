import type { Job } from '../job/jobSchema.ts';
import type { Pieces } from './pieces.ts';

/** Depth of a scooped mouth in its middle, mm: its share of the pocket depth, at most a quarter of the height. */
export function mouthSagitta({ construction }: Job, { pocketDepth, outside }: Pieces): number {
  return construction.mouth === 'straight' ? 0 : Math.min(construction.mouthCurve * pocketDepth, outside.height / 4);
}

/** Depth of a scooped mouth where it crosses the seam line, mm: of an arc R = h^2/(8 s) + s/2, a margin from its end. */
export function mouthInset(job: Job, pieces: Pieces): number {
  const sagitta = mouthSagitta(job, pieces);
  if (sagitta === 0) return 0;
  const { height } = pieces.outside;
  const radius = height ** 2 / (8 * sagitta) + sagitta / 2;
  return Math.sqrt(radius ** 2 - (height / 2 - job.seam.edgeMargin_mm) ** 2) - (radius - sagitta);
}
