import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { chooseLate, chooseStart } from '../../../src/app/shelf/chooseStart.ts';
import type { Start } from '../../../src/app/shelf/opening.ts';
import { ShelfKeeper } from '../../../src/app/shelf/ShelfKeeper.ts';
import { Shelf } from '../../../src/app/shelf/shelf.ts';
import type { ShelfJob } from '../../../src/app/shelf/shelfSchema.ts';
import { startingJob } from '../../../src/app/shelf/startingJob.ts';
import type { Kept } from '../../../src/app/state/keptJob.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import type { JobDocument } from '../../../src/core/job/jobDocument.ts';

const EXAMPLE = EXAMPLE_JOBS[0].document;

/** A document with a number that grows with time. */
const doc = (job: string, typed: number): JobDocument => ({ ...EXAMPLE, name: job, notes: typed });
const typedIn = (document: JobDocument | undefined): number => Number(document?.notes ?? 0);

/** The two stores of a browser: every write of the quick copy and every save of the shelf, in order. */
class Browser {
  time = 1000;
  typed = 0;
  readonly copies: (Kept | null)[] = [null];
  /** The shelf after each of the writes above. */
  readonly shelves: ShelfJob[][] = [[]];
  private shelf: ShelfJob[] = [];
  private open: { job: string; id: string | undefined; revision: number; saved: JobDocument | null; now: JobDocument } =
    {
      job: 'Tide ledger',
      id: undefined,
      revision: 0,
      saved: null,
      now: EXAMPLE,
    };

  private moment(copy: Kept | null): void {
    this.copies.push(copy);
    this.shelves.push(this.shelf);
  }

  copy(): void {
    const { id, revision, saved, now } = this.open;
    const place = id === undefined ? {} : { place: { id, revision, isSaved: saved === now } };
    this.moment({ document: now, typed: {}, mark: this.time, ...place });
  }

  type(): void {
    this.time += 100;
    this.open.now = doc(this.open.job, ++this.typed);
    this.copy();
  }

  /** The shelf is written; `meanwhile` happens before the window learns of it. */
  save(meanwhile: () => void = () => {}): void {
    this.time += 700;
    const { now } = this.open;
    const id = this.open.id ?? `of ${this.open.job}`;
    const revision = (this.shelf.find((job) => job.id === id)?.revision ?? 0) + 1;
    const job: ShelfJob = { id, revision, name: this.open.job, document: now, savedAt: this.time, removedAt: null };
    this.shelf = [job, ...this.shelf.filter((each) => each.id !== id)];
    this.moment(this.copies.at(-1) ?? null);
    meanwhile();
    this.time += 20;
    this.open = { ...this.open, id, revision, saved: now };
    this.copy();
  }

  /** A job is opened from a file: it is the latest action and is kept nowhere yet. */
  openAnother(job: string): void {
    this.time += 100;
    const now = doc(job, ++this.typed);
    this.open = { job, id: undefined, revision: 0, saved: null, now };
    this.copy();
  }
}

/** Every sequence of four actions: typing, saving, saving while typing goes on, opening another job. */
const DOINGS: readonly ((browser: Browser, i: number) => void)[] = [
  (browser) => browser.type(),
  (browser) => browser.save(),
  (browser) => browser.save(() => browser.type()),
  (browser, i) => browser.openAnother(`Job ${i}`),
];

function* courses(length: number): Generator<readonly number[]> {
  for (let code = 0; code < DOINGS.length ** length; code++)
    yield Array.from({ length }, (_, i) => Math.floor(code / DOINGS.length ** i) % DOINGS.length);
}

const opened = ({ first }: Start) => typedIn(first?.written.document);

