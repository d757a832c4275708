import type { Job } from '../job/jobSchema.ts';

/**
 * What the maker's hand adds to the room between the seams, mm: a piece cut larger by c with margins wider by m has c - 2 m more.
 * A turned end has no margin at the fore-edge.
 */
export function handOf({ making, pockets }: Pick<Job, 'making' | 'pockets'>): {
  readonly width: number;
  readonly height: number;
} {
  const { margin_mm: margin, cutting_mm: cutting } = making.hand;
  const isTurned = pockets.construction === 'turned';
  return { width: cutting - (isTurned ? 0 : 2 * margin), height: cutting - 2 * margin };
}
