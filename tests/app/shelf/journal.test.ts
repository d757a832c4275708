import 'fake-indexeddb/auto';
import { IDBFactory, IDBObjectStore } from 'fake-indexeddb';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { createStore } from 'zustand/vanilla';
import { Journal } from '../../../src/app/shelf/Journal.ts';
import { leftOver } from '../../../src/app/shelf/leftOver.ts';
import { openJournal } from '../../../src/app/shelf/openJournal.ts';
import type { Recalled } from '../../../src/app/shelf/recalled.ts';
import { Shelf } from '../../../src/app/shelf/shelf.ts';
import type { Bench } from '../../../src/app/state/bench.ts';
import {
  type JobAction,
  type JobHistory,
  jobHistory,
  type Step,
  startHistory,
} from '../../../src/app/state/jobHistory.ts';
import type { Kept, KeptCopies } from '../../../src/app/state/keptJob.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import type { JobDocument } from '../../../src/core/job/jobDocument.ts';
import type { JobPath } from '../../../src/core/job/jobPath.ts';
import { defined } from '../../defined.ts';
import { checkLaw } from '../../laws.ts';

const [tideLedger, choirBook] = EXAMPLE_JOBS.map(({ document }) => document);

/** Locks of a browser whose windows can be killed. */
class Locks {
  private readonly held = new Map<string, string>();
  of(window: string): LockManager {
    return {
      query: async () => ({ held: [...this.held.keys()].map((name) => ({ name })) }),
      request: async (name: string, _: LockOptions, hold: (lock: { name: string } | null) => unknown) => {
        if (this.held.has(name)) {
          if (_.ifAvailable) return hold(null);
          throw new DOMException('waited too long', 'TimeoutError');
        }
        this.held.set(name, window);
        try {
          return await hold({ name });
        } finally {
          this.held.delete(name);
        }
      },
    } as unknown as LockManager;
  }
  kill(window: string): void {
    for (const [name, holder] of this.held) if (holder === window) this.held.delete(name);
  }
}

let locks: Locks;
let shelves: Shelf[];

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
  locks = new Locks();
  shelves = [];
});

afterEach(async () => {
  vi.restoreAllMocks();
  await Promise.all(shelves.map((shelf) => shelf.close()));
});

const NOTHING: KeptCopies = { own: null, any: null };

const benchOf = (start: JobHistory) =>
  createStore<Pick<Bench, 'history' | 'dispatch'>>()((set) => ({
    history: start,
    dispatch: (action) => set(({ history }) => ({ history: jobHistory(history, action) })),
  }));

/** A window at work. */
class Visit {
  readonly journal: Journal;
  readonly bench: ReturnType<typeof benchOf>;
  readonly told: boolean[] = [];
  constructor(journal: Journal, kept: Kept | null, document = tideLedger!) {
    this.journal = journal;
    const { place, key } = kept ?? {};
    const saved = place && { id: place.id, revision: place.revision, document: place.isSaved ? kept!.document : null };
    this.bench = benchOf(startHistory(kept ?? { document, typed: {} }, tideLedger!, { place: saved, key }));
    journal.keep(this.bench, (isKept) => this.told.push(isKept));
  }
  get history(): JobHistory {
    return this.bench.getState().history;
  }
  async do(...actions: readonly JobAction[]): Promise<void> {
    for (const action of actions) this.bench.getState().dispatch(action);
    await this.settled();
  }
  settled(): Promise<void> {
    return this.journal.flush();
  }
}

async function visit(window: string, copies = NOTHING, document = tideLedger!): Promise<Visit> {
  const shelf = new Shelf();
  shelves.push(shelf);
  const { journal, kept } = defined(await openJournal(shelf.connection, locks.of(window), copies));
  const begun = new Visit(journal, kept, document);
  await begun.settled();
  return begun;
}

interface Contents {
  readonly heads: readonly { readonly window: string; readonly at: number }[];
  readonly steps: readonly { readonly window: string; readonly at: number | string; readonly document?: string }[];
}

/** Both stores, read past the journal. */
async function contents(): Promise<Contents> {
  return inDatabase(async (store) => ({ heads: await all(store('journals')), steps: await all(store('steps')) }));
}

