import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from 'idb';
import type { JobRecord } from '../../core/job/migrate.ts';
import { TROUBLE } from './shelfTrouble.ts';

/** A job on the shelf. */
export interface ShelfJob {
  readonly id: string;
  /** Counts the saves; a window that saves must name the one it started from. */
  readonly revision: number;
  readonly name: string;
  readonly document: JobRecord;
  /** Times in ms since 1970. */
  readonly savedAt: number;
  /** When it was removed; null while it stands on the shelf. */
  readonly removedAt: number | null;
}

/** An earlier state of a job. */
export interface JobVersion {
  readonly id: string;
  readonly revision: number;
  readonly document: JobRecord;
  readonly savedAt: number;
}

export interface ShelfSchema extends DBSchema {
  jobs: { key: string; value: ShelfJob };
  versions: { key: [id: string, revision: number]; value: JobVersion };
}

export type ShelfDatabase = IDBPDatabase<ShelfSchema>;

const VERSION = 1;

/**
 * Opens the browser's database of jobs.
 * @param name of the database
 * @param onClosed called when it was closed under the shelf's feet, by a newer edition in another window or by the browser
 * @throws a `ShelfTrouble` while an older edition in another window holds it, else what the browser throws
 */
export async function openShelfDatabase(name: string, onClosed: () => void): Promise<ShelfDatabase> {
  if (typeof indexedDB === 'undefined') throw TROUBLE.unavailable;
  return new Promise((resolve, reject) => {
    let isGivenUp = false;
    const opened = openDB<ShelfSchema>(name, VERSION, {
      upgrade(database) {
        database.createObjectStore('jobs', { keyPath: 'id' });
        database.createObjectStore('versions', { keyPath: ['id', 'revision'] });
      },
      blocked() {
        isGivenUp = true;
        reject(TROUBLE.blocked);
      },
      blocking(_current, _wanted, event) {
        (event.target as IDBDatabase).close();
        onClosed();
      },
      terminated: onClosed,
    });
    opened.then((database) => {
      // The other window let go after all; the next call opens anew.
      if (isGivenUp) database.close();
      else resolve(database);
    }, reject);
  });
}

type StoreName = 'jobs' | 'versions';

/** All key ranges of the versions of one job. */
export const versionsOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id, 0], [id, Number.POSITIVE_INFINITY]);

/**
 * Does `work` in one transaction: all it writes is kept, or, when it throws or the browser stops, nothing.
 * @returns what `work` returns, once the browser says that it is on disk
 */
export async function inTransaction<Names extends StoreName[], T>(
  database: ShelfDatabase,
  names: Names,
  work: (transaction: IDBPTransaction<ShelfSchema, Names, 'readwrite'>) => Promise<T>,
): Promise<T> {
  const transaction = database.transaction(names, 'readwrite', { durability: 'strict' });
  const done = transaction.done;
  // Awaited below; until then a failure of the work comes first.
  done.catch(() => {});
  try {
    const result = await work(transaction);
    await done;
    return result;
  } catch (error) {
    // Where the browser itself ended it, as for want of room, the reason stands here; its requests only say that it ended.
    const reason = transaction.error;
    try {
      transaction.abort();
    } catch {
      // It has ended already.
    }
    throw reason ?? error;
  }
}
