import { inCurrentVersion, type JobDocument } from '../../core/index.ts';
import type { Kept } from '../state/keptJob.ts';
import { hasItsOwn, unsavedPlace } from './chooseStart.ts';
import { isSound, isSoundVersion } from './damaged.ts';
import { forgetJournal } from './Journal.ts';
import { isHead, type JournalHead } from './journalRecord.ts';
import { fromCopy, type Opening } from './opening.ts';
import { keptBy, lockOf } from './openJournal.ts';
import { readAll } from './readAll.ts';
import { type ShelfConnection, versionsOf } from './shelfDatabase.ts';
import type { ShelfDatabase, ShelfJob, Version } from './shelfSchema.ts';

/** A state that a window which is gone has left in its journal, and that is kept nowhere else. */
export interface LeftState {
  readonly opening: Opening;
  /** Offers it no more. */
  readonly close: () => Promise<void>;
}

const DAY = 24 * 3600 * 1000;

/** How long a journal stays that has nothing of its own, ms: its undo may be for a tab that the browser brings back. */
const KEPT_UNDO = 7 * DAY;

/** How long one stays whose state was offered and refused, or cannot be read, ms: eight weeks. */
const KEPT_STATE = 56 * DAY;

/** No journal is as old; the clock is wrong. */
const NO_AGE = 3650 * DAY;

/**
 * What windows that are gone have left in their journals.
 *
 * A journal whose open state stands on the shelf, or is an untouched example, has nothing of its own: it is forgotten a week after it was
 * last written. Any other is offered until that is answered, whenever that is, and then forgotten after eight weeks. The latest
 * stays, and so does one that a window has open: it is forgotten only under its lock.
 * @param locks of the browser; undefined where it has none, and so no journals
 * @param known documents that the page has itself
 * @param now ms since 1970
 * @returns the states to offer, latest first
 */
export async function leftOver(
  connection: ShelfConnection,
  locks: LockManager | undefined,
  known: () => readonly JobDocument[],
  now: number,
): Promise<readonly LeftState[]> {
  if (locks === undefined) return [];
  const read = await connection.do(async (database) => {
    const [records, { held = [] }] = await Promise.all([readAll(database, 'journals'), locks.query()]);
    const open = new Set(held.map(({ name }) => name));
    const left = records
      .map(({ record }) => record)
      .filter(isHead)
      .filter(({ window }) => !open.has(lockOf(window)))
      .sort((a, b) => b.mark - a.mark);
    if (left.length === 0) return [];
    const jobs = (await readAll(database, 'jobs')).map(({ record }) => record as ShelfJob).filter(isSound);
    const texts = new Set([...jobs.map(({ document }) => document), ...known()].map(textOf));
    const offered: LeftState[] = [];
    for (const [i, head] of left.entries()) {
      const kept = await keptBy(database, head);
      const isOwn = kept !== null && (await isNowhereElse(database, kept, texts));
      const isWaiting = isOwn && head.isAnswered !== true;
      const age = now - head.mark;
      if (i > 0 && !isWaiting && age > (isOwn || kept === null ? KEPT_STATE : KEPT_UNDO) && age < NO_AGE)
        await whileLeft(locks, database, head, () => forgetJournal(database, head.window));
      else if (isOwn) {
        texts.add(textOf(kept.document));
        if (!isWaiting) continue;
        const own = jobs.find(({ id }) => id === (kept.place?.id ?? kept.key));
        offered.push({
          opening: { ...fromCopy(kept), place: unsavedPlace(kept, own) },
          close: () => answered(connection, locks, head),
        });
      }
    }
    return offered;
  });
  return read.ok ? read.value : [];
}

const textOf = (document: JobDocument): string => JSON.stringify(inCurrentVersion(document));

/** Whether a state is neither among the texts nor an earlier one of its job. */
async function isNowhereElse(database: ShelfDatabase, kept: Kept, texts: ReadonlySet<string>): Promise<boolean> {
  const text = textOf(kept.document);
  if (!hasItsOwn(kept) || texts.has(text)) return false;
  if (kept.place === undefined) return true;
  const versions = await readAll(database, 'versions', versionsOf(kept.place.id));
  return versions.every(({ record }) => !isSoundVersion(record) || textOf((record as Version).document) !== text);
}

/** Does `work` while no window can open the journal, unless one has it or has written it meanwhile. */
async function whileLeft(
  locks: LockManager,
  database: ShelfDatabase,
  { window, mark }: JournalHead,
  work: () => Promise<unknown>,
): Promise<void> {
  await locks.request(lockOf(window), { ifAvailable: true }, async (lock) => {
    const head = lock && (await database.get('journals', window));
    if (head?.mark === mark) await work();
  });
}

const answered = async (connection: ShelfConnection, locks: LockManager, head: JournalHead): Promise<void> => {
  await connection.do((database) =>
    whileLeft(locks, database, head, () => database.put('journals', { ...head, isAnswered: true })),
  );
};