const done = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
const all = (store: globalThis.IDBObjectStore) => done(store.getAll());

async function inDatabase<T>(work: (store: (name: string) => globalThis.IDBObjectStore) => Promise<T>): Promise<T> {
  const database = await done(indexedDB.open('coverwright'));
  try {
    return await work((name) => database.transaction(name, 'readwrite').objectStore(name));
  } finally {
    database.close();
  }
}

/** A step as it is compared: whatever holds it. */
const plain = ({ key, document, typed }: Step) => JSON.stringify([key, document, typed]);

/** What undo, redo and the shelf go by. */
function seen({ past, present, future, places }: Recalled) {
  const line = [...past, ...(present === null ? [] : [present]), ...future];
  const known = new Set(line.map(({ key }) => key));
  return {
    past: past.map(plain),
    present: present && plain(present),
    future: future.map(plain),
    places: [...places]
      .filter(([key]) => known.has(key))
      .map(([key, { id, revision, document }]) => {
        const isThere = line.some((step) => step.key === key && step.document === document);
        return [key, id, revision, isThere ? JSON.stringify(document) : null];
      })
      .sort(),
  };
}

const ofMemory = (history: JobHistory) => seen({ ...history, present: history });

async function onDisk({ journal, history }: Visit): Promise<Recalled> {
  const shelf = new Shelf();
  shelves.push(shelf);
  return defined(await new Journal(shelf.connection, journal.window).recall({ ...history, past: [] }));
}

const edit = (path: JobPath, value: unknown, key?: string): JobAction => ({
  type: 'edit',
  patches: [{ path, value }],
  typed: { [path]: { text: String(value).slice(0, 20), unit: 'mm' } },
  ...(key === undefined ? {} : { key }),
});

const drawing = (count: number): string => `M0 0${' L1 2'.repeat(count)}`;

const anAction: fc.Arbitrary<JobAction> = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: 100, max: 300 }).map((mm) => edit('book.width_mm', mm)) },
  { weight: 6, arbitrary: fc.integer({ min: 100, max: 300 }).map((mm) => edit('book.height_mm', mm, 'height')) },
  { weight: 2, arbitrary: fc.constantFrom('\u0000', 'tall', '').map((text) => edit('name', text, 'name')) },
  { weight: 2, arbitrary: fc.integer({ min: 500, max: 510 }).map((count) => edit('notes' as JobPath, drawing(count))) },
  { weight: 6, arbitrary: fc.constantFrom({ type: 'undo' as const }, { type: 'redo' as const }) },
  { weight: 2, arbitrary: fc.constantFrom({ type: 'settle' as const }, { type: 'cancel' as const }) },
  {
    weight: 2,
    arbitrary: fc.boolean().map((isSameJob) => ({ type: 'open' as const, document: choirBook!, isSameJob })),
  },
  { weight: 1, arbitrary: fc.constant({ type: 'made' as const, made: { cut: '2026-11-28' } }) },
);

/** An action, or a save of the open job on the shelf. */
const anEvent = fc.oneof({ weight: 9, arbitrary: anAction }, { weight: 1, arbitrary: fc.constant('saved' as const) });

const actionOf = (event: JobAction | 'saved', { key, document, places }: JobHistory): JobAction => {
  if (event !== 'saved') return event;
  const revision = (places.get(key)?.revision ?? 0) + 1;
  return { type: 'place', key, place: { id: `of ${key}`, revision, document } };
};

