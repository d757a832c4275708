import type { JobRecord } from '../../core/index.ts';
import { freshId } from '../state/freshId.ts';
import { type DamagedRecord, documentWithin, isSound, isSoundVersion, soundFields, whyDamaged } from './damaged.ts';
import { JOBS } from './jobKind.ts';
import { keepVersion } from './keepVersion.ts';
import { readAll } from './readAll.ts';
import { COUNTS } from './shelfCount.ts';
import { inTransaction, ShelfConnection, versionsOf } from './shelfDatabase.ts';
import type { ShelfKind } from './shelfKind.ts';
import type { RecordStore, ShelfRecord, Version } from './shelfSchema.ts';
import { missing, type Shelved } from './shelfTrouble.ts';

/** What happened to a record in some window. */
export interface ShelfNotice {
  /** The store that it is in; a shelf begun anew is all of them. */
  readonly of: RecordStore;
  readonly id: string;
  readonly what: 'saved' | 'removed' | 'restored' | 'imported' | 'begun';
  readonly revision: number;
}

/** A saved record, and whether it became a copy because another window had saved first. */
export interface Saved {
  readonly record: ShelfRecord;
  readonly isCopy: boolean;
}

/** All that is on a shelf. */
export interface ShelfContent {
  readonly standing: readonly ShelfRecord[];
  readonly removed: readonly ShelfRecord[];
  /** Not changed by anything but `repair` and `discardDamaged`. */
  readonly damaged: readonly DamagedRecord[];
}

/** Earlier states of a record. */
export interface KeptVersions {
  readonly sound: readonly Version[];
  readonly damaged: readonly DamagedRecord[];
}

export interface ShelfOptions {
  readonly name?: string;
  readonly now?: () => number;
  readonly kind?: ShelfKind;
  /** Of another shelf of the window in the same database. */
  readonly connection?: ShelfConnection;
}

/**
 * The jobs, or the leathers, kept in this browser, for one window. Every method returns its result or the trouble as a value; none
 * throws.
 *
 * A save is one transaction: interrupted, it changes nothing. Several windows may be open: each save names the revision
 * it started from, and where another window has saved since, it becomes a new record, so that neither's work is lost.
 */
export class Shelf {
  readonly kind: ShelfKind;
  readonly connection: ShelfConnection;
  readonly #now: () => number;
  readonly #channel: BroadcastChannel;
  readonly #listeners = new Set<(notice: ShelfNotice) => void>();
  readonly #ownListeners = new Set<(notice: ShelfNotice) => void>();

  constructor({ name = 'coverwright', now = Date.now, kind = JOBS, connection }: ShelfOptions = {}) {
    this.kind = kind;
    this.connection = connection ?? new ShelfConnection(name);
    this.#now = now;
    this.#channel = new BroadcastChannel(`${name}.shelf`);
    this.#channel.addEventListener('message', ({ data }) => this.#tell(data as ShelfNotice));
  }

