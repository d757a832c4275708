import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Shelf } from '../../../src/app/shelf/shelf.ts';
import { COUNTS } from '../../../src/app/shelf/shelfCount.ts';
import type { ShelfJob } from '../../../src/app/shelf/shelfSchema.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { nth } from '../../nth.ts';
import { value } from './shelved.ts';

const [tideLedger] = EXAMPLE_JOBS.map(({ document }) => document);
const named = (count: number) => Array.from({ length: count }, (_, i) => ({ ...tideLedger!, name: `Job ${i}` }));

const START = Date.UTC(2026, 10, 28);
const DAY = 24 * 3600 * 1000;

let clock: number;
let open: Shelf[];
let stored: Map<string, string>;

/** A window with the shelf in it, a second after the last. */
function window(): Shelf {
  const shelf = new Shelf({ now: () => (clock += 1000) });
  open.push(shelf);
  return shelf;
}

/** The browser deletes the database. */
function evict(): void {
  globalThis.indexedDB = new IDBFactory();
}

async function deleteJobs(count: number): Promise<void> {
  await window().connection.do(async (database) => {
    for (const key of (await database.getAllKeys('jobs')).slice(0, count)) await database.delete('jobs', key);
  });
}

/** Starts the page anew, and says what it has lost. */
async function visit() {
  const shelf = window();
  await value(shelf.list());
  return COUNTS.jobs.lost();
}

beforeEach(() => {
  evict();
  clock = START;
  open = [];
  stored = new Map();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => stored.get(key) ?? null,
    setItem: (key: string, text: string) => void stored.set(key, text),
    removeItem: (key: string) => void stored.delete(key),
  });
});

afterEach(async () => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
  await Promise.all(open.map((shelf) => shelf.close()));
});

test('a shelf that the browser has emptied is told with what there was and when, until the note is closed', async () => {
  await value(window().addAll(named(3)));
  expect(await visit()).toBeNull();
  const [at, text] = [clock, [...stored.values()].join()];
  // A few figures, however large the shelf is.
  expect(text.length).toBeLessThan(100);
  evict();
  expect(await visit()).toMatchObject({ covers: 3, left: 0 });
  const { at: told } = (await visit())!;
  expect(Math.abs(told - at)).toBeLessThan(60_000);
  // What is kept meanwhile changes nothing of it.
  await value(window().add(tideLedger!));
  expect(await visit()).toMatchObject({ covers: 3, left: 1, at: told });
  COUNTS.jobs.dismissLost();
  expect(await visit()).toBeNull();
  expect(await visit()).toBeNull();
});

test('a shelf that has lost many is told too, one that has lost few is not', async () => {
  await value(window().addAll(named(10)));
  await visit();
  await deleteJobs(4);
  expect(await visit()).toBeNull();
  await deleteJobs(4);
  expect(await visit()).toMatchObject({ covers: 6, left: 2 });
});

test('nothing is told of covers that were removed by hand, and deleted after thirty days', async () => {
  const shelf = window();
  await value(shelf.addAll(named(8)));
  await visit();
  for (const { id } of (await value(shelf.list())).slice(1)) await value(shelf.remove(id));
  expect(await visit()).toBeNull();
  clock += 31 * DAY;
  const other = window();
  await visit();
  expect(await value(other.forget(clock - 30 * DAY))).toBe(7);
  expect(await visit()).toBeNull();
  clock += DAY;
  expect(await visit()).toBeNull();
});

test('nor while another window deletes them and this one reads before and after', async () => {
  const [shelf, other] = [window(), window()];
  await value(shelf.addAll(named(7)));
  for (const { id } of (await value(shelf.list())).slice(1)) await value(shelf.remove(id));
  clock += 31 * DAY;
  await visit();
  const reading = [shelf.read(), shelf.read()];
  const forgotten = other.forget(clock - 30 * DAY);
  await Promise.all([...reading, forgotten, shelf.read(), shelf.read()]);
  expect(await visit()).toBeNull();
  expect(await value(forgotten)).toBe(6);
  // A window whose own thread is busy hears late what it has read.
  const content = (await value(shelf.read())).standing;
  const [before, after]: (readonly ShelfJob[])[] = [Array.from({ length: 8 }, () => nth(content, 0)), content];
  const holding = (standing: readonly ShelfJob[] = []) => ({ standing, removed: [], damaged: [] });
  clock += DAY;
  COUNTS.jobs.take(holding(before), clock);
  COUNTS.jobs.expectFewer(clock + 10);
  COUNTS.jobs.take(holding(before), clock + 5);
  COUNTS.jobs.take(holding(after), clock + 20);
  expect(COUNTS.jobs.lost()).toBeNull();
});

test('nor of damaged records that were deleted, an import, a shelf begun anew, or one that could not be read', async () => {
  const shelf = window();
  await value(shelf.add(tideLedger!));
  await shelf.connection.do(async (database) => {
    for (let i = 0; i < 4; i++) await database.put('jobs', { id: `x${i}` } as never);
  });
  await visit();
  for (let i = 0; i < 4; i++) await value(shelf.discardDamaged(`x${i}`));
  expect(await visit()).toBeNull();
  clock += DAY;
  await value(shelf.addAll(named(50)));
  expect(await visit()).toBeNull();
  const reading = vi.spyOn(IDBObjectStore.prototype, 'getAllKeys').mockImplementation(() => {
    throw new DOMException('a fault', 'UnknownError');
  });
  expect((await shelf.read()).ok).toBe(false);
  reading.mockRestore();
  expect(COUNTS.jobs.lost()).toBeNull();
  await value(shelf.beginAnew());
  expect(await visit()).toBeNull();
});

test('nor after the clock was fifty years off, in either direction', async () => {
  const FIFTY = 50 * 365 * DAY;
  await value(window().addAll(named(3)));
  for (const shift of [FIFTY, -FIFTY, -FIFTY, FIFTY]) {
    clock += shift;
    expect(await visit()).toBeNull();
  }
  // And it is still counted.
  clock += DAY;
  await visit();
  evict();
  expect(await visit()).toMatchObject({ covers: 3 });
});

test('nor where the count cannot be read or kept', async () => {
  await value(window().addAll(named(3)));
  await visit();
  for (const text of [
    '',
    'null',
    '{}',
    '{"standing":"3","all":3,"at":1}',
    '[7]',
    '{"standing":3,"all":1e999,"at":1}',
  ]) {
    for (const key of stored.keys()) stored.set(key, text);
    evict();
    expect(await visit(), text).toBeNull();
  }
  vi.stubGlobal('localStorage', undefined);
  expect(await visit()).toBeNull();
});