describe('after a kill', () => {
  test('undo, redo and the places on the shelf are those of memory, at whichever write it comes', async () => {
    await checkLaw(
      fc.asyncProperty(fc.array(fc.tuple(anEvent, fc.boolean()), { maxLength: 25 }), async (course) => {
        globalThis.indexedDB = new IDBFactory();
        let window = await visit('0');
        for (const [i, [event, isKilled]] of course.entries()) {
          await window.do(actionOf(event, window.history));
          expect(seen(await onDisk(window))).toEqual(ofMemory(window.history));
          if (!isKilled) continue;
          // A field that was being edited has been left.
          const before = ofMemory(window.history);
          locks.kill(String(i === 0 ? 0 : 'next'));
          locks = new Locks();
          window = await visit('next');
          expect(ofMemory(window.history)).toEqual(before);
        }
      }),
      { cost: 8 },
    );
  });

  test('within a write nothing of it is there, and the next writes all that is missing', async () => {
    await checkLaw(
      fc.asyncProperty(
        fc.array(fc.tuple(anEvent, fc.option(fc.nat(3), { nil: null })), { maxLength: 15 }),
        async (course) => {
          globalThis.indexedDB = new IDBFactory();
          const window = await visit('0');
          for (const [event, failsAt] of course) {
            const before = seen(await onDisk(window));
            let puts = 0;
            const put = IDBObjectStore.prototype.put;
            const breaking = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (
              this: IDBObjectStore,
              value,
            ) {
              if (puts++ === failsAt) throw new DOMException('the window is gone', 'AbortError');
              return put.call(this, value);
            });
            await window.do(actionOf(event, window.history));
            breaking.mockRestore();
            const isBroken = puts === 0 || (failsAt !== null && puts > failsAt);
            expect(seen(await onDisk(window))).toEqual(isBroken ? before : ofMemory(window.history));
          }
          await window.do(edit('book.width_mm', 99));
          expect(seen(await onDisk(window))).toEqual(ofMemory(window.history));
        },
      ),
      { cost: 8 },
    );
  });
});

describe('a damaged record', () => {
  const DAMAGES: readonly ((record: Record<string, unknown>) => Record<string, unknown> | null)[] = [
    () => null,
    (record) => ({ ...record, document: String(record.document).slice(0, 100) }),
    (record) => ({ ...record, document: '[1]' }),
    (record) => ({ ...record, typed: { 'book.width_mm': 7 } }),
    (record) => ({ window: record.window, at: record.at }),
  ];

  test('costs only its own step', async () => {
    await checkLaw(
      fc.asyncProperty(
        fc.array(anAction, { minLength: 1, maxLength: 15 }),
        fc.array(fc.tuple(fc.nat(20), fc.nat(DAMAGES.length - 1)), { minLength: 1, maxLength: 4 }),
        async (actions, damages) => {
          globalThis.indexedDB = new IDBFactory();
          const window = await visit('0');
          await window.do(...actions);
          const { heads, steps } = await contents();
          const records = steps.filter(({ at }) => typeof at === 'number');
          const torn = new Set(damages.map(([nth]) => nth % records.length));
          await inDatabase(async (store) => {
            for (const [nth, how] of damages) {
              const record = records[nth % records.length]!;
              const spoilt = DAMAGES[how]!({ ...record });
              if (spoilt === null) await done(store('steps').delete([record.window, record.at]));
              else await done(store('steps').put(spoilt));
            }
          });
          if (torn.size === records.length) return;
          const { past, future } = window.history;
          const line = [...past, window.history, ...future].map((step, i) => (torn.has(i) ? null : step));
          const at = past.length;
          expect(records[at]?.at).toBe(heads[0]?.at);
          const left = (steps: readonly (Step | null)[]) => steps.filter((step) => step !== null).map(plain);
          expect(seen(await onDisk(window))).toMatchObject({
            past: left(line.slice(0, at)),
            present: line[at] ? plain(line[at]) : null,
            future: left(line.slice(at + 1)),
          });
          // What is gone on with is whole again.
          const next = new Visit(window.journal, { ...window.history });
          await next.do(edit('book.width_mm', 99));
          expect(seen(await onDisk(next))).toEqual(ofMemory(next.history));
        },
      ),
      { cost: 8 },
    );
  });

  test('of the head costs neither undo nor redo: the open state is found by the copy of it', async () => {
    const window = await visit('0');
    await window.do(edit('book.width_mm', 151), edit('book.width_mm', 152), { type: 'undo' });
    await inDatabase((store) => done(store('journals').put({ window: window.journal.window, version: 1, at: 'x' })));
    expect(seen(await onDisk(window))).toEqual(ofMemory(window.history));
  });

  test('or a journal of another version is passed over, and a new one begun', async () => {
    const window = await visit('0');
    await window.do(edit('book.width_mm', 151));
    await inDatabase(async (store) => {
      const [head] = await all(store('journals'));
      await done(store('journals').put({ ...head, version: 2 }));
    });
    locks = new Locks();
    const next = await visit('1');
    expect(next.journal.window).not.toBe(window.journal.window);
    expect(next.history.past).toEqual([]);
  });
});

