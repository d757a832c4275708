import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { LEATHERS } from '../../../src/app/shelf/leatherKind.ts';
import { leatherWords } from '../../../src/app/shelf/leatherWords.ts';
import { shelfSearch } from '../../../src/app/shelf/searchShelf.ts';
import { Shelf } from '../../../src/app/shelf/shelf.ts';
import { readShelfFile, shelfFile } from '../../../src/app/shelf/shelfFile.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { openLeather } from '../../../src/core/stock/openLeather.ts';
import { nth } from '../../nth.ts';
import { value } from './shelved.ts';

const tideLedger = EXAMPLE_JOBS[0].document;
const written = (name: string, more: object = {}) => ({
  format: 'coverwright-leather',
  version: 1,
  name,
  min_mm: 1.6,
  max_mm: 2,
  ...more,
});

let jobs: Shelf;
let leathers: Shelf;

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
  jobs = new Shelf();
  leathers = new Shelf({ kind: LEATHERS, connection: jobs.connection });
});

afterEach(() => Promise.all([jobs.close(), leathers.close()]));

/** The database with stores of the browser's choice. */
function raw(upgrade: (database: IDBDatabase) => void): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open('coverwright');
    request.onupgradeneeded = () => upgrade(request.result);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

const names = async (shelf: Shelf) => (await value(shelf.list())).map(({ name }) => name);

describe('jobs and leathers in one database', () => {
  test('stand apart, and a window hears of its own kind', async () => {
    const other = new Shelf({ kind: LEATHERS });
    const heard: string[] = [];
    other.watch(({ id }) => heard.push(id));
    await value(jobs.add(tideLedger));
    const { id } = await value(leathers.add(written('Side')));
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(heard).toEqual([id]);
    expect(await names(jobs)).toEqual(['Tide ledger']);
    expect(await names(leathers)).toEqual(['Side']);
    expect(await leathers.get('none')).toMatchObject({
      ok: false,
      trouble: { message: expect.stringContaining('leather') },
    });
    await other.close();
  });

  test('a database from before leathers keeps its jobs, their versions and the steps of undo', async () => {
    const job = { id: 'a', revision: 3, name: 'Old', document: tideLedger, savedAt: 7, removedAt: null };
    const database = await raw((fresh) => {
      fresh.createObjectStore('jobs', { keyPath: 'id' }).put(job);
      fresh.createObjectStore('versions', { keyPath: ['id', 'revision'] }).put({ ...job, revision: 2 });
      fresh.createObjectStore('journals', { keyPath: 'window' }).put({ window: 'w' });
      fresh.createObjectStore('steps', { keyPath: ['window', 'at'] }).put({ window: 'w', at: 1 });
    });
    database.close();
    await value(leathers.add(written('Side')));
    expect(await value(jobs.list())).toEqual([job]);
    expect((await value(jobs.versions('a'))).sound).toHaveLength(1);
    const steps = await jobs.connection.do((opened) => Promise.all([opened.count('journals'), opened.count('steps')]));
    expect(await value(Promise.resolve(steps))).toEqual([1, 1]);
  });

  test('a store of leathers with other keys is rebuilt, and what has no key stands among the damaged', async () => {
    const database = await raw((fresh) => {
      fresh.createObjectStore('leathers', { keyPath: 'name' }).put({ ...written('Side'), document: written('Side') });
    });
    database.close();
    const { damaged } = await value(leathers.read());
    expect(damaged).toHaveLength(1);
    expect((await value(leathers.repair(nth(damaged, 0).key))).document).toEqual(written('Side'));
    expect(await names(leathers)).toEqual(['Side']);
    expect((await value(jobs.read())).damaged).toEqual([]);
  });

  test('a damaged record that holds no leather cannot be put back as one', async () => {
    await value(leathers.list());
    await leathers.connection.do((database) => database.put('leathers', { id: 'x', document: tideLedger } as never));
    expect(await leathers.repair('x')).toMatchObject({ ok: false, trouble: { kind: 'missing' } });
  });
});