describe('after a kill', () => {
  test('the start shows the latest state on disk, and continues it: every sequence of 4 actions, every lag of the copy', () => {
    let starts = 0;
    for (const course of courses(4)) {
      const browser = new Browser();
      for (const [i, doing] of course.entries()) nth(DOINGS, doing)(browser, i);
      browser.copies.forEach((_, at) => {
        const shelf = nth(browser.shelves, at);
        for (let lag = 0; lag <= at; lag++) {
          const copy = browser.copies[at - lag] ?? null;
          const start = chooseStart(copy, shelf);
          const latest = Math.max(typedIn(copy?.document), ...shelf.map(({ document }) => typedIn(document)));
          const offered = Math.max(opened(start), typedIn(start.other?.written.document));
          const where = `course ${course.join('')}, killed after write ${at}, copy ${lag} writes late`;
          expect(offered, where).toBe(latest);
          // What is opened can be saved without becoming a copy.
          const place = start.first?.place;
          const own = shelf.find(({ id }) => id === place?.id);
          expect(place?.revision, where).toBe(own?.revision);
          // No state on the shelf is overwritten without a version.
          const isOverwritten = own !== undefined && typedIn(own.document) > opened(start);
          if (isOverwritten) expect(start.aside ?? start.other, where).not.toBeNull();
          starts++;
        }
      });
    }
    expect(starts).toBeGreaterThan(5_000);
  });

  test('without a lag it shows the last typed state, whatever came before', () => {
    for (const course of courses(4)) {
      const browser = new Browser();
      for (const [i, doing] of course.entries()) nth(DOINGS, doing)(browser, i);
      expect(opened(chooseStart(browser.copies.at(-1) ?? null, nth(browser.shelves, -1)))).toBe(browser.typed);
    }
  });
});

const stood = (id: string, revision: number, typed: number, savedAt: number): ShelfJob => ({
  id,
  revision,
  name: id,
  document: doc(id, typed),
  savedAt,
  removedAt: null,
});

describe('where copy and shelf both changed', () => {
  const kept: Kept = {
    document: doc('a', 5),
    typed: { 'book.width_mm': { text: '5', unit: 'mm' } },
    place: { id: 'a', revision: 1, isSaved: false },
    mark: 500,
  };

  test('the later is opened, the other is offered, and the state on the shelf is kept as a version', () => {
    const earlier = stood('a', 2, 4, 400);
    expect(chooseStart(kept, [earlier])).toMatchObject({
      first: { written: kept, place: { id: 'a', revision: 2, document: null } },
      other: { written: { document: earlier.document } },
      aside: earlier,
    });
    const later = stood('a', 2, 6, 600);
    expect(chooseStart(kept, [later])).toMatchObject({
      first: { written: { document: later.document }, place: { revision: 2, document: later.document } },
      other: { written: kept },
      aside: later,
    });
  });

  test("a change older than another job's is offered, as a new job where its own was saved since", () => {
    const another = stood('b', 1, 7, 700);
    expect(chooseStart(kept, [another, stood('a', 1, 3, 300)]).other?.place).toMatchObject({ id: 'a', revision: 1 });
    expect(chooseStart(kept, [another, stood('a', 2, 4, 400)]).other).toMatchObject({
      written: kept,
      place: undefined,
    });
    expect(chooseStart({ ...kept, place: { ...defined(kept.place), isSaved: true } }, [another]).other).toBeNull();
    expect(chooseStart({ document: EXAMPLE, typed: {}, mark: 1 }, [another]).other).toBeNull();
  });
});

describe('a start', () => {
  test('keeps what was typed where the shelf holds the same values', () => {
    const typed = { 'book.width_mm': { text: '6 1/2 in', unit: 'in' } } as const;
    const kept: Kept = { document: doc('a', 5), typed, place: { id: 'a', revision: 1, isSaved: false }, mark: 500 };
    expect(chooseStart(kept, [stood('a', 2, 5, 600)])).toMatchObject({
      first: { written: { typed }, place: { revision: 2, document: kept.document } },
      other: null,
    });
  });

  test('uses a copy of an earlier version, which has no time, unless its own job was saved since', () => {
    const kept: Kept = { document: doc('a', 5), typed: {}, place: { id: 'a', revision: 1, isSaved: true } };
    expect(opened(chooseStart(kept, [stood('b', 1, 9, 900)]))).toBe(5);
    expect(opened(chooseStart(kept, [stood('b', 1, 9, 900), stood('a', 2, 6, 600)]))).toBe(6);
  });

  test("with a copy that continues the shelf's state offers nothing else", () => {
    for (const isSaved of [false, true]) {
      const kept: Kept = { document: doc('a', 5), typed: {}, place: { id: 'a', revision: 2, isSaved }, mark: 900 };
      for (const revision of [1, 2])
        expect(chooseStart(kept, [stood('a', revision, 4, 300)])).toMatchObject({
          first: { written: kept, place: { id: 'a', revision, document: null } },
          other: null,
          aside: null,
        });
    }
  });

  test('still shows a job that was removed meanwhile', () => {
    const kept: Kept = { document: doc('a', 5), typed: {}, place: { id: 'a', revision: 1, isSaved: true }, mark: 900 };
    expect(opened(chooseStart(kept, [stood('b', 1, 9, 300)]))).toBe(5);
  });

  test('without a copy opens what was saved last, or the example where nothing was', () => {
    expect(opened(chooseStart(null, [stood('b', 1, 9, 900), stood('a', 2, 6, 600)]))).toBe(9);
    expect(chooseStart(null, []).first).toBeNull();
  });
});

