import { type Kept, type KeptCopies, keepsJournal, keptOf, sawShelf } from '../state/keptJob.ts';
import type { chooseLate, chooseStart } from './chooseStart.ts';
import type { Journal } from './Journal.ts';
import { fromCopy, NOTHING, type Start } from './opening.ts';
import type { OpenedJournal } from './openJournal.ts';
import type { Shelf } from './shelf.ts';

interface AskedShelf {
  readonly theShelf: Pick<Shelf, 'list' | 'keepAsVersion'>;
  readonly openTheJournal: (copies: KeptCopies) => Promise<OpenedJournal | null>;
  readonly chooseStart: typeof chooseStart;
  readonly chooseLate: typeof chooseLate;
}

/** Longest wait of the first drawing for the shelf, ms; it mostly answers within a few. */
const LONGEST_WAIT = 2000;

/** What the page starts with, and what is left to do when the shelf answers too late for that. */
export interface Started {
  readonly start: Start;
  /** Null where the shelf has answered. */
  readonly late: Promise<Start> | null;
  /** Keeps the steps of this window; null where the browser keeps none. */
  readonly journal: Promise<Journal | null>;
}

/**
 * Chooses the job to start with, from the shelf and the later of the quick copy and the journal.
 * @param fetched the shelf; where it cannot be read, the copy is used
 */
export async function startingJob(fetched: Promise<AskedShelf>, copies: KeptCopies): Promise<Started> {
  const copy = keptOf(copies);
  const alone: Start = copy === null ? NOTHING : { ...NOTHING, first: fromCopy(copy) };
  const asked = fetched
    .then(async (shelf) => {
      const [list, opened] = await Promise.all([shelf.theShelf.list(), shelf.openTheJournal(copies)]);
      if (opened !== null) keepsJournal(opened.journal.window);
      return { shelf, standing: list.ok ? list.value : [], opened };
    })
    .catch(() => null);
  const choose = async (isLate: boolean): Promise<Start> => {
    const said = await asked;
    if (said === null) return alone;
    const { shelf, standing, opened } = said;
    const kept = later(copies, opened?.kept ?? null);
    sawShelf(Math.max(standing[0]?.savedAt ?? 0, kept?.mark ?? 0));
    const start = isLate ? shelf.chooseLate(copy, kept, standing) : shelf.chooseStart(kept, standing);
    if (start.aside !== null) await shelf.theShelf.keepAsVersion(start.aside);
    return start;
  };
  const journal = asked.then((said) => said?.opened?.journal ?? null);
  const patience = new Promise<'late'>((resolve) => setTimeout(resolve, LONGEST_WAIT, 'late'));
  if ((await Promise.race([asked, patience])) !== 'late') return { start: await choose(false), late: null, journal };
  return { start: alone, late: choose(true), journal };
}

/** The journal is on disk with every step, the quick copy seconds later; but it is written at once, so either may be later. */
function later(copies: KeptCopies, journalled: Kept | null): Kept | null {
  const copy = keptOf(copies);
  const copied = (copies.own ?? copies.any)?.mark ?? 0;
  if (journalled?.mark === undefined || journalled.mark < copied) return copy;
  return { ...journalled, mark: Math.max(journalled.mark, copy?.mark ?? 0) };
}
