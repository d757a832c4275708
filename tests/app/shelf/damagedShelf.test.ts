import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { rawText } from '../../../src/app/shelf/damaged.ts';
import { Shelf } from '../../../src/app/shelf/shelf.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { defined } from '../../defined.ts';
import { value } from './shelved.ts';

const tideLedger = EXAMPLE_JOBS[0].document;

let open: Shelf[];

function shelfOf(name = 'coverwright'): Shelf {
  const shelf = new Shelf({ name });
  open.push(shelf);
  return shelf;
}

const states = async (versions: ReturnType<Shelf['versions']>) => (await value(versions)).sound;

const damaged = async (shelf: Shelf) => (await value(shelf.read())).damaged;
const removed = async (shelf: Shelf) => (await value(shelf.read())).removed;

/** The database as another program could have left it. */
function raw(version: number | undefined, upgrade: (database: IDBDatabase) => void = () => {}): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open('coverwright', version);
    request.onupgradeneeded = () => upgrade(request.result);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

async function putRaw(store: string, ...records: readonly unknown[]): Promise<void> {
  const database = await raw(undefined);
  const transaction = database.transaction(store, 'readwrite');
  for (const record of records) transaction.objectStore(store).put(record);
  await new Promise((resolve) => {
    transaction.oncomplete = resolve;
  });
  database.close();
}

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
  open = [];
});

afterEach(async () => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  await Promise.all(open.map((shelf) => shelf.close()));
});

const sound = { revision: 1, name: 'Sound', document: tideLedger, savedAt: 7, removedAt: null };

