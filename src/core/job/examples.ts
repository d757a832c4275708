import choirBook from '../../../public/jobs/choir-book.json' with { type: 'json' };
import shoreGuide from '../../../public/jobs/shore-guide.json' with { type: 'json' };
import tideLedger from '../../../public/jobs/tide-ledger.json' with { type: 'json' };
import type { JobDocument } from './jobDocument.ts';
import { inCurrentVersion } from './migrate.ts';

type Example = { readonly id: string; readonly document: JobDocument };

/** The three books of the harbour bindery, as job documents of the current version still to be parsed. */
export const EXAMPLE_JOBS: readonly [Example, Example, Example] = [
  { id: 'tide-ledger', document: inCurrentVersion(tideLedger) },
  { id: 'choir-book', document: inCurrentVersion(choirBook) },
  { id: 'shore-guide', document: inCurrentVersion(shoreGuide) },
];