describe('where the copy was shown before the shelf answered', () => {
  const kept: Kept = { document: doc('a', 2), typed: {}, place: { id: 'a', revision: 1, isSaved: true }, mark: 500 };

  test('a later save of another job is offered, and the job shown keeps its place', () => {
    const said = chooseLate(kept, kept, [stood('b', 1, 9, 900), stood('a', 1, 2, 400)]);
    expect(said).toMatchObject({ first: { place: { id: 'a', revision: 1, document: kept.document } }, aside: null });
    expect(typedIn(said.other?.written.document)).toBe(9);
  });

  test('and the copy is the latest, nothing is offered', () => {
    expect(chooseLate(kept, kept, [stood('a', 1, 2, 400)])).toMatchObject({ first: { written: kept }, other: null });
    expect(chooseLate(null, null, [])).toEqual({ first: null, other: null, aside: null });
  });
});

/** The shelf of a browser that keeps no journal. */
const fetched = (theShelf: Pick<Shelf, 'list' | 'keepAsVersion'>) =>
  Promise.resolve({ theShelf, openTheJournal: async () => null, chooseStart, chooseLate });

describe('the shelf is asked', () => {
  beforeEach(() => {
    globalThis.indexedDB = new IDBFactory();
  });

  test('and an edit after a stale start is saved in the same job, without a copy, with the other state as a version', async () => {
    const shelf = new Shelf();
    const added = await shelf.add(doc('a', 1));
    if (!added.ok) throw new Error(added.trouble.message);
    const { id } = added.value;
    await shelf.save(id, 1, doc('a', 3));
    for (const isSaved of [true, false]) {
      const place = { id, revision: 1, isSaved };
      const copy: Kept = { document: doc('a', 2), typed: {}, place, mark: 1 };
      const { start, late } = await startingJob(fetched(shelf), { own: null, any: copy });
      expect(late).toBeNull();
      expect(opened(start)).toBe(3);
      const told: string[] = [];
      const places = new Map([['a', defined(defined(start.first).place)]]);
      const keeper = new ShelfKeeper(shelf, places, ({ what }) => told.push(what));
      keeper.keep('a', doc('a', 4));
      await keeper.flush();
      expect(told).toEqual(['kept']);
      const list = await shelf.list();
      expect(list.ok && list.value.map(({ document }) => typedIn(document))).toEqual([4]);
      await shelf.save(id, list.ok ? nth(list.value, 0).revision : 0, doc('a', 3));
    }
    const versions = await shelf.versions(id);
    expect(versions.ok && versions.value.sound.map(({ document }) => typedIn(document))).toContain(3);
    await shelf.close();
  });

  test('no longer than the first drawing may wait; a later answer is offered', async () => {
    vi.useFakeTimers();
    let answer: (jobs: readonly ShelfJob[]) => void = () => {};
    const slow = {
      list: () =>
        new Promise<never>((resolve) => {
          answer = (value) => resolve({ ok: true, value } as never);
        }),
      keepAsVersion: async () => ({ ok: true, value: undefined }) as const,
    };
    const kept: Kept = { document: doc('a', 2), typed: {}, place: { id: 'a', revision: 1, isSaved: true }, mark: 1 };
    const starting = startingJob(fetched(slow), { own: null, any: kept });
    await vi.advanceTimersByTimeAsync(10_000);
    const { start, late } = await starting;
    expect(opened(start)).toBe(2);
    answer([stood('a', 2, 3, 600)]);
    const said = defined(await late);
    expect(typedIn(said.other?.written.document)).toBe(3);
    expect(said).toMatchObject({
      first: { place: { id: 'a', revision: 2, document: kept.document } },
      aside: { revision: 2 },
    });
    vi.useRealTimers();
  });

  test('and where it cannot be fetched or read, the quick copy is used', async () => {
    Reflect.deleteProperty(globalThis, 'indexedDB');
    const kept: Kept = { document: doc('a', 2), typed: {}, mark: 1 };
    for (const shelf of [fetched(new Shelf({ name: 'none' })), Promise.reject(new Error('no such file'))])
      expect(await startingJob(shelf, { own: null, any: kept })).toMatchObject({
        start: { first: { written: kept } },
        late: null,
      });
  });
});