describe('a record that cannot be read', () => {
  const SPOILT = [
    ['a numeric name', { ...sound, id: 'x', name: 7 }],
    ['no document', { ...sound, id: 'x', document: undefined }],
    ['a list for a document', { ...sound, id: 'x', document: [1] }],
    ['a document that is no JSON', { ...sound, id: 'x', document: { width_mm: 7n } }],
    ['a time that is none', { ...sound, id: 'x', savedAt: Number.NaN }],
    ['no word of its removal', { ...sound, id: 'x', removedAt: undefined }],
    ['a removal at no time', { ...sound, id: 'x', removedAt: new Date(0) }],
    ['a revision in words', { ...sound, id: 'x', revision: 'one' }],
    ['nothing but a key', { id: 5 }],
  ] as const;

  test.each(SPOILT)('with %s is set apart, and the others are there', async (_what, record) => {
    const shelf = shelfOf();
    await value(shelf.add(tideLedger));
    await putRaw('jobs', record);
    expect((await value(shelf.list())).map(({ name }) => name)).toEqual(['Tide ledger']);
    expect(await removed(shelf)).toEqual([]);
    const [apart, ...others] = await damaged(shelf);
    expect(others).toEqual([]);
    expect(apart).toMatchObject({ key: record.id, record });
    // It is never deleted with removed jobs, imports and copies work, and it can be exported whatever is in it.
    await value(shelf.forget(Number.MAX_SAFE_INTEGER));
    expect(await value(shelf.addAll([{ ...tideLedger, name: 'Imported' }]))).toBe(1);
    expect(await damaged(shelf)).toHaveLength(1);
    expect(JSON.parse(rawText(apart!.record))).toMatchObject({ id: record.id });
  });

  test('that the browser itself gives up on costs only itself', async () => {
    const shelf = shelfOf();
    const { id } = await value(shelf.add(tideLedger));
    await putRaw('jobs', { ...sound, id: 'x' });
    const { getAll, get } = IDBObjectStore.prototype;
    const fault = (): never => {
      throw new DOMException('a fault of the disk', 'UnknownError');
    };
    vi.spyOn(IDBObjectStore.prototype, 'getAll').mockImplementation(function (this: IDBObjectStore, ...words) {
      return this.name === 'jobs' ? fault() : getAll.apply(this, words);
    });
    vi.spyOn(IDBObjectStore.prototype, 'get').mockImplementation(function (this: IDBObjectStore, key) {
      return key === 'x' ? fault() : get.call(this, key);
    });
    expect((await value(shelf.list())).map((job) => job.id)).toEqual([id]);
    expect((await damaged(shelf)).map(({ key }) => key)).toEqual(['x']);
  });

  test('is named by what is wrong with it', async () => {
    const shelf = shelfOf();
    await value(shelf.list());
    await putRaw('jobs', { ...sound, id: 'a', name: 7, savedAt: 'noon' }, { ...sound, id: 'b', name: 7 }, { id: 'c' });
    expect((await damaged(shelf)).map(({ why }) => why)).toEqual([
      'name and day of saving cannot be read',
      'name cannot be read',
      'count of saves, name, measures, day of saving and day of removal cannot be read',
    ]);
  });

  test('cannot be opened as a job, and a save under its id loses neither', async () => {
    const shelf = shelfOf();
    await value(shelf.list());
    await putRaw('jobs', { ...sound, id: 'a', name: 7 });
    expect(await shelf.get('a')).toMatchObject({ ok: false, trouble: { kind: 'missing' } });
    const { record: job } = await value(shelf.save('a', 1, { ...tideLedger, name: 'Mine' }));
    expect(job.id).not.toBe('a');
    expect(await damaged(shelf)).toHaveLength(1);
  });

  test('is put back with what can be read of it, its versions among it, and none of these is written over', async () => {
    const shelf = shelfOf();
    await value(shelf.list());
    await putRaw('versions', { id: 'a', revision: 4, document: { ...tideLedger, name: 'Earlier' }, savedAt: 3 });
    await putRaw(
      'jobs',
      { ...sound, id: 'a', name: 7, revision: 'one' },
      { ...sound, id: 5, document: JSON.stringify(tideLedger) },
    );
    const back = await value(shelf.repair('a'));
    expect(back).toEqual({ ...sound, id: 'a', revision: 5, name: tideLedger.name });
    expect(await value(shelf.repair(5))).toMatchObject({ document: tideLedger, savedAt: 7, id: expect.any(String) });
    expect(await damaged(shelf)).toEqual([]);
    expect(await value(shelf.list())).toHaveLength(2);
    await value(shelf.save('a', 5, { ...tideLedger, name: 'Later' }));
    expect((await states(shelf.versions('a'))).map(({ document }) => document.name)).toContain('Earlier');
    // A sound one stays as it is.
    const standing = await value(shelf.get('a'));
    expect(await value(shelf.repair('a'))).toEqual(standing);
  });

  test.each([
    ['no document', { ...sound, id: 'x', document: undefined }],
    ['a document that is no job', { ...sound, id: 'x', name: 7, document: { book: 'thick' } }],
    ['a text that is none', { ...sound, id: 'x', document: '{"book":' }],
  ])('with %s cannot be put back, and stays as it is', async (_what, record) => {
    const shelf = shelfOf();
    await value(shelf.list());
    await putRaw('jobs', record);
    expect(await shelf.repair('x')).toMatchObject({ ok: false, trouble: { kind: 'missing' } });
    expect(await damaged(shelf)).toMatchObject([{ key: 'x', record }]);
  });

  test('is deleted when it is discarded, but a sound one is kept', async () => {
    const shelf = shelfOf();
    const { id } = await value(shelf.add(tideLedger));
    await putRaw('jobs', { id: 5 });
    await value(shelf.discardDamaged(5));
    await value(shelf.discardDamaged(id));
    expect(await damaged(shelf)).toEqual([]);
    expect(await value(shelf.list())).toHaveLength(1);
  });

  test('among the versions of a job hides none of the others', async () => {
    const shelf = shelfOf();
    const { id } = await value(shelf.add(tideLedger));
    await value(shelf.save(id, 1, { ...tideLedger, name: 'Second' }));
    await putRaw('versions', { id, revision: 9, document: tideLedger, savedAt: 'noon' });
    expect((await states(shelf.versions(id))).map(({ revision }) => revision)).toEqual([1]);
    expect((await value(shelf.versions(id))).damaged).toMatchObject([{ key: [id, 9], record: { savedAt: 'noon' } }]);
    await value(shelf.save(id, 2, { ...tideLedger, name: 'Third' }));
  });
});

