import { type Kept, sawShelf } from '../state/keptJob.ts';
import { chooseLate, chooseStart, type Start } from './chooseStart.ts';
import type { Shelf } from './shelf.ts';

type AskedShelf = Pick<Shelf, 'list' | 'keepAsVersion'>;

/** Longest wait of the first drawing for the shelf, ms; it mostly answers within a few. */
const LONGEST_WAIT = 2000;

/** What the page starts with, and what is left to do when the shelf answers too late for that. */
export interface Started {
  readonly start: Start;
  /** Null where the shelf has answered. */
  readonly late: Promise<Start> | null;
}

/**
 * Chooses the job to start with, from the shelf and the quick copy.
 * @param fetched the shelf; where it cannot be read, the copy is used
 */
export async function startingJob(fetched: Promise<AskedShelf>, kept: Kept | null): Promise<Started> {
  const asked = fetched.then(async (shelf) => ({ shelf, list: await shelf.list() })).catch(() => null);
  const choose = async (choice: typeof chooseStart): Promise<Start> => {
    const said = await asked;
    const standing = said?.list.ok ? said.list.value : [];
    if (standing.length > 0) sawShelf(standing[0]!.savedAt);
    const start = choice(kept, standing);
    if (start.aside !== null) await said?.shelf.keepAsVersion(start.aside);
    return start;
  };
  const patience = new Promise<'late'>((resolve) => setTimeout(resolve, LONGEST_WAIT, 'late'));
  if ((await Promise.race([asked, patience])) !== 'late') return { start: await choose(chooseStart), late: null };
  return { start: chooseStart(kept, []), late: choose(chooseLate) };
}
