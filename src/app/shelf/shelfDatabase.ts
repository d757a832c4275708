import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from 'idb';
import type { JobRecord } from '../../core/index.ts';
import type { JournalHead, JournalRecord } from './journalRecord.ts';
import { type ShelfTrouble, type Shelved, TROUBLE, troubleOf } from './shelfTrouble.ts';

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
  journals: { key: string; value: JournalHead };
  steps: { key: [window: string, at: number | string]; value: JournalRecord };
}

export type ShelfDatabase = IDBPDatabase<ShelfSchema>;

const STORES = { jobs: 'id', versions: ['id', 'revision'], journals: 'window', steps: ['window', 'at'] } as const;

/** From this version on the database has a later layout. Those between 1 and it are this layout, rebuilt. */
const LATER_LAYOUT = 1000;

/** Longest that the browser may take to open the database, ms; some never answer after a crash. */
const LONGEST_OPENING = 20_000;

/**
 * Opens the browser's database of jobs. One without its stores, as another program or a crash may leave it, is rebuilt
 * around what it has.
 * @param name of the database
 * @param onClosed called when the browser, or a newer version in another window, has closed it
 * @throws a `ShelfTrouble` while another version in another window holds it or the browser does not answer, else what
 *   the browser throws
 */
async function openShelfDatabase(name: string, onClosed: () => void): Promise<ShelfDatabase> {
  if (typeof indexedDB === 'undefined') throw TROUBLE.unavailable;
  const database = await openVersion(name, undefined, onClosed);
  const { version } = database;
  if (version < LATER_LAYOUT && missingStores(database).length === 0) return database;
  database.close();
  if (version >= LATER_LAYOUT) throw TROUBLE.blocked;
  return openVersion(name, version + 1, onClosed);
}

const missingStores = ({ objectStoreNames }: ShelfDatabase): readonly StoreName[] =>
  (Object.keys(STORES) as StoreName[]).filter((store) => !objectStoreNames.contains(store));

/** @param version undefined for the present one, or 1 for a new database */
function openVersion(name: string, version: number | undefined, onClosed: () => void): Promise<ShelfDatabase> {
  return new Promise((resolve, reject) => {
    let isGivenUp = false;
    const giveUp = (trouble: ShelfTrouble): void => {
      isGivenUp = true;
      reject(trouble);
    };
    const deadline = setTimeout(() => giveUp(TROUBLE.silent), LONGEST_OPENING);
    const opened = openDB<ShelfSchema>(name, version, {
      upgrade(database) {
        for (const store of missingStores(database))
          database.createObjectStore(store, { keyPath: STORES[store] as string | string[] });
      },
      blocked: () => giveUp(TROUBLE.blocked),
      blocking(_current, _wanted, event) {
        (event.target as IDBDatabase).close();
        onClosed();
      },
      terminated: onClosed,
    });
    opened
      .then((database) => {
        // It was released or opened after all; the next call opens it again.
        if (isGivenUp) database.close();
        else resolve(database);
      }, reject)
      .finally(() => clearTimeout(deadline));
  });
}

export type StoreName = keyof typeof STORES;

/** A window's connection to the database: opened on first use, and again after it was closed or could not be opened. */
export class ShelfConnection {
  readonly #name: string;
  #opening: Promise<ShelfDatabase> | null = null;
  #opened: ShelfDatabase | null = null;

  constructor(name: string) {
    this.#name = name;
  }

  /** Does `work`, at once where the database is open, and returns its result or the trouble; never throws. */
  async do<T>(work: (database: ShelfDatabase) => Promise<T>): Promise<Shelved<T>> {
    try {
      return { ok: true, value: await work(this.#opened ?? (await this.#open())) };
    } catch (error) {
      return { ok: false, trouble: troubleOf(error) };
    }
  }

  /** Closes it; the browser finishes what is under way. */
  async close(): Promise<void> {
    const database = await this.#opening?.catch(() => null);
    database?.close();
    this.#forget();
  }

  async #open(): Promise<ShelfDatabase> {
    this.#opening ??= openShelfDatabase(this.#name, () => this.#forget());
    const opening = this.#opening;
    try {
      const database = await opening;
      if (opening === this.#opening) this.#opened = database;
      return database;
    } catch (error) {
      this.#forget();
      throw error;
    }
  }

  #forget(): void {
    this.#opening = null;
    this.#opened = null;
  }
}

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
  // Awaited below; an error of the work is reported first.
  done.catch(() => {});
  try {
    const result = await work(transaction);
    await done;
    return result;
  } catch (error) {
    // Where the browser ended it, as on a full disk, the reason is here; the requests only say that it ended.
    const reason = transaction.error;
    try {
      transaction.abort();
    } catch {
      // It has ended already.
    }
    throw reason ?? error;
  }
}
