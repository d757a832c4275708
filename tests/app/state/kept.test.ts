import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import tideLedgerFile from '../../../public/jobs/tide-ledger.json' with { type: 'json' };
import { type ShelfPlace, startHistory, type Written } from '../../../src/app/state/jobHistory.ts';
import { keepJob, keptJob, sawShelf } from '../../../src/app/state/keptJob.ts';
import { openJobText } from '../../../src/app/state/openJobFile.ts';
import { keepViewChoice, keptViewChoice } from '../../../src/app/state/viewChoice.ts';
import { defined } from '../../defined.ts';

/** In the current version, as it is kept. */
const tideLedger = { ...tideLedgerFile, version: 3, pockets: { share: 0.5 } };

const open = (written: Partial<Written> = {}, place?: ShelfPlace) =>
  startHistory({ document: tideLedger, typed: {}, ...written }, tideLedger, { place });

describe('the browser keeps', () => {
  const store = new Map<string, string>();
  const storage = (kept: Map<string, string>) => ({
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => kept.set(key, text),
  });
  beforeEach(() => {
    store.clear();
    vi.stubGlobal('localStorage', storage(store));
    vi.stubGlobal('sessionStorage', storage(new Map()));
  });
  afterEach(() => {
    vi.unstubAllGlobals();
    vi.useRealTimers();
  });

  test('the open job with all that was typed, right or wrong', () => {
    const step = { document: tideLedger, typed: { 'book.width_mm': { text: 'about 6', unit: 'in' as const } } };
    expect(keepJob(open(step))).toBe(true);
    expect(keptJob()).toMatchObject(step);
  });

  test('the place of the open job on the shelf together with it', () => {
    const place = { id: 'a', revision: 3, document: tideLedger };
    keepJob(open({}, place));
    expect(keptJob()).toMatchObject({ document: tideLedger, place: { id: 'a', revision: 3, isSaved: true } });
    keepJob(open({ document: { ...tideLedger } }, place));
    expect(keptJob()?.place?.isSaved).toBe(false);
    keepJob(open());
    expect(keptJob()?.place).toBeUndefined();
  });

  test("each window's own job apart, and gives a new window the one kept last", () => {
    keepJob(open());
    const first = sessionStorage;
    vi.stubGlobal('sessionStorage', storage(new Map()));
    keepJob(open({ document: { ...tideLedger, name: 'Other' } }));
    vi.stubGlobal('sessionStorage', first);
    expect(keptJob()?.document.name).toBe(tideLedger.name);
    vi.stubGlobal('sessionStorage', storage(new Map()));
    expect(keptJob()?.document.name).toBe('Other');
  });

  test('when it was last kept in any window, and never before a save that was known', () => {
    // Marks of one millisecond run ahead of the clock; by this time it has left those of all other tests behind.
    vi.setSystemTime(Date.now() + 60_000);
    keepJob(open());
    const first = defined(defined(keptJob()).mark);
    expect(first).toBe(Date.now());
    keepJob(open());
    expect(keptJob()?.mark).toBe(first + 1);
    const own = sessionStorage;
    vi.stubGlobal('sessionStorage', storage(new Map()));
    sawShelf(first + 1e12);
    keepJob(open({ document: { ...tideLedger, name: 'Other' } }));
    vi.stubGlobal('sessionStorage', own);
    expect(keptJob()?.document).toEqual(tideLedger);
    expect(keptJob()?.mark).toBeGreaterThan(first + 1e12);
  });

  test('nothing that cannot be read again', () => {
    expect(keptJob()).toBeNull();
    for (const text of ['', '{', '[]', '{"document":3,"typed":{}}', '{"document":{},"typed":{"a":{"text":1}}}']) {
      for (const key of ['coverwright.open-job.v1', 'coverwright.view.v1']) store.set(key, text);
      expect(keptJob()).toBeNull();
      expect(keptViewChoice().units).toBe('mm');
    }
  });

  test('the units and the paper', () => {
    keepViewChoice({ units: 'in', scheme: 'dark', look: 'light' });
    expect(keptViewChoice()).toEqual({ units: 'in', scheme: 'dark', look: 'light' });
  });
});

test('a browser that refuses to keep anything is told from one that does, and stops nothing', () => {
  const refuse = (): never => {
    throw new Error('denied');
  };
  vi.stubGlobal('localStorage', { getItem: refuse, setItem: refuse });
  vi.stubGlobal('sessionStorage', { getItem: refuse, setItem: refuse });
  expect(keepJob(open())).toBe(false);
  expect(keptJob()).toBeNull();
  expect(() => keepViewChoice(keptViewChoice())).not.toThrow();
  vi.unstubAllGlobals();
});

describe('a job file', () => {
  test('opens as it was written, without defaults filled in', () => {
    expect(openJobText(`\uFEFF${JSON.stringify(tideLedger)}`)).toEqual({ document: tideLedger });
  });

  test('that is no job is refused with every issue', () => {
    const opened = openJobText(
      JSON.stringify({ ...tideLedger, colour: 'red', book: { ...tideLedger.book, width_mm: 5 } }),
    );
    expect('issues' in opened && opened.issues.map(({ path }) => path).sort()).toEqual(['book.width_mm', 'colour']);
    expect('issues' in openJobText('{"format":')).toBe(true);
  });
});
