import type { Job } from '../job/jobSchema.ts';
import type { Way } from '../leatherTest/testSchema.ts';

/**
 * Which way of the hide bends in a dimension of the cover: folds that decide the wrap run along the height, those at head and tail along
 * the width, and leather bends across its fold.
 */
export const bendWay = (of: 'wrap' | 'height', backbone: Job['making']['backbone']): Way =>
  (of === 'wrap') === (backbone === 'upright') ? 'across' : 'along';
