import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { soundJob } from '../../jobArbitrary.ts';

type Part = 'seam' | 'making' | 'pockets' | 'doubts';

/** A ledger in ranged leather, with other parts of the job where they are given. */
export const jobWith = ({ book, leather, ...rest }: Partial<Record<'book' | 'leather' | Part, object>> = {}) =>
  soundJob({
    format: 'coverwright-job',
    version: 2,
    book: { width_mm: 165, height_mm: 240, thickness_mm: 28, ...book },
    leather: { outside: { min_mm: 1.5, max_mm: 2 }, ...leather },
    ...rest,
  });

/** The document of a laced ledger in ranged leather, with other parts where `change` gives them. */
export const ledgerDocument = (change: object = {}) => ({
  format: 'coverwright-job' as const,
  version: 2 as const,
  book: { width_mm: 165, height_mm: 240, thickness_mm: 28, boardThickness_mm: 2.5 },
  leather: { outside: { min_mm: 1.5, max_mm: 2 } },
  seam: { method: 'lacing' as const },
  ...change,
});
export const ledgerDesign = (change: object = {}) => coverDesign(soundJob(ledgerDocument(change)));