describe('a database without its stores', () => {
  test('is rebuilt when it is first used', async () => {
    (await raw(1)).close();
    const shelf = shelfOf();
    expect(await value(shelf.list())).toEqual([]);
    const { id } = await value(shelf.add(tideLedger));
    expect((await value(shelfOf().get(id))).document).toEqual(tideLedger);
  });

  test('keeps the contents of the one store that it has', async () => {
    (await raw(1, (database) => database.createObjectStore('jobs', { keyPath: 'id' }))).close();
    await putRaw('jobs', { ...sound, id: 'a' });
    const shelf = shelfOf();
    const { record: job, isCopy } = await value(shelf.save('a', 1, { ...tideLedger, name: 'Changed' }));
    expect([job.id, isCopy]).toEqual(['a', false]);
    expect(await states(shelf.versions('a'))).toHaveLength(1);
  });

  test('is rebuilt once when many windows open it at once', async () => {
    (await raw(1)).close();
    const many = Array.from({ length: 5 }, () => shelfOf());
    await Promise.all(many.map((shelf, i) => value(shelf.add({ ...tideLedger, name: `Job ${i}` }))));
    expect(await value(shelfOf().list())).toHaveLength(5);
  });
});

describe('a database that the browser cannot open', () => {
  const fault = new DOMException('Internal error opening backing store for indexedDB.open.', 'UnknownError');
  /** Answers every opening with an error, until the database is deleted. */
  function breakOpening(): void {
    const { deleteDatabase } = indexedDB;
    const opening = vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      const request = new IDBOpenDBRequest();
      Object.defineProperty(request, 'error', { value: fault });
      request.addEventListener = (type: string, listener: EventListenerOrEventListenerObject) => {
        if (type === 'error') setTimeout(() => (listener as EventListener)(new Event(type)));
      };
      return request;
    });
    vi.spyOn(indexedDB, 'deleteDatabase').mockImplementation((name) => {
      opening.mockRestore();
      return deleteDatabase.call(indexedDB, name);
    });
  }

  test('is told as what it is, stays as it is, and is begun anew when that is asked for', async () => {
    const shelf = shelfOf();
    await value(shelf.add(tideLedger));
    await shelf.close();
    breakOpening();
    const next = shelfOf();
    expect(await next.list()).toMatchObject({ ok: false, trouble: { kind: 'broken' } });
    expect(await next.add(tideLedger)).toMatchObject({ ok: false, trouble: { kind: 'broken' } });
    expect(indexedDB.deleteDatabase).not.toHaveBeenCalled();
    expect(await next.readable()).toEqual(new Map());
    await value(next.beginAnew());
    expect(await value(next.list())).toEqual([]);
    await value(next.add(tideLedger));
    expect(await value(next.list())).toHaveLength(1);
  });

  test('gives what can be read of it, each job once', async () => {
    const shelf = shelfOf();
    const { id } = await value(shelf.add(tideLedger));
    await value(shelf.save(id, 1, { ...tideLedger, name: 'Second' }));
    await value(shelf.add({ ...tideLedger, name: 'Other' }));
    await putRaw('jobs', { ...sound, id: 'a', name: 7, document: { ...tideLedger, name: 'Damaged' } }, { id: 5 });
    const names = async () => [...(await shelf.readable()).values()].map(({ name }) => name).sort();
    expect(await names()).toEqual(['Damaged', 'Other', 'Second']);
    // Where the browser gives up on the jobs, their last versions are left.
    for (const read of ['getAll', 'getAllKeys'] as const) {
      const own = IDBObjectStore.prototype[read] as (...words: unknown[]) => IDBRequest;
      vi.spyOn(IDBObjectStore.prototype, read).mockImplementation(function (this: IDBObjectStore, ...words) {
        if (this.name === 'jobs') throw fault;
        return own.apply(this, words);
      } as typeof IDBObjectStore.prototype.getAll);
    }
    expect(await shelf.list()).toMatchObject({ ok: false, trouble: { kind: 'broken' } });
    expect(await names()).toEqual(['Tide ledger']);
  });

  test('and cannot delete either says how it goes on', async () => {
    breakOpening();
    vi.spyOn(indexedDB, 'deleteDatabase').mockImplementation(() => {
      throw fault;
    });
    expect(await shelfOf().beginAnew()).toMatchObject({ ok: false, trouble: { kind: 'stuck' } });
  });

  test('because it is of a later layout is told as that', async () => {
    (await raw(1000)).close();
    expect(await shelfOf().list()).toMatchObject({ ok: false, trouble: { kind: 'newer' } });
    expect((await raw(undefined)).version).toBe(1000);
  });
});

