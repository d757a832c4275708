import type { JobRecord } from '../../core/index.ts';
import { freshId } from '../state/freshId.ts';
import { type DamagedRecord, isSoundJob, isSoundVersion, jobWithin, soundFields, whyDamaged } from './damaged.ts';
import { keepVersion } from './keepVersion.ts';
import { readAll } from './readAll.ts';
import { countShelf, expectFewer } from './shelfCount.ts';
import { inTransaction, ShelfConnection, versionsOf } from './shelfDatabase.ts';
import type { JobVersion, ShelfJob } from './shelfSchema.ts';
import { type Shelved, TROUBLE } from './shelfTrouble.ts';

/** What happened to a job in some window. */
export interface ShelfNotice {
  readonly id: string;
  readonly what: 'saved' | 'removed' | 'restored' | 'imported' | 'begun';
  readonly revision: number;
}

/** A saved job, and whether it became a copy because another window had saved first. */
export interface Saved {
  readonly job: ShelfJob;
  readonly isCopy: boolean;
}

/** Contents of the shelf's database. */
export interface ShelfContent {
  readonly standing: readonly ShelfJob[];
  readonly removed: readonly ShelfJob[];
  /** Not changed by anything but `repair` and `discardDamaged`. */
  readonly damaged: readonly DamagedRecord[];
}

/** Earlier states of a job. */
export interface KeptVersions {
  readonly sound: readonly JobVersion[];
  readonly damaged: readonly DamagedRecord[];
}

export interface ShelfOptions {
  readonly name?: string;
  readonly now?: () => number;
}

/**
 * The jobs kept in this browser, for one window. Every method returns its result or the trouble as a value; none
 * throws.
 *
 * A save is one transaction: interrupted, it changes nothing. Several windows may be open: each save names the revision
 * it started from, and where another window has saved since, it becomes a new job, so that neither's work is lost.
 */
export class Shelf {
  readonly connection: ShelfConnection;
  readonly #now: () => number;
  readonly #channel: BroadcastChannel;
  readonly #listeners = new Set<(notice: ShelfNotice) => void>();

  constructor({ name = 'coverwright', now = Date.now }: ShelfOptions = {}) {
    this.connection = new ShelfConnection(name);
    this.#now = now;
    this.#channel = new BroadcastChannel(`${name}.shelf`);
    this.#channel.addEventListener('message', ({ data }) => this.#tell(data as ShelfNotice));
  }

