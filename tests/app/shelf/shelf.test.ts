import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { JOBS } from '../../../src/app/shelf/jobKind.ts';
import { MAX_VERSIONS, VERSION_SPACING_MS } from '../../../src/app/shelf/keepVersion.ts';
import { LEATHERS } from '../../../src/app/shelf/leatherKind.ts';
import { Shelf, type ShelfNotice } from '../../../src/app/shelf/shelf.ts';
import type { ShelfKind } from '../../../src/app/shelf/shelfKind.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import type { JobRecord } from '../../../src/core/job/migrate.ts';
import { value } from './shelved.ts';

const tideLedger = EXAMPLE_JOBS[0].document;
const choirBook = EXAMPLE_JOBS[1].document;
const named = (name: string): JobRecord => ({ ...tideLedger, name });

let kind: ShelfKind;
let clock: number;
let open: Shelf[];

/** A window with the shelf in it. */
function window(): Shelf {
  const shelf = new Shelf({ now: () => clock++, kind });
  open.push(shelf);
  return shelf;
}

const states = async (versions: ReturnType<Shelf['versions']>) => (await value(versions)).sound;

const names = async (shelf: Shelf, which: 'standing' | 'removed' = 'standing') =>
  (await value(shelf.read()))[which].map(({ name }) => name);

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
  clock = 1_000_000_000_000;
  open = [];
});

afterEach(async () => {
  vi.restoreAllMocks();
  await Promise.all(open.map((shelf) => shelf.close()));
});

