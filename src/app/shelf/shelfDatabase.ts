import { deleteDB, type IDBPTransaction, openDB } from 'idb';
import { isRecord } from '../../core/index.ts';
import { freshId } from '../state/freshId.ts';
import { readAll } from './readAll.ts';
import {
  type RecordStore,
  type ShelfDatabase,
  type ShelfRecord,
  type ShelfSchema,
  STORES,
  type StoreName,
} from './shelfSchema.ts';
import { type ShelfTrouble, type Shelved, TROUBLE, troubleOf } from './shelfTrouble.ts';

/** From this version on the database has a later layout. Those between 1 and it are this layout, rebuilt. */
const LATER_LAYOUT = 1000;

/** Longest that the browser may take to open the database, ms; some never answer after a crash. */
const LONGEST_OPENING = 20_000;

/** Openings after one that another window's rebuilding has overtaken. */
const MORE_TRIES = 3;

/**
 * Opens the browser's database of jobs and leathers. One without its stores, or with stores of other keys, as another program or a crash may
 * leave it, is rebuilt around what can be read in it.
 * @param name of the database
 * @param onClosed called when the browser, or a newer version in another window, has closed it
 * @throws a `ShelfTrouble` while another version in another window holds it, where a later version of the tool has laid it out or
 *   the browser does not answer, else what the browser throws
 */
async function openShelfDatabase(name: string, onClosed: () => void, tries = MORE_TRIES): Promise<ShelfDatabase> {
  if (typeof indexedDB === 'undefined') throw TROUBLE.unavailable;
  try {
    return await openWhole(name, onClosed);
  } catch (error) {
    const isOvertaken = error instanceof Error && OVERTAKEN.has(error.name);
    if (tries === 0 || !isOvertaken) throw error;
    return openShelfDatabase(name, onClosed, tries - 1);
  }
}

/** Names of the errors when another window rebuilds the database between two steps of this one. */
const OVERTAKEN = new Set(['VersionError', 'AbortError', 'InvalidStateError']);

async function openWhole(name: string, onClosed: () => void): Promise<ShelfDatabase> {
  const database = await openVersion(name, undefined, onClosed);
  const { version } = database;
  const wrong = storesOfOtherKeys(database);
  if (version < LATER_LAYOUT && wrong.length === 0 && missingStores(database).length === 0) return database;
  try {
    if (version >= LATER_LAYOUT) throw TROUBLE.newer;
    const moved = await Promise.all(wrong.map(async (store) => ({ store, found: await readAll(database, store) })));
    database.close();
    return await openVersion(name, version + 1, onClosed, moved);
  } finally {
    database.close();
  }
}

const missingStores = ({ objectStoreNames }: ShelfDatabase): readonly StoreName[] =>
  (Object.keys(STORES) as StoreName[]).filter((store) => !objectStoreNames.contains(store));

function storesOfOtherKeys(database: ShelfDatabase): readonly StoreName[] {
  const missing = missingStores(database);
  const standing = (Object.keys(STORES) as StoreName[]).filter((store) => !missing.includes(store));
  if (standing.length === 0) return [];
  const transaction = database.transaction(standing);
  return standing.filter(
    (store) => JSON.stringify(transaction.objectStore(store).keyPath) !== JSON.stringify(STORES[store]),
  );
}

/** What a store with other keys holds. */
interface MovedStore {
  readonly store: StoreName;
  readonly found: readonly { readonly record: unknown }[];
}

/** Where a record stands that cannot stand in its own store; a step of undo is left out. */
const INSTEAD: Readonly<Partial<Record<StoreName, RecordStore>>> = {
  jobs: 'jobs',
  versions: 'jobs',
  leathers: 'leathers',
  leatherVersions: 'leathers',
};

/**
 * Puts what was found into the store that was made anew. What has no key of its own there, or that of another, stands among the
 * jobs or leathers instead, where it is set apart as damaged.
 */
function putBack({ store, found }: MovedStore, put: (store: StoreName, record: object) => void): void {
  const taken = new Set<string>();
  for (const { record } of found) {
    if (record === undefined) continue;
    const fields = isRecord(record) ? record : { record };
    const key = JSON.stringify([STORES[store]].flat().map((field) => fields[field]));
    try {
      if (taken.has(key)) throw new DOMException('Another has its key.', 'DataError');
      put(store, fields);
      taken.add(key);
    } catch {
      const instead = INSTEAD[store];
      if (instead !== undefined) put(instead, { ...fields, id: freshId() });
    }
  }
}

/**
 * @param version undefined for the present one, or 1 for a new database
 * @param moved stores that are made anew
 */
function openVersion(
  name: string,
  version: number | undefined,
  onClosed: () => void,
  moved: readonly MovedStore[] = [],
): Promise<ShelfDatabase> {
  return new Promise((resolve, reject) => {
    let isGivenUp = false;
    const giveUp = (trouble: ShelfTrouble): void => {
      isGivenUp = true;
      reject(trouble);
    };
    const deadline = setTimeout(() => giveUp(TROUBLE.silent), LONGEST_OPENING);
    const opened = openDB<ShelfSchema>(name, version, {
      upgrade(database, _old, _new, transaction) {
        for (const { store } of moved) database.deleteObjectStore(store);
        for (const store of missingStores(database))
          database.createObjectStore(store, { keyPath: STORES[store] as string | string[] });
        const put = (store: StoreName, record: object): void => {
          // Its failure is that of the opening.
          transaction
            .objectStore(store)
            .put(record as ShelfRecord)
            .catch(() => {});
        };
        for (const each of moved) putBack(each, put);
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
      return { ok: true, value: await this.#with(work) };
    } catch (error) {
      return { ok: false, trouble: troubleOf(error) };
    }
  }

  async #with<T>(work: (database: ShelfDatabase) => Promise<T>): Promise<T> {
    const opened = this.#opened;
    if (opened === null) return work(await this.#open());
    try {
      return await work(opened);
    } catch (error) {
      // Another window has made the browser close it since it was last used.
      if (!(error instanceof Error && error.name === 'InvalidStateError')) throw error;
      opened.close();
      if (this.#opened === opened) this.#forget();
      return work(await this.#open());
    }
  }

  /** Deletes the database with all that is in it; the next use makes a new one. */
  async delete(): Promise<Shelved<void>> {
    await this.close();
    let deadline: ReturnType<typeof setTimeout> | undefined;
    try {
      await new Promise<void>((resolve, reject) => {
        deadline = setTimeout(() => reject(TROUBLE.silent), LONGEST_OPENING);
        deleteDB(this.#name, { blocked: () => reject(TROUBLE.blocked) }).then(resolve, reject);
      });
      return { ok: true, value: undefined };
    } catch (error) {
      const trouble = troubleOf(error);
      return { ok: false, trouble: trouble.kind === 'broken' ? TROUBLE.stuck : trouble };
    } finally {
      clearTimeout(deadline);
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

/** The key range of the versions of one record. */
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
