import type { Job } from '../job/jobSchema.ts';

/** How high the middle of a thread stands over the leather, in thicknesses: it beds in. Judged by eye. */
export const THREAD_STANDS = 0.22;

/** What stands over the leather at a seam along the edge, mm. */
export interface SeamRise {
  /** Over the face at the seam line. */
  readonly face: number;
  /** Round the cut edge; 0 where nothing goes over it. */
  readonly edge: number;
}

/**
 * Thread stands over the seam line by what does not bed in, lace by its thickness. Over the edge goes one lace in whip
 * lacing, and one across the other in the plait of every loop.
 */
export function seamRise({ seam, supplies, finish }: Job): SeamRise {
  if (seam.method === 'stitching') return { face: (THREAD_STANDS + 0.5) * finish.thread_mm, edge: 0 };
  const { laceThickness_mm: thickness } = supplies;
  const layers = seam.style === 'running' ? 0 : seam.style === 'whip' ? 1 : 2;
  return { face: thickness, edge: layers * thickness };
}
