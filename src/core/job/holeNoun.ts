import type { Job } from './jobSchema.ts';

/** What the openings of a seam are called: lace goes through slits, unless a drive punch makes round holes for it. */
export const holeNoun = ({ seam }: Pick<Job, 'seam'>): 'holes' | 'slits' =>
  seam.method === 'lacing' && seam.iron?.kind !== 'drive punch' ? 'slits' : 'holes';