  /** Calls `listener` on changes that other windows make. Returns a function that stops it. */
  watch(listener: (notice: ShelfNotice) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** All that is in the database; jobs last saved first. */
  read(): Promise<Shelved<ShelfContent>> {
    return this.connection.do(async (database) => {
      const asked = this.#now();
      const records = await readAll(database, 'jobs');
      const jobs = records.map(({ record }) => record as ShelfJob);
      const sound = jobs.filter(isSoundJob).sort((a, b) => b.savedAt - a.savedAt || a.name.localeCompare(b.name));
      const content: ShelfContent = {
        standing: sound.filter(({ removedAt }) => removedAt === null),
        removed: sound.filter(({ removedAt }) => removedAt !== null),
        damaged: records
          .map(({ key, record }) => ({ key, record, why: whyDamaged(record) }))
          .filter(({ why }) => why !== null),
      };
      countShelf(content, asked);
      return content;
    });
  }

  /** The jobs that stand on the shelf, last saved first. */
  async list(): Promise<Shelved<readonly ShelfJob[]>> {
    const read = await this.read();
    return read.ok ? { ok: true, value: read.value.standing } : read;
  }

  /** One job, standing or removed. */
  get(id: string): Promise<Shelved<ShelfJob>> {
    return this.connection.do(async (database) => soundOrMissing(await database.get('jobs', id)));
  }

  /**
   * Puts the job of a damaged record back on the shelf, in one transaction: what can be read of the record stays, its document and
   * its versions among it. A sound record stays as it is.
   * @returns the trouble `missing` where the record holds no job that can be opened
   */
  repair(key: IDBValidKey): Promise<Shelved<ShelfJob>> {
    return this.connection.do(async (database) => {
      const job = await inTransaction(database, ['jobs', 'versions'], async (transaction) => {
        const jobs = transaction.objectStore('jobs');
        const record: unknown = await jobs.get(key as string);
        const document = jobWithin(record);
        if (document === null) throw TROUBLE.missing;
        if (isSoundJob(record)) return record as ShelfJob;
        const fresh = this.#fresh(document);
        // Above every version of it, none of which is written over.
        const last =
          typeof key === 'string'
            ? (await transaction.objectStore('versions').getAllKeys(versionsOf(key))).at(-1)
            : undefined;
        const place = { ...fresh, revision: (last?.[1] ?? 0) + 1, ...soundFields(record), document };
        await jobs.delete(key as string);
        await jobs.put(place);
        return place;
      });
      this.#say(job, 'restored');
      return job;
    });
  }

  /** Deletes a damaged record; a sound one stays. */
  discardDamaged(key: IDBValidKey): Promise<Shelved<void>> {
    return this.connection.do((database) =>
      inTransaction(database, ['jobs'], async (transaction) => {
        const jobs = transaction.objectStore('jobs');
        if (isSoundJob(await jobs.get(key as string))) return;
        expectFewer(this.#now());
        await jobs.delete(key as string);
      }),
    );
  }

  /**
   * Puts a new job on the shelf.
   * @param wished its id, unless another job has it
   */
  add(document: JobRecord, wished?: string): Promise<Shelved<ShelfJob>> {
    return this.connection.do(async (database) => {
      const job = await inTransaction(database, ['jobs'], async (transaction) => {
        const jobs = transaction.objectStore('jobs');
        const isTaken = wished === undefined || (await jobs.getKey(wished)) !== undefined;
        const added = isTaken ? this.#fresh(document) : { ...this.#fresh(document), id: wished };
        await jobs.add(added);
        return added;
      });
      this.#say(job, 'saved');
      return job;
    });
  }

  /**
   * Saves a job.
   * @param id of the job
   * @param revision the one that this window read or saved last
   * @returns the job with its new revision; where another window has saved or removed it meanwhile, a new job with this
   *   window's document beside it. Saving what already stands there changes nothing.
   */
  save(id: string, revision: number, document: JobRecord): Promise<Shelved<Saved>> {
    return this.connection.do(async (database) => {
      let hasWritten = true;
      const saved = await inTransaction(database, ['jobs', 'versions'], async (transaction) => {
        const jobs = transaction.objectStore('jobs');
        const standing = await jobs.get(id);
        const stands = standing !== undefined && isSoundJob(standing) && standing.removedAt === null;
        if (stands && isSame(standing.document, document)) {
          hasWritten = false;
          return { job: standing, isCopy: false };
        }
        if (!stands || standing.revision !== revision) {
          const job = this.#fresh(document);
          await jobs.add(job);
          return { job, isCopy: true };
        }
        const change = { document, name: nameOf(document), savedAt: this.#now(), revision: revision + 1 };
        const job: ShelfJob = { ...standing, ...change };
        await keepVersion(transaction.objectStore('versions'), standing);
        await jobs.put(job);
        return { job, isCopy: false };
      });
      if (hasWritten) this.#say(saved.job, 'saved');
      return saved;
    });
  }

  /** Takes a job off the shelf; `restore` undoes it until `forget`. */
  remove(id: string): Promise<Shelved<ShelfJob>> {
    return this.#mark(id, 'removed');
  }

  /** Puts a removed job back. */
  restore(id: string): Promise<Shelved<ShelfJob>> {
    return this.#mark(id, 'restored');
  }

  /** A new job with the same content under the name `<name>, copy`, on which no work is done yet. */
  async copy(id: string): Promise<Shelved<ShelfJob>> {
    const found = await this.get(id);
    if (!found.ok) return found;
    const { document, name } = found.value;
    const { made: _, ...cover } = document;
    return this.add({ ...cover, name: `${name.slice(0, MAX_COPIED_NAME)}, copy` });
  }

  /** Earlier states of a job, latest first, and what stands among them and cannot be read. To go back to one, save its document. */
  versions(id: string): Promise<Shelved<KeptVersions>> {
    return this.connection.do(async (database) => {
      const records = await readAll(database, 'versions', versionsOf(id));
      const isSound = ({ record }: { readonly record: unknown }): boolean => isSoundVersion(record);
      return {
        sound: records
          .filter(isSound)
          .map(({ record }) => record as JobVersion)
          .reverse(),
        damaged: records.filter((read) => !isSound(read)).map(({ key, record }) => ({ key, record, why: null })),
      };
    });
  }

  /** Keeps a state of a job among its versions, however young the last one is. */
  keepAsVersion({ id, revision, document, savedAt }: ShelfJob): Promise<Shelved<void>> {
    return this.connection.do((database) =>
      inTransaction(database, ['versions'], async (transaction) => {
        await transaction.objectStore('versions').put({ id, revision, document, savedAt });
      }),
    );
  }

  /** Deletes the jobs that were removed before `time`, with all their versions. Returns how many. */
  forget(time: number): Promise<Shelved<number>> {
    return this.connection.do((database) =>
      inTransaction(database, ['jobs', 'versions'], async (transaction) => {
        const [jobs, versions] = [transaction.objectStore('jobs'), transaction.objectStore('versions')];
        const gone = (await jobs.getAll()).filter(
          (job) => isSoundJob(job) && job.removedAt !== null && job.removedAt < time,
        );
        if (gone.length > 0) expectFewer(this.#now());
        for (const { id } of gone) {
          await jobs.delete(id);
          await versions.delete(versionsOf(id));
        }
        return gone.length;
      }),
    );
  }

  /**
   * Puts many documents on the shelf at once, all or none. A document that stands there already is passed over.
   * @returns how many were added
   */
  addAll(documents: readonly JobRecord[]): Promise<Shelved<number>> {
    return this.connection.do(async (database) => {
      const added = await inTransaction(database, ['jobs'], async (transaction) => {
        const jobs = transaction.objectStore('jobs');
        const standing = (await jobs.getAll()).filter((job) => isSoundJob(job) && job.removedAt === null);
        const known = new Set(standing.map(({ document }) => JSON.stringify(document)));
        const fresh = documents.filter((document) => {
          const text = JSON.stringify(document);
          return !known.has(text) && known.add(text);
        });
        const list = fresh.map((document) => this.#fresh(document));
        // Async, so that one that throws at once leaves no other rejection unhandled.
        await Promise.all(list.map(async (job) => jobs.add(job)));
        return list;
      });
      if (added.length > 0) this.#say(added[0]!, 'imported');
      return added.length;
    });
  }

  /**
   * The jobs that can be read whatever else is damaged, each once: those of the records, and the last versions of jobs whose record
   * cannot be read. For an export before the shelf is begun anew.
   */
  async readable(): Promise<readonly JobRecord[]> {
    const read = await this.connection.do(async (database) => {
      const [jobs, versions] = await Promise.all([
        readAll(database, 'jobs').catch(() => []),
        readAll(database, 'versions').catch(() => []),
      ]);
      const records = [...versions.map(({ key, record }) => ({ key: key[0], record })), ...jobs];
      const found = new Map<string, JobRecord>();
      for (const { key, record } of records) {
        const document = isSoundJob(record) ? (record as ShelfJob).document : jobWithin(record);
        if (document !== null) found.set(key, document);
      }
      return [...found.values()];
    });
    return read.ok ? read.value : [];
  }

  /** Deletes the shelf with all that is on it, for one that cannot be read; only ever done when the maker asks for it. */
  async beginAnew(): Promise<Shelved<void>> {
    expectFewer(this.#now());
    const deleted = await this.connection.delete();
    if (deleted.ok) this.#channel.postMessage({ id: '', what: 'begun', revision: 0 } satisfies ShelfNotice);
    return deleted;
  }

  /** Closes this window's connection; the browser finishes what is under way. */
  close(): Promise<void> {
    this.#channel.close();
    return this.connection.close();
  }

  #mark(id: string, what: 'removed' | 'restored'): Promise<Shelved<ShelfJob>> {
    return this.connection.do(async (database) => {
      const job = await inTransaction(database, ['jobs'], async (transaction) => {
        const jobs = transaction.objectStore('jobs');
        const standing = soundOrMissing(await jobs.get(id));
        const removedAt = what === 'removed' ? this.#now() : null;
        const marked = { ...standing, revision: standing.revision + 1, removedAt };
        await jobs.put(marked);
        return marked;
      });
      this.#say(job, what);
      return job;
    });
  }

  #fresh(document: JobRecord): ShelfJob {
    const place = { id: freshId(), revision: 1, savedAt: this.#now(), removedAt: null };
    return { ...place, name: nameOf(document), document };
  }

  #say({ id, revision }: ShelfJob, what: ShelfNotice['what']): void {
    this.#channel.postMessage({ id, what, revision } satisfies ShelfNotice);
  }

  #tell(notice: ShelfNotice): void {
    for (const listener of this.#listeners) listener(notice);
  }
}

/** Leaves room for the words that a copy adds: a name has at most 200 characters. */
const MAX_COPIED_NAME = 180;

const isSame = (a: JobRecord, b: JobRecord): boolean => JSON.stringify(a) === JSON.stringify(b);

function soundOrMissing(job: ShelfJob | undefined): ShelfJob {
  if (job === undefined || !isSoundJob(job)) throw TROUBLE.missing;
  return job;
}

function nameOf({ name }: JobRecord): string {
  return typeof name === 'string' && name.trim() !== '' ? name : 'Untitled cover';
}
