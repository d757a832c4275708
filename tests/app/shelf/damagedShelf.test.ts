import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { rawText } from '../../../src/app/shelf/damaged.ts';
import { Shelf } from '../../../src/app/shelf/shelf.ts';
import type { Shelved } from '../../../src/app/shelf/shelfTrouble.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';

const tideLedger = EXAMPLE_JOBS[0].document;

let open: Shelf[];

function shelfOf(name = 'coverwright'): Shelf {
  const shelf = new Shelf({ name });
  open.push(shelf);
  return shelf;
}

async function value<T>(shelved: Promise<Shelved<T>>): Promise<T> {
  const result = await shelved;
  if (!result.ok) throw new Error(result.trouble.message);
  return result.value;
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
    await putRaw('jobs', { ...sound, id: 'a', name: 7, savedAt: 'noon' });
    expect((await damaged(shelf))[0]?.why).toBe('name and savedAt cannot be read');
  });

  test('cannot be opened as a job, and a save under its id loses neither', async () => {
    const shelf = shelfOf();
    await value(shelf.list());
    await putRaw('jobs', { ...sound, id: 'a', name: 7 });
    expect(await shelf.get('a')).toMatchObject({ ok: false, trouble: { kind: 'missing' } });
    const { job } = await value(shelf.save('a', 1, { ...tideLedger, name: 'Mine' }));
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
    const { job, isCopy } = await value(shelf.save('a', 1, { ...tideLedger, name: 'Changed' }));
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