// What the document is makes no difference: both shelves keep any object.
describe.each([JOBS, LEATHERS])('of $records: ', (each) => {
  beforeEach(() => {
    kind = each;
  });

  describe('the shelf', () => {
    test('keeps what was put on it, the last saved first', async () => {
      const shelf = window();
      const { id } = await value(shelf.add(tideLedger));
      await value(shelf.add(choirBook));
      expect(await names(shelf)).toEqual(['Choir book', 'Tide ledger']);
      await value(shelf.save(id, 1, { ...tideLedger, seating: 'front' }));
      expect(await names(shelf)).toEqual(['Tide ledger', 'Choir book']);
      expect((await value(window().get(id))).document).toEqual({ ...tideLedger, seating: 'front' });
    });

    test('keeps an invalid document, under a default name', async () => {
      const shelf = window();
      await value(shelf.add({ book: { width_mm: 'one' } }));
      await value(shelf.add({ name: 7 }));
      expect(await names(shelf)).toEqual([kind.untitled, kind.untitled]);
    });

    test('gives a removed job back as it was', async () => {
      const shelf = window();
      const { id } = await value(shelf.add(tideLedger));
      await value(shelf.remove(id));
      expect(await names(shelf)).toEqual([]);
      expect(await names(shelf, 'removed')).toEqual(['Tide ledger']);
      await value(shelf.restore(id));
      expect(await names(shelf)).toEqual(['Tide ledger']);
      expect((await value(shelf.get(id))).document).toEqual(tideLedger);
    });

    test('forgets only what was removed before, with its versions', async () => {
      const shelf = window();
      const early = await value(shelf.add(named('early')));
      await value(shelf.save(early.id, 1, named('early, changed')));
      await value(shelf.remove(early.id));
      const time = clock;
      const late = await value(shelf.add(named('late')));
      await value(shelf.remove(late.id));
      await value(shelf.add(named('standing')));
      expect(await value(shelf.forget(time))).toBe(1);
      expect(await names(shelf, 'removed')).toEqual(['late']);
      expect(await names(shelf)).toEqual(['standing']);
      expect(await states(shelf.versions(early.id))).toEqual([]);
      expect(await shelf.get(early.id)).toMatchObject({ ok: false, trouble: { kind: 'missing' } });
    });

    test('copies a job into a new one, however long its name', async () => {
      const shelf = window();
      const { id } = await value(shelf.add(named('x'.repeat(200))));
      const copy = await value(shelf.copy(id));
      expect(copy.id).not.toBe(id);
      expect(copy.document).toEqual({ ...tideLedger, name: copy.name });
      expect(copy.name.length).toBeLessThanOrEqual(200);
      expect(copy.name).toMatch(/, copy$/);
    });

    test('copies what was bought or drawn, not the work on it', async () => {
      const shelf = window();
      const worked = kind === JOBS ? { made: { cut: '2026-11-26' } } : { covers: [], tests: {}, callipered_mm: [2] };
      const { id } = await value(shelf.add({ ...tideLedger, ...worked }));
      expect((await value(shelf.copy(id))).document).toEqual({ ...tideLedger, name: 'Tide ledger, copy' });
      expect((await value(shelf.get(id))).document).toEqual({ ...tideLedger, ...worked });
    });

    test('says that a job is not there', async () => {
      const shelf = window();
      for (const answer of [shelf.get('none'), shelf.remove('none'), shelf.restore('none'), shelf.copy('none')])
        expect(await answer).toMatchObject({ ok: false, trouble: { kind: 'missing' } });
    });
  });

  describe('versions of a job', () => {
    test('keep the state before each session of work, latest first', async () => {
      const shelf = window();
      const { id } = await value(shelf.add(named('first')));
      for (const [revision, name] of [
        [1, 'second'],
        [2, 'third'],
      ] as const) {
        clock += VERSION_SPACING_MS;
        await value(shelf.save(id, revision, named(name)));
      }
      expect((await states(shelf.versions(id))).map(({ document }) => document.name)).toEqual(['second', 'first']);
    });

    test('leave out saves that follow each other closely', async () => {
      const shelf = window();
      const { id } = await value(shelf.add(named('0')));
      for (let revision = 1; revision <= 20; revision++) await value(shelf.save(id, revision, named(String(revision))));
      expect((await states(shelf.versions(id))).map(({ document }) => document.name)).toEqual(['0']);
      expect((await value(shelf.get(id))).document.name).toBe('20');
    });

    test('drop the oldest when there are too many', async () => {
      const shelf = window();
      const { id } = await value(shelf.add(named('0')));
      for (let revision = 1; revision <= MAX_VERSIONS + 3; revision++) {
        clock += VERSION_SPACING_MS;
        await value(shelf.save(id, revision, named(String(revision))));
      }
      const kept = (await states(shelf.versions(id))).map(({ document }) => Number(document.name));
      expect(kept).toEqual(Array.from({ length: MAX_VERSIONS }, (_, i) => MAX_VERSIONS + 2 - i));
    });

    test('restore an earlier state by saving it', async () => {
      const shelf = window();
      const { id } = await value(shelf.add(named('first')));
      await value(shelf.save(id, 1, named('second')));
      const [version] = await states(shelf.versions(id));
      await value(shelf.save(id, 2, version!.document));
      expect((await value(shelf.get(id))).document).toEqual(named('first'));
    });
  });

  describe('two windows on one job', () => {
    test('lose neither’s work: the later save becomes a job of its own', async () => {
      const [one, two] = [window(), window()];
      const { id, revision } = await value(one.add(tideLedger));
      await value(two.get(id));
      const first = await value(one.save(id, revision, named('from one')));
      const second = await value(two.save(id, revision, named('from two')));
      expect(first.isCopy).toBe(false);
      expect(second.isCopy).toBe(true);
      expect(second.record.id).not.toBe(id);
      expect(await names(one)).toEqual(['from two', 'from one']);
      // Each goes on with its own.
      expect((await value(one.save(id, first.record.revision, named('one again')))).isCopy).toBe(false);
      expect((await value(two.save(second.record.id, second.record.revision, named('two again')))).isCopy).toBe(false);
    });

    test('lose nothing when both save at once, many times over', async () => {
      const [one, two] = [window(), window()];
      const { id } = await value(one.add(tideLedger));
      const saves = Array.from({ length: 20 }, (_, i) => (i % 2 ? one : two).save(id, 1, named(`edit ${i}`)));
      const results = await Promise.all(saves.map(value));
      expect(results.filter(({ isCopy }) => !isCopy)).toHaveLength(1);
      expect((await names(one)).sort()).toEqual(Array.from({ length: 20 }, (_, i) => `edit ${i}`).sort());
    });

    test('make no copy where both have the same state', async () => {
      const [one, two] = [window(), window()];
      const { id } = await value(one.add(tideLedger));
      await value(one.save(id, 1, named('same')));
      expect(await value(two.save(id, 1, named('same')))).toMatchObject({ isCopy: false, record: { revision: 2 } });
      expect(await names(one)).toEqual(['same']);
    });

    test('keep the work on a job that the other removed or deleted', async () => {
      const [one, two] = [window(), window()];
      const { id } = await value(one.add(tideLedger));
      await value(one.remove(id));
      expect((await value(two.save(id, 1, named('still at it')))).isCopy).toBe(true);
      await value(one.forget(clock));
      expect((await value(two.save(id, 1, named('and again')))).isCopy).toBe(true);
      expect((await names(two)).sort()).toEqual(['and again', 'still at it']);
    });

    test("are notified of each other's changes, not of their own", async () => {
      const [one, two] = [window(), window()];
      const heard: ShelfNotice[] = [];
      const own: ShelfNotice[] = [];
      two.watch((notice) => heard.push(notice));
      const stop = one.watch((notice) => own.push(notice));
      const { id } = await value(one.add(tideLedger));
      await value(one.save(id, 1, choirBook));
      await value(one.save(id, 2, choirBook)); // nothing new
      await value(one.remove(id));
      await value(one.restore(id));
      await vi.waitFor(() => expect(heard).toHaveLength(4));
      expect(heard.map(({ what, revision }) => [what, revision])).toEqual([
        ['saved', 1],
        ['saved', 2],
        ['removed', 3],
        ['restored', 4],
      ]);
      expect(own).toEqual([]);
      stop();
      await value(two.add(choirBook));
      await value(two.add(tideLedger));
      expect(own).toEqual([]);
    });
  });

  describe('when the browser fails', () => {
    /** Lets the first writes through and breaks the one after them. */
    function breakWrite(after: number, how: (store: IDBObjectStore) => void): void {
      for (const method of ['put', 'add'] as const) {
        const write = IDBObjectStore.prototype[method];
        vi.spyOn(IDBObjectStore.prototype, method).mockImplementation(function (this: IDBObjectStore, ...words) {
          if (after-- <= 0) how(this);
          return write.apply(this, words);
        });
      }
    }

    const opened = (request: IDBOpenDBRequest) =>
      new Promise<IDBDatabase>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const stop = (store: IDBObjectStore) => store.transaction.abort();
    const overflow = () => {
      throw new DOMException('no room', 'QuotaExceededError');
    };

    test.each([0, 1])('a save interrupted at write number %d leaves job and versions as they were', async (after) => {
      const shelf = window();
      const { id } = await value(shelf.add(named('before')));
      breakWrite(after, stop);
      expect((await shelf.save(id, 1, named('after'))).ok).toBe(false);
      vi.restoreAllMocks();
      const restarted = window();
      expect(await value(restarted.get(id))).toMatchObject({ revision: 1, document: { name: 'before' } });
      expect(await states(restarted.versions(id))).toEqual([]);
      expect((await value(restarted.save(id, 1, named('after')))).isCopy).toBe(false);
    });

    test.each([0, 1])('no room at write number %d is reported, and nothing is lost', async (after) => {
      const shelf = window();
      const { id } = await value(shelf.add(named('before')));
      breakWrite(after, overflow);
      expect(await shelf.save(id, 1, named('after'))).toMatchObject({ ok: false, trouble: { kind: 'full' } });
      vi.restoreAllMocks();
      expect(await value(shelf.get(id))).toMatchObject({ revision: 1, document: { name: 'before' } });
      expect(await states(shelf.versions(id))).toEqual([]);
    });

    test.each([0, 1])(
      'a transaction that the browser ends for lack of room at write number %d is reported as such',
      async (after) => {
        const shelf = window();
        const { id } = await value(shelf.add(named('before')));
        // The stand-in database's own way to end a transaction with a reason, as browsers do.
        breakWrite(after, (store) =>
          (store.transaction as unknown as { _abort(reason: string): void })._abort('QuotaExceededError'),
        );
        expect(await shelf.save(id, 1, named('after'))).toMatchObject({ ok: false, trouble: { kind: 'full' } });
        vi.restoreAllMocks();
        expect(await value(shelf.get(id))).toMatchObject({ revision: 1, document: { name: 'before' } });
      },
    );

    test('an import without room adds nothing', async () => {
      const shelf = window();
      breakWrite(7, overflow);
      const many = Array.from({ length: 20 }, (_, i) => named(`job ${i}`));
      expect(await shelf.addAll(many)).toMatchObject({ ok: false, trouble: { kind: 'full' } });
      vi.restoreAllMocks();
      expect(await names(shelf)).toEqual([]);
    });

    test('every method reports that there is no storage', async () => {
      Reflect.deleteProperty(globalThis, 'indexedDB');
      const shelf = window();
      const answers = [
        shelf.list(),
        shelf.get('x'),
        shelf.add(tideLedger),
        shelf.save('x', 1, tideLedger),
        shelf.remove('x'),
        shelf.restore('x'),
        shelf.copy('x'),
        shelf.versions('x'),
        shelf.forget(0),
        shelf.addAll([tideLedger]),
      ];
      for (const answer of answers) expect(await answer).toMatchObject({ ok: false, trouble: { kind: 'unavailable' } });
    });

    test('refused storage is reported, and used once it is allowed', async () => {
      const shelf = window();
      const refused = vi.spyOn(indexedDB, 'open').mockImplementation(() => {
        throw new DOMException('not here', 'SecurityError');
      });
      expect(await shelf.add(tideLedger)).toMatchObject({ ok: false, trouble: { kind: 'unavailable' } });
      refused.mockRestore();
      expect((await shelf.add(tideLedger)).ok).toBe(true);
    });

    test('an older version that another window holds open is reported, and replaced once it is closed', async () => {
      const old = await opened(indexedDB.open('coverwright', 1));
      const open = indexedDB.open.bind(indexedDB);
      vi.spyOn(indexedDB, 'open').mockImplementation((name) => open(name, 2));
      const shelf = window();
      expect(await shelf.list()).toMatchObject({ ok: false, trouble: { kind: 'blocked' } });
      old.close();
      await vi.waitFor(async () => expect(await value(shelf.list())).toEqual([]));
    });

    test('a newer version in another window gets the database, and this one opens no more', async () => {
      const shelf = window();
      await value(shelf.add(tideLedger));
      const newer = await opened(indexedDB.open('coverwright', 1000));
      expect(await shelf.list()).toMatchObject({ ok: false, trouble: { kind: 'newer' } });
      newer.close();
    });
  });
});