describe('a store with other keys', () => {
  const stray = { document: { ...tideLedger, name: 'Stray' }, savedAt: 9 };
  const WRONG: readonly (readonly [string, IDBObjectStoreParameters | undefined, (store: IDBObjectStore) => void])[] = [
    ['kept by name', { keyPath: 'name' }, (store) => store.put({ ...sound, id: 'a' })],
    ['kept by no key of its own', undefined, (store) => store.put({ ...sound, id: 'a' }, 1)],
    ['kept by number', { autoIncrement: true }, (store) => store.put({ ...sound, id: 'a' })],
  ];

  test.each(WRONG)('%s is rebuilt with what is in it, and nothing is lost', async (_what, keys, fill) => {
    const database = await raw(1, (database) => {
      const jobs = database.createObjectStore('jobs', keys);
      fill(jobs);
      if (keys?.keyPath === undefined)
        for (const each of [stray, 'a text']) jobs.put(each, keys ? undefined : `${each}`);
      else jobs.put({ ...sound, name: 'Without an id' });
      database.createObjectStore('versions', { keyPath: 'id' }).put({ id: 'a', ...stray });
    });
    database.close();
    const shelf = shelfOf();
    const standing = (await value(shelf.list())).map(({ name }) => name);
    expect(standing.sort()).toEqual(keys?.keyPath ? ['Sound', 'Without an id'] : ['Sound']);
    const apart = await damaged(shelf);
    const within = (text: string) => apart.find(({ record }) => JSON.stringify(record).includes(text));
    if (keys?.keyPath === undefined) expect(within('"a text"')).toBeDefined();
    // What had no key stands among the damaged records, from which a job can be put back.
    const again = within(stray.document.name);
    expect((await value(shelf.repair(defined(again).key))).document).toEqual(stray.document);
    const { isCopy } = await value(shelf.save('a', 1, { ...tideLedger, name: 'Changed' }));
    expect(isCopy).toBe(false);
    expect(await states(shelf.versions('a'))).toHaveLength(1);
  });

  test('is rebuilt once when many windows open it at once', async () => {
    (await raw(1, (database) => database.createObjectStore('jobs').put({ ...sound, id: 'a' }, 1))).close();
    const many = Array.from({ length: 5 }, () => shelfOf());
    await Promise.all(many.map((shelf, i) => value(shelf.add({ ...tideLedger, name: `Job ${i}` }))));
    expect(await value(shelfOf().list())).toHaveLength(6);
  });
});

test('a connection that another window has closed is opened again for the work at hand', async () => {
  const shelf = shelfOf();
  await value(shelf.list());
  const transaction = vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementationOnce(() => {
    throw new DOMException('The database connection is closing.', 'InvalidStateError');
  });
  await value(shelf.add(tideLedger));
  expect(transaction).toHaveBeenCalled();
  expect(await value(shelf.list())).toHaveLength(1);
});

test('a database that never opens is reported, and is tried again the next time', async () => {
  vi.useFakeTimers();
  const opening = vi.spyOn(indexedDB, 'open').mockImplementation(() => new IDBOpenDBRequest());
  const shelf = shelfOf();
  const answer = shelf.list();
  await vi.advanceTimersByTimeAsync(60_000);
  expect(await answer).toMatchObject({ ok: false, trouble: { kind: 'silent' } });
  opening.mockRestore();
  vi.useRealTimers();
  expect(await value(shelf.list())).toEqual([]);
});
