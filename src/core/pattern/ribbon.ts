import { given, lengthSum, part } from './cutSums.ts';
import type { CutLength } from './drawing.ts';
import type { PatternSource } from './seam.ts';

/**
 * Length of a marker ribbon: fixed end + diagonal of the page + tail, so that it comes out at the far corner and can be
 * held. Common practice, no source. The page is the board less its squares. It is no leather, and keeps its size in making.
 * @returns null where the job has none
 */
export function ribbonOf({ job, needs }: PatternSource): CutLength | null {
  const { ribbon } = job.construction;
  if (ribbon === null) return null;
  const { width, height, square } = needs.thick.book;
  const sum = lengthSum(job, [
    given('fixed at the head', ribbon.fixed_mm),
    part('diagonal of the page', Math.hypot(width - square, height - 2 * square)),
    given('tail', ribbon.tail_mm),
  ]);
  return { name: 'Ribbon', count: ribbon.count, sum };
}
