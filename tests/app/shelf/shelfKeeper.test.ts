import { defined } from '../../defined.ts';
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type Kept, ShelfKeeper } from '../../../src/app/shelf/ShelfKeeper.ts';
import { Shelf } from '../../../src/app/shelf/shelf.ts';
import type { JobKey, ShelfPlace } from '../../../src/app/state/jobHistory.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import type { JobRecord } from '../../../src/core/job/migrate.ts';

const named = (name: string): JobRecord => ({ ...EXAMPLE_JOBS[0].document, name });

let shelf: Shelf;
let told: Kept['what'][];
let places: Map<JobKey, ShelfPlace>;
let keeper: ShelfKeeper;

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
  shelf = new Shelf();
  told = [];
  places = new Map();
  keeper = new ShelfKeeper(shelf, places, ({ what }) => told.push(what));
});

afterEach(() => shelf.close());

async function standing(): Promise<readonly string[]> {
  const list = await shelf.list();
  if (!list.ok) throw new Error(list.trouble.message);
  return list.value.map(({ name }) => name).sort();
}

test('keys pressed in a row make one save, of the last state', async () => {
  const key = 'first';
  for (const name of ['a', 'ab', 'abc']) keeper.keep(key, named(name));
  await keeper.flush();
  expect(await standing()).toEqual(['abc']);
  expect(places.get(key)?.revision).toBe(1);
});

test('a waiting state of one job is written before another job waits', async () => {
  keeper.keep('first', named('first'));
  keeper.keep('second', named('second'));
  await keeper.flush();
  expect(await standing()).toEqual(['first', 'second']);
});

test('a job that is on the shelf already is saved there', async () => {
  await shelf.add(named('known'));
  keeper.keep('first', named('known'));
  await keeper.flush();
  expect(await standing()).toEqual(['known']);
});

test('an unedited job makes no copy, though another window has changed it', async () => {
  const [mine, document] = ['first', named('one')];
  keeper.keep(mine, document);
  await keeper.flush();
  const { id, revision } = defined(places.get(mine));
  await shelf.save(id, revision, named('two'));
  keeper.keep(mine, named('three'));
  keeper.keep(mine, document);
  await keeper.flush();
  expect(await standing()).toEqual(['two']);
  keeper.keep(mine, named('three'));
  await keeper.flush();
  expect(await standing()).toEqual(['three', 'two']);
  expect(told).toEqual(['kept', 'parted']);
});

test('a change undone while it was being saved is saved too', async () => {
  const [mine, document] = ['first', named('one')];
  keeper.keep(mine, document);
  await keeper.flush();
  keeper.keep(mine, named('two'));
  void keeper.flush();
  keeper.keep(mine, document);
  await keeper.flush();
  expect(await standing()).toEqual(['one']);
});

test('trouble is reported, and the next save tries again from the last revision', async () => {
  const key = 'first';
  const { indexedDB } = globalThis;
  // @ts-expect-error A browser without storage.
  globalThis.indexedDB = undefined;
  keeper.keep(key, named('one'));
  await keeper.flush();
  expect(told).toEqual(['trouble']);
  expect(places.get(key)).toBeUndefined();
  globalThis.indexedDB = indexedDB;
  keeper.keep(key, named('one'));
  await keeper.flush();
  expect(await standing()).toEqual(['one']);
});

test('a job left unsaved in an earlier visit is saved on the next', async () => {
  const added = await shelf.add(named('one'));
  if (!added.ok) throw new Error(added.trouble.message);
  const key = 'first';
  places.set(key, { id: added.value.id, revision: 1, document: null });
  keeper.keep(key, named('two'));
  await keeper.flush();
  expect(await standing()).toEqual(['two']);
});