describe('two windows', () => {
  test('never have one journal, and each comes back to its own', async () => {
    const [first, second] = [await visit('0'), await visit('1', NOTHING, choirBook)];
    expect(first.journal.window).not.toBe(second.journal.window);
    await first.do(edit('book.width_mm', 151));
    await second.do(edit('book.width_mm', 161));
    for (const [window, other] of [
      [first, second],
      [second, first],
    ] as const) {
      locks.kill(window === first ? '0' : '1');
      const copy: Kept = { document: window.history.document, typed: {}, window: window.journal.window, mark: 1 };
      const again = await visit(window === first ? '0' : '1', { own: copy, any: null });
      expect(again.journal.window).toBe(window.journal.window);
      expect(ofMemory(again.history)).toEqual(ofMemory(window.history));
      expect(seen(await onDisk(other))).toEqual(ofMemory(other.history));
    }
  });

  test('of which one is a copy of the other part at once', async () => {
    const first = await visit('0');
    await first.do(edit('book.width_mm', 151));
    const copy: Kept = { document: first.history.document, typed: {}, window: first.journal.window, mark: 1e15 };
    const second = await visit('1', { own: copy, any: copy });
    expect(second.journal.window).not.toBe(first.journal.window);
    await second.do(edit('book.width_mm', 161));
    expect(seen(await onDisk(first))).toEqual(ofMemory(first.history));
  });

  test('both killed: the next goes on with the journal that was written last', async () => {
    const first = await visit('0');
    const second = await visit('1');
    await second.do(edit('book.width_mm', 161));
    await first.do(edit('book.width_mm', 151));
    locks = new Locks();
    expect((await visit('2')).journal.window).toBe(first.journal.window);
    expect((await visit('3')).journal.window).toBe(second.journal.window);
  });
});