describe('a file of leathers', () => {
  test('of 5,000 with 50 broken ones gives 4,950 and names each of the 50', () => {
    const many = Array.from({ length: 5000 }, (_, i) =>
      i % 100 === 7 ? written(`Broken ${i}`, { min_mm: 9 + (i % 3), tannage: 'none' }) : written(`Side ${i}`),
    );
    const { documents, broken } = readShelfFile(shelfFile(many, LEATHERS), LEATHERS);
    expect(documents).toHaveLength(4950);
    expect(broken.map(({ index, name }) => [index, name])).toEqual(
      Array.from({ length: 50 }, (_, i) => [100 * i + 7, `Broken ${100 * i + 7}`]),
    );
    for (const { issues } of broken) expect(issues.map(({ path }) => path)).toEqual(['min_mm', 'tannage']);
  });

  test('gives back what was written, one or many, and takes no job for a leather', async () => {
    const { id } = await value(leathers.add(written('Side', { notes: 'from the north' })));
    const { document } = await value(leathers.get(id));
    const [back] = readShelfFile(shelfFile([document], LEATHERS), LEATHERS).documents;
    expect(back).toMatchObject(document);
    expect(readShelfFile(JSON.stringify(document), LEATHERS).documents).toEqual([back]);
    const { broken } = readShelfFile(JSON.stringify(tideLedger), LEATHERS);
    expect(broken).toMatchObject([{ name: 'Tide ledger', issues: [{ path: 'format' }] }]);
  });

  test('keeps the ids by which jobs name them, unless another has one already', async () => {
    const kept = await value(leathers.add(written('Side')));
    const file = shelfFile([kept.document, written('Back')], LEATHERS, [kept.id, 'a-b']);
    globalThis.indexedDB = new IDBFactory();
    const elsewhere = new Shelf({ kind: LEATHERS });
    const bring = async (text: string) => {
      const { documents, ids } = readShelfFile(text, LEATHERS);
      return value(elsewhere.addAll(documents, ids));
    };
    expect(await bring(file)).toBe(2);
    expect((await value(elsewhere.get(kept.id))).name).toBe('Side');
    expect((await value(elsewhere.get('a-b'))).name).toBe('Back');
    expect(await bring(file)).toBe(0);
    expect(await bring(shelfFile([written('Other')], LEATHERS, ['a-b']))).toBe(1);
    expect((await value(elsewhere.get('a-b'))).name).toBe('Back');
    expect(await bring(shelfFile([written('Odd')], LEATHERS, ['../x y']))).toBe(1);
    const odd = (await value(elsewhere.list())).find(({ name }) => name === 'Odd');
    expect(odd?.id).not.toContain('/');
    await elsewhere.close();
  });

  test('of a version to come is refused', () => {
    expect(openLeather(written('Side', { version: 2 }))).toMatchObject({ ok: false, issues: [{ path: 'version' }] });
    const { broken } = readShelfFile('{"format":"coverwright-leathers","version":2,"leathers":[]}', LEATHERS);
    expect(broken).toMatchObject([{ issues: [{ got: 'a file of leathers of another version' }] }]);
  });
});

describe('searching leathers', () => {
  const LIST = [
    written('Harness back', { notes: 'Smells of oak bark', finish: 'waxed', colour: '#8f5b3a' }),
    written('Bookbinding skin', { min_mm: 0.8, max_mm: 1, tannage: 'alum', surface: 'matt', colour: '#101010' }),
    written('Élan side', { min_mm: 1.984375, max_mm: 2.38125, tannage: 'chrome', colour: '#8f5b3a' }),
  ].map((given, i) => {
    const opened = openLeather(given);
    const document = opened.ok ? opened.document : given;
    return { id: String(i), revision: 1, name: given.name, document, savedAt: i, removedAt: null };
  });
  const search = shelfSearch(LIST, leatherWords);
  test.each([
    ['', [0, 1, 2]],
    ['oak', [0]],
    ['WAXED vegetable', [0]],
    ['alum matt', [1]],
    ['black', [1]],
    ['brown', [0, 2]],
    ['elan', [2]],
    ['5-6 oz', [2]],
    ['1.98', [2]],
    ['1.6', [0]],
    ['harness chrome', []],
    ['(', []],
  ])('%j finds %j', (text, found) => expect(search(text).map(({ id }) => Number(id))).toEqual(found));

  test('accepts a document that is no leather', () => {
    expect(shelfSearch([{ ...nth(LIST, 0), document: { min_mm: 'thin' } }], leatherWords)('harness')).toHaveLength(1);
  });
});
