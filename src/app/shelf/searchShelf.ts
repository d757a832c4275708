import { isRecord } from '../../core/index.ts';
import type { ShelfJob } from './shelfSchema.ts';

/** Lower case without accents. */
const plain = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();

/** What a job can be found by: its name, and the kind, sizes, seam and pockets that it names. */
function words(job: ShelfJob): string {
  const { book, seam, pockets } = job.document;
  const named = [book, seam, pockets].filter(isRecord).flatMap((part) => Object.values(part));
  return plain([job.name, ...named.filter((value) => typeof value !== 'object')].join(' '));
}

/** The jobs that contain every word of `text`, in their order; all for an empty text. */
export function searchShelf(jobs: readonly ShelfJob[], text: string): readonly ShelfJob[] {
  const wanted = plain(text).split(/\s+/).filter(Boolean);
  return wanted.length === 0 ? jobs : jobs.filter((job) => wanted.every((word) => words(job).includes(word)));
}