  /** Calls `listener` on changes that other windows make. Returns a function that stops it. */
  watch(listener: (notice: ShelfNotice) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** As `watch`, for changes that this window makes. */
  watchOwn(listener: (notice: ShelfNotice) => void): () => void {
    this.#ownListeners.add(listener);
    return () => this.#ownListeners.delete(listener);
  }

  /** All that is on it, last saved first. */
  read(): Promise<Shelved<ShelfContent>> {
    return this.connection.do(async (database) => {
      const asked = this.#now();
      const records = await readAll(database, this.kind.records);
      const all = records.map(({ record }) => record as ShelfRecord);
      const sound = all.filter(isSound).sort((a, b) => b.savedAt - a.savedAt || a.name.localeCompare(b.name));
      const content: ShelfContent = {
        standing: sound.filter(({ removedAt }) => removedAt === null),
        removed: sound.filter(({ removedAt }) => removedAt !== null),
        damaged: records
          .map(({ key, record }) => ({ key, record, why: whyDamaged(record) }))
          .filter(({ why }) => why !== null),
      };
      COUNTS[this.kind.records].take(content, asked);
      return content;
    });
  }

  /** What stands on the shelf, last saved first. */
  async list(): Promise<Shelved<readonly ShelfRecord[]>> {
    const read = await this.read();
    return read.ok ? { ok: true, value: read.value.standing } : read;
  }

  /** One record, standing or removed. */
  get(id: string): Promise<Shelved<ShelfRecord>> {
    return this.connection.do(async (database) => this.#soundOrMissing(await database.get(this.kind.records, id)));
  }

  /**
   * Puts the document of a damaged record back on the shelf, in one transaction: what can be read of the record stays, its document and
   * its versions among it. A sound record stays as it is.
   * @returns the trouble `missing` where the record holds no document that can be opened
   */
  repair(key: IDBValidKey): Promise<Shelved<ShelfRecord>> {
    return this.connection.do(async (database) => {
      const repaired = await inTransaction(database, this.#both, async (transaction) => {
        const records = transaction.objectStore(this.kind.records);
        const record: unknown = await records.get(key as string);
        const document = documentWithin(record, this.kind);
        if (document === null) throw missing(this.kind.noun);
        if (isSound(record)) return record as ShelfRecord;
        const fresh = this.#fresh(document);
        // Above every version of it, none of which is written over.
        const last =
          typeof key === 'string'
            ? (await transaction.objectStore(this.kind.versions).getAllKeys(versionsOf(key))).at(-1)
            : undefined;
        const place = { ...fresh, revision: (last?.[1] ?? 0) + 1, ...soundFields(record), document };
        await records.delete(key as string);
        await records.put(place);
        return place;
      });
      this.#say(repaired, 'restored');
      return repaired;
    });
  }

  /** Deletes a damaged record; a sound one stays. */
  discardDamaged(key: IDBValidKey): Promise<Shelved<void>> {
    return this.connection.do((database) =>
      inTransaction(database, [this.kind.records], async (transaction) => {
        const records = transaction.objectStore(this.kind.records);
        if (isSound(await records.get(key as string))) return;
        COUNTS[this.kind.records].expectFewer(this.#now());
        await records.delete(key as string);
      }),
    );
  }

  /**
   * Puts a new document on the shelf.
   * @param wished its id, unless another record has it
   */
  add(document: JobRecord, wished?: string): Promise<Shelved<ShelfRecord>> {
    return this.connection.do(async (database) => {
      const added = await inTransaction(database, [this.kind.records], async (transaction) => {
        const records = transaction.objectStore(this.kind.records);
        const isTaken = wished === undefined || (await records.getKey(wished)) !== undefined;
        const record = isTaken ? this.#fresh(document) : { ...this.#fresh(document), id: wished };
        await records.add(record);
        return record;
      });
      this.#say(added, 'saved');
      return added;
    });
  }

  /**
   * Saves a document.
   * @param id of its record
   * @param revision the one that this window read or saved last
   * @returns the record with its new revision; where another window has saved or removed it meanwhile, a new one with this
   *   window's document beside it. Saving what already stands there changes nothing.
   */
  save(id: string, revision: number, document: JobRecord): Promise<Shelved<Saved>> {
    return this.connection.do(async (database) => {
      let hasWritten = true;
      const saved = await inTransaction(database, this.#both, async (transaction) => {
        const records = transaction.objectStore(this.kind.records);
        const standing = await records.get(id);
        const stands = standing !== undefined && isSound(standing) && standing.removedAt === null;
        if (stands && isSame(standing.document, document)) {
          hasWritten = false;
          return { record: standing, isCopy: false };
        }
        if (!stands || standing.revision !== revision) {
          const record = this.#fresh(document);
          await records.add(record);
          return { record, isCopy: true };
        }
        const change = { document, name: this.#nameOf(document), savedAt: this.#now(), revision: revision + 1 };
        const record: ShelfRecord = { ...standing, ...change };
        await keepVersion(transaction.objectStore(this.kind.versions), standing);
        await records.put(record);
        return { record, isCopy: false };
      });
      if (hasWritten) this.#say(saved.record, 'saved');
      return saved;
    });
  }

  /** Takes a record off the shelf; `restore` undoes it until `forget`. */
  remove(id: string): Promise<Shelved<ShelfRecord>> {
    return this.#mark(id, 'removed');
  }

  /** Puts a removed record back. */
  restore(id: string): Promise<Shelved<ShelfRecord>> {
    return this.#mark(id, 'restored');
  }

  /** A new record under the name `<name>, copy`, with what a copy of its kind begins with. */
  async copy(id: string): Promise<Shelved<ShelfRecord>> {
    const found = await this.get(id);
    if (!found.ok) return found;
    const { document, name } = found.value;
    return this.add({ ...this.kind.copied(document), name: `${name.slice(0, MAX_COPIED_NAME)}, copy` });
  }

  /** Earlier states of a record, latest first, and what stands among them and cannot be read. To go back to one, save its document. */
  versions(id: string): Promise<Shelved<KeptVersions>> {
    return this.connection.do(async (database) => {
      const records = await readAll(database, this.kind.versions, versionsOf(id));
      const isGood = ({ record }: { readonly record: unknown }): boolean => isSoundVersion(record);
      return {
        sound: records
          .filter(isGood)
          .map(({ record }) => record as Version)
          .reverse(),
        damaged: records.filter((read) => !isGood(read)).map(({ key, record }) => ({ key, record, why: null })),
      };
    });
  }

  /** Keeps a state of a record among its versions, however young the last one is. */
  keepAsVersion({ id, revision, document, savedAt }: ShelfRecord): Promise<Shelved<void>> {
    return this.connection.do((database) =>
      inTransaction(database, [this.kind.versions], async (transaction) => {
        await transaction.objectStore(this.kind.versions).put({ id, revision, document, savedAt });
      }),
    );
  }

  /** Deletes the records that were removed before `time`, with all their versions. Returns how many. */
  forget(time: number): Promise<Shelved<number>> {
    return this.connection.do((database) =>
      inTransaction(database, this.#both, async (transaction) => {
        const records = transaction.objectStore(this.kind.records);
        const versions = transaction.objectStore(this.kind.versions);
        const gone = (await records.getAll()).filter(
          (record) => isSound(record) && record.removedAt !== null && record.removedAt < time,
        );
        if (gone.length > 0) COUNTS[this.kind.records].expectFewer(this.#now());
        for (const { id } of gone) {
          await records.delete(id);
          await versions.delete(versionsOf(id));
        }
        return gone.length;
      }),
    );
  }

  /**
   * Puts many documents on the shelf at once, all or none. A document that stands there already is passed over.
   * @param ids wished for them, each unless another record has it
   * @returns how many were added
   */
  addAll(documents: readonly JobRecord[], ids: readonly (string | undefined)[] = []): Promise<Shelved<number>> {
    return this.connection.do(async (database) => {
      const added = await inTransaction(database, [this.kind.records], async (transaction) => {
        const records = transaction.objectStore(this.kind.records);
        const standing = (await records.getAll()).filter((record) => isSound(record) && record.removedAt === null);
        const known = new Set(standing.map(({ document }) => JSON.stringify(document)));
        const taken = new Set<IDBValidKey>(await records.getAllKeys());
        const list = documents.flatMap((document, i): readonly ShelfRecord[] => {
          const text = JSON.stringify(document);
          if (known.has(text)) return [];
          known.add(text);
          const fresh = this.#fresh(document);
          const id = ids[i] ?? fresh.id;
          const record = taken.has(id) ? fresh : { ...fresh, id };
          taken.add(record.id);
          return [record];
        });
        // Async, so that one that throws at once leaves no other rejection unhandled.
        await Promise.all(list.map(async (record) => records.add(record)));
        return list;
      });
      if (added.length > 0) this.#say(added[0]!, 'imported');
      return added.length;
    });
  }

  /**
   * The documents that can be read whatever else is damaged, each once, by their ids: those of the records, and the last versions of those whose
   * record cannot be read. For an export before the shelf is begun anew.
   */
  async readable(): Promise<ReadonlyMap<string, JobRecord>> {
    const read = await this.connection.do(async (database) => {
      const [records, versions] = await Promise.all([
        readAll(database, this.kind.records).catch(() => []),
        readAll(database, this.kind.versions).catch(() => []),
      ]);
      const all = [...versions.map(({ key, record }) => ({ key: key[0], record })), ...records];
      const found = new Map<string, JobRecord>();
      for (const { key, record } of all) {
        const document = isSound(record) ? (record as ShelfRecord).document : documentWithin(record, this.kind);
        if (document !== null) found.set(key, document);
      }
      return found;
    });
    return read.ok ? read.value : new Map();
  }

  /** Deletes the database, with jobs and leathers, where it cannot be read; only ever done when the maker asks for it. */
  async beginAnew(): Promise<Shelved<void>> {
    for (const count of Object.values(COUNTS)) count.expectFewer(this.#now());
    const deleted = await this.connection.delete();
    if (deleted.ok) this.#say({ id: '', revision: 0 }, 'begun');
    return deleted;
  }

  /** Closes this window's connection; the browser finishes what is under way. */
  close(): Promise<void> {
    this.#channel.close();
    return this.connection.close();
  }

  #mark(id: string, what: 'removed' | 'restored'): Promise<Shelved<ShelfRecord>> {
    return this.connection.do(async (database) => {
      const marked = await inTransaction(database, [this.kind.records], async (transaction) => {
        const records = transaction.objectStore(this.kind.records);
        const standing = this.#soundOrMissing(await records.get(id));
        const removedAt = what === 'removed' ? this.#now() : null;
        const record = { ...standing, revision: standing.revision + 1, removedAt };
        await records.put(record);
        return record;
      });
      this.#say(marked, what);
      return marked;
    });
  }

  get #both() {
    return [this.kind.records, this.kind.versions];
  }

  #fresh(document: JobRecord): ShelfRecord {
    const place = { id: freshId(), revision: 1, savedAt: this.#now(), removedAt: null };
    return { ...place, name: this.#nameOf(document), document };
  }

  #nameOf({ name }: JobRecord): string {
    return typeof name === 'string' && name.trim() !== '' ? name : this.kind.untitled;
  }

  #soundOrMissing(record: ShelfRecord | undefined): ShelfRecord {
    if (record === undefined || !isSound(record)) throw missing(this.kind.noun);
    return record;
  }

  #say({ id, revision }: Pick<ShelfRecord, 'id' | 'revision'>, what: ShelfNotice['what']): void {
    const notice: ShelfNotice = { of: this.kind.records, id, what, revision };
    this.#channel.postMessage(notice);
    for (const listener of this.#ownListeners) listener(notice);
  }

  #tell(notice: ShelfNotice): void {
    if (notice.of !== this.kind.records && notice.what !== 'begun') return;
    for (const listener of this.#listeners) listener(notice);
  }
}

/** Leaves room for the words that a copy adds: a name has at most 200 characters. */
const MAX_COPIED_NAME = 180;

const isSame = (a: JobRecord, b: JobRecord): boolean => JSON.stringify(a) === JSON.stringify(b);