describe('a journal whose window is gone', () => {
  const DAY = 24 * 3600 * 1000;
  const WEEK = 7 * DAY;

  async function left(days = 0, known: readonly JobDocument[] = []) {
    const shelf = new Shelf();
    shelves.push(shelf);
    return leftOver(shelf.connection, locks.of('asking'), () => known, Date.now() + days * DAY);
  }
  const widths = async (...words: Parameters<typeof left>) =>
    (await left(...words)).map(({ opening }) => (opening.written.document.book as { width_mm: number }).width_mm);
  const windows = async () => (await contents()).heads.map(({ window }) => window).sort();

  /** Windows that leave a state each, the last of which is gone on with. */
  async function gone(...widths: readonly number[]): Promise<Visit[]> {
    const visits: Visit[] = [];
    for (const [i, mm] of widths.entries()) {
      const begun = await visit(`gone ${i}`);
      await begun.do(edit('book.width_mm', mm));
      visits.push(begun);
    }
    locks = new Locks();
    await visit('now');
    return visits;
  }

  async function answerAll(): Promise<void> {
    for (const { close } of await left()) await close();
  }

  test('has its state offered, the latest first, where neither shelf nor page has it, and only until that is answered', async () => {
    await gone(151, 151, 152, 153, 154);
    expect(await widths()).toEqual([153, 152, 151]);
    // One that stands on the shelf, one that the page has, and one that another window has open.
    const shelf = new Shelf();
    shelves.push(shelf);
    const offered = await left();
    await shelf.add(defined(offered[0]).opening.written.document);
    expect(await widths(0, [defined(offered[1]).opening.written.document])).toEqual([151]);
    await defined(offered[2]).close();
    expect(await widths()).toEqual([152]);
    await visit('1', { own: null, any: null });
    expect(await widths()).toEqual([152]);
    await visit('2', { own: null, any: null });
    expect(await widths()).toEqual([]);
    expect(await windows()).toHaveLength(5);
  });

  test('offers an untouched example to nobody, nor what cannot be read', async () => {
    await visit('0');
    const second = await visit('1');
    await second.do(edit('book.width_mm', 151));
    const third = await visit('2');
    await third.do(edit('book.width_mm', 152));
    locks = new Locks();
    await visit('3');
    await inDatabase((store) =>
      done(store('steps').delete(IDBKeyRange.bound([second.journal.window, 0], [second.journal.window, 9]))),
    );
    expect(await left()).toEqual([]);
    expect(await windows()).toHaveLength(3);
  });

  test('is forgotten after a week where nothing is its own, after eight once its state was refused, but never the latest', async () => {
    const [unseen, saved, own, latest, open] = await gone(150, 151, 152, 153, 154);
    const shelf = new Shelf();
    shelves.push(shelf);
    await shelf.addAll([defined(saved).history.document]);
    await left(6);
    expect(await windows()).toHaveLength(5);
    await left(8);
    expect(await windows()).not.toContain(defined(saved).journal.window);
    expect(await windows()).toHaveLength(4);
    await defined((await left())[1]).close();
    await left(8 * 7 - 1);
    expect(await windows()).toContain(defined(own).journal.window);
    // Away for two years: what nobody has answered is offered all the same.
    expect(await widths(700)).toEqual([153, 150]);
    const stay = [unseen, latest, open].map((each) => defined(each).journal.window);
    expect(await windows()).toEqual(stay.sort());
    const { steps } = await contents();
    expect(new Set(steps.map(({ window }) => window))).toEqual(new Set(stay));
    await answerAll();
    // Gone on with, the other is the only one that is left, and the latest.
    locks = new Locks();
    await left((100 * WEEK) / DAY);
    expect(await windows()).toHaveLength(1);
  });

  test('stays whatever its age while a window has it open, or asks for it', async () => {
    const visits = await gone(150, 151, 152);
    const asking = locks.of('back');
    const own = defined(visits[0]).journal.window;
    await visit('back', { own: { document: tideLedger!, typed: {}, window: own }, any: null });
    await answerAll();
    await left(100);
    expect(await windows()).toHaveLength(3);
    expect((await asking.query()).held).toHaveLength(2);
  });

  test('stays where a window takes it, or has written it, just then', async () => {
    await gone(150, 151, 152);
    await answerAll();
    const { held = [] } = await locks.of('0').query();
    const late = (request: LockManager['request']) => ({ query: async () => ({ held: [] }), request }) as LockManager;
    const ask = async (manager: LockManager) => {
      const shelf = new Shelf();
      shelves.push(shelf);
      return leftOver(shelf.connection, manager, () => [], Date.now() + 100 * DAY);
    };
    await ask(late((async (_name: string, _: LockOptions, hold: LockGrantedCallback<unknown>) => hold(null)) as never));
    expect(await windows()).toHaveLength(3);
    const written = async (name: string, _: LockOptions, hold: LockGrantedCallback<unknown>) => {
      await inDatabase(async (store) => {
        for (const head of (await all(store('journals'))) as { mark: number }[])
          await done(store('journals').put({ ...head, mark: head.mark + 1 }));
      });
      return hold({ name, mode: 'exclusive' });
    };
    await ask(late(written as never));
    expect(await windows()).toHaveLength(3);
    expect(held).toHaveLength(1);
  });

  test('stays where the clock is fifty years off, in either direction', async () => {
    await gone(150, 151, 152, 153);
    await answerAll();
    await left(50 * 365);
    await left(-50 * 365);
    expect(await windows()).toHaveLength(4);
  });
});

