import { openJob } from '../../core/index.ts';
import type { ShelfKind } from './shelfKind.ts';

export const JOBS: ShelfKind = {
  records: 'jobs',
  versions: 'versions',
  noun: 'job',
  untitled: 'Untitled cover',
  isNamedById: false,
  open: openJob,
  // No work is done on the copy yet.
  copied: ({ made: _, ...cover }) => cover,
};
