import { freshId } from '../state/freshId.ts';
import type { Step } from '../state/jobHistory.ts';
import type { Kept, KeptCopies } from '../state/keptJob.ts';
import { Journal } from './Journal.ts';
import { isHead, type JournalHead, readStep, textsIn } from './journalRecord.ts';
import { readAll } from './readAll.ts';
import type { ShelfConnection } from './shelfDatabase.ts';
import type { ShelfDatabase } from './shelfSchema.ts';

/** This window's journal, and the job that it left; null where it left none. */
export interface OpenedJournal {
  readonly journal: Journal;
  readonly kept: Kept | null;
}

/**
 * Opens a journal for this window: its own of before, as after a reload; else, in a new window, the one that was written last
 * of those that no window has open; else a new one. A lock that the browser takes back when the window ends, however it ends,
 * keeps any two windows from having the same.
 * @param locks of the browser; undefined where it has none, as on a page that is not secure
 * @returns null where no journal can be kept
 */
export async function openJournal(
  connection: ShelfConnection,
  locks: LockManager | undefined,
  { own, any }: KeptCopies,
): Promise<OpenedJournal | null> {
  if (locks === undefined) return null;
  const opened = await connection.do(async (database) => {
    const [records, { held = [] }] = await Promise.all([readAll(database, 'journals'), locks.query()]);
    const taken = new Set(held.map(({ name }) => name));
    const heads = records.map(({ record }) => record).filter(isHead);
    const isFree = (window: string): boolean => window === own?.window || !taken.has(lockOf(window));
    for (const window of wishes(heads, own, any, isFree)) {
      if (!(await take(locks, window, window === own?.window ? OLD_PAGE : 0))) continue;
      const head = heads.find((each) => each.window === window);
      return { journal: new Journal(connection, window), kept: head ? await keptBy(database, head) : null };
    }
    const window = freshId();
    await take(locks, window, 0);
    return { journal: new Journal(connection, window), kept: null };
  });
  return opened.ok ? opened.value : null;
}

/** The journals that a window would go on with, the best first. */
function wishes(
  heads: readonly JournalHead[],
  own: Kept | null,
  any: Kept | null,
  isFree: (window: string) => boolean,
): readonly string[] {
  // Where a window was copied with its own copy, that is the other's journal, and this one begins anew.
  if (own?.window !== undefined) return [own.window];
  const marks = new Map(heads.map(({ window, mark }) => [window, mark]));
  const copied = any?.window;
  if (copied !== undefined) marks.set(copied, Math.max(any?.mark ?? 0, marks.get(copied) ?? 0));
  const newest = [...marks].sort((a, b) => b[1] - a[1]);
  // What a window at work has kept last is what a new window shows.
  const end = newest.findIndex(([window]) => window === copied && !isFree(window));
  return (end < 0 ? newest : newest.slice(0, end)).map(([window]) => window).filter(isFree);
}

/** Name of the lock that a window holds on its journal. */
export const lockOf = (window: string): string => `coverwright.journal.${window}`;

/** Longest that the page before a reload may take to end, ms. */
const OLD_PAGE = 250;

/** Takes the lock of a journal until the window ends; false where another has it for `patience` ms. */
async function take(locks: LockManager, window: string, patience: number): Promise<boolean> {
  const options = patience > 0 ? { signal: AbortSignal.timeout(patience) } : { ifAvailable: true };
  return new Promise((resolve) => {
    const hold = (lock: Lock | null): Promise<void> | undefined => {
      resolve(lock !== null);
      return lock === null ? undefined : new Promise(() => {});
    };
    locks.request(lockOf(window), options, hold).catch(() => resolve(false));
  });
}

/** The state that a journal has as the open one. */
export async function keptBy(database: ShelfDatabase, { window, at, mark, places }: JournalHead): Promise<Kept | null> {
  const stepWith = async (texts: ReadonlyMap<string, string>): Promise<Step | null> =>
    readStep((await readAll(database, 'steps', IDBKeyRange.only([window, at])))[0]?.record, texts);
  // Texts that are kept apart are read only where the step has some: they are long.
  const step =
    (await stepWith(new Map())) ??
    (await stepWith(textsIn(await readAll(database, 'steps', IDBKeyRange.bound([window, ''], [window, []])))));
  if (step === null) return null;
  const [, place] = places.find(([key]) => key === step.key) ?? [];
  return {
    ...step,
    mark,
    window,
    ...(place && { place: { id: place.id, revision: place.revision, isSaved: place.savedAt === at } }),
  };
}