describe('what was done before the history was back', () => {
  test('stays, with that history before it', async () => {
    const first = await visit('0');
    await first.do(edit('book.width_mm', 151), edit('book.width_mm', 152), { type: 'undo' });
    locks = new Locks();
    const shelf = new Shelf();
    shelves.push(shelf);
    const { journal, kept } = defined(await openJournal(shelf.connection, locks.of('1'), NOTHING));
    const next = new Visit(journal, kept);
    await next.do(edit('book.height_mm', 250, 'height'));
    expect(next.history.past).toHaveLength(2);
    expect(next.history.future).toEqual([]);
    // A drag that is cancelled leaves what there was before it.
    await next.do({ type: 'cancel' });
    expect(ofMemory(next.history)).toEqual(ofMemory(first.history));
  });

  test('and another state that the page started with is a step after it', async () => {
    const first = await visit('0');
    await first.do(edit('book.width_mm', 151));
    locks = new Locks();
    const shelf = new Shelf();
    shelves.push(shelf);
    const { journal } = defined(await openJournal(shelf.connection, locks.of('1'), NOTHING));
    const next = new Visit(journal, { document: choirBook!, typed: {} });
    await next.settled();
    expect(next.history.past.map(plain)).toEqual([...first.history.past, first.history].map(plain));
    expect(next.history.document).toEqual(choirBook);
  });
});

describe('a save that the window did not hear of', () => {
  test('is known again by the step it has, and by the key of its job', async () => {
    const shelf = new Shelf();
    shelves.push(shelf);
    const first = await visit('0');
    const { key } = first.history;
    await first.do(edit('book.width_mm', 151), { type: 'open', document: choirBook! });
    await shelf.add(defined(first.history.past[1]).document, key);
    expect((await onDisk(first)).places.get(key)).toMatchObject({ id: key, revision: 1 });
    await first.do({ type: 'place', key, place: { id: key, revision: 1, document: null } });
    await shelf.save(key, 1, defined(first.history.past[0]).document);
    expect((await onDisk(first)).places.get(key)).toMatchObject({ revision: 2 });
    // Another window's is not.
    await shelf.save(key, 2, { ...tideLedger, name: 'Another' });
    expect((await onDisk(first)).places.get(key)).toMatchObject({ revision: 1 });
  });
});

describe('its size', () => {
  test('is bounded as undo is, an edit writes one step, and undo none', async () => {
    const window = await visit('0');
    await window.do(...Array.from({ length: 520 }, (_, i) => edit('book.width_mm', 100 + i / 10)));
    expect(window.history.past).toHaveLength(500);
    expect((await contents()).steps).toHaveLength(501);
    const put = vi.spyOn(IDBObjectStore.prototype, 'put');
    await window.do(edit('book.width_mm', 200));
    expect(put).toHaveBeenCalledTimes(2);
    await window.do({ type: 'undo' });
    expect(put).toHaveBeenCalledTimes(3);
    expect((await contents()).steps).toHaveLength(501);
    expect(seen(await onDisk(window))).toEqual(ofMemory(window.history));
  });

  test('holds a drawing once for all steps that have it, and none that no step has', async () => {
    const window = await visit('0');
    await window.do(edit('notes' as JobPath, drawing(40_000)));
    for (let mm = 151; mm < 171; mm++) await window.do(edit('book.width_mm', mm));
    const size = async () => JSON.stringify((await contents()).steps).length;
    expect(await size()).toBeLessThan(300_000);
    await window.do(...Array.from({ length: 21 }, () => ({ type: 'undo' as const })), edit('book.width_mm', 99));
    expect(await size()).toBeLessThan(20_000);
  });
});

describe('a browser that refuses', () => {
  test('a full disk ends the journal, is told, and leaves its room to the jobs', async () => {
    const window = await visit('0');
    await window.do(edit('book.width_mm', 151));
    const full = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    await window.do(edit('book.width_mm', 152));
    full.mockRestore();
    expect(window.told).toEqual([false]);
    expect(await contents()).toEqual({ heads: [], steps: [] });
    await window.do(edit('book.width_mm', 153));
    expect(window.history.past).toHaveLength(3);
  });

  test('no database or no locks: there is no journal', async () => {
    const shelf = new Shelf();
    shelves.push(shelf);
    expect(await openJournal(shelf.connection, undefined, NOTHING)).toBeNull();
    Reflect.deleteProperty(globalThis, 'indexedDB');
    expect(await openJournal(new Shelf({ name: 'none' }).connection, locks.of('0'), NOTHING)).toBeNull();
  });
});
