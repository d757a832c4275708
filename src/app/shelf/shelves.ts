import type { ShelfJob } from './shelfSchema.ts';

/** In which order jobs stand. */
export type ShelfOrder = 'made' | 'name';

/** Jobs that stand on one shelf, under its name. */
interface Shelf {
  readonly title: string;
  readonly jobs: readonly ShelfJob[];
}

let month: Intl.DateTimeFormat | undefined;

const TITLES: Readonly<Record<ShelfOrder, (job: ShelfJob) => string>> = {
  made: ({ savedAt }) => {
    month ??= new Intl.DateTimeFormat('en-GB', { month: 'long', year: 'numeric' });
    return month.format(savedAt);
  },
  name: ({ name }) => name.trim().charAt(0).toUpperCase(),
};

/**
 * Jobs on shelves: those made last first, by month; or by name, by its first letter.
 * @param jobs those made last first
 * @param count of jobs that are shown at most
 */
export function shelvesOf(jobs: readonly ShelfJob[], order: ShelfOrder, count: number): readonly Shelf[] {
  const sorted = order === 'made' ? jobs : [...jobs].sort((a, b) => a.name.localeCompare(b.name, 'en'));
  const shelves: { title: string; jobs: ShelfJob[] }[] = [];
  for (const job of sorted.slice(0, count)) {
    const title = TITLES[order](job);
    if (shelves.at(-1)?.title !== title) shelves.push({ title, jobs: [] });
    shelves.at(-1)!.jobs.push(job);
  }
  return shelves;
}
