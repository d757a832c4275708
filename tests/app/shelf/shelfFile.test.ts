import { nth } from '../../nth.ts';
import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { askForLastingStorage } from '../../../src/app/shelf/lastingStorage.ts';
import { jobWords, shelfSearch } from '../../../src/app/shelf/searchShelf.ts';
import { Shelf } from '../../../src/app/shelf/shelf.ts';
import { MAX_SHELF_CHARACTERS, readChosenFile, readShelfFile, shelfFile } from '../../../src/app/shelf/shelfFile.ts';
import type { ShelfJob } from '../../../src/app/shelf/shelfSchema.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import type { JobRecord } from '../../../src/core/job/migrate.ts';
import { openJob } from '../../../src/core/job/openJob.ts';
import { jobDocument } from '../../jobArbitrary.ts';
import { checkLaw, lawCases } from '../../laws.ts';
import { value } from './shelved.ts';

const documents = EXAMPLE_JOBS.map(({ document }) => document);
const tideLedger = nth(documents, 0);

describe('a file of jobs', () => {
  test('gives back the jobs that were written', () => {
    checkLaw(
      fc.property(fc.array(jobDocument, { maxLength: 5 }), (drawn) => {
        const jobs = JSON.parse(JSON.stringify(drawn)) as JobRecord[];
        expect(readShelfFile(shelfFile(jobs))).toMatchObject({ documents: jobs, broken: [] });
      }),
    );
  });

  test('may be a single job or a plain list of jobs', () => {
    expect(readShelfFile(JSON.stringify(tideLedger)).documents).toEqual([tideLedger]);
    expect(readShelfFile(`\uFEFF${JSON.stringify(documents)}`).documents).toEqual(documents);
  });

  test('of 5,000 jobs with 50 broken ones gives 4,950 jobs and names the 50', async () => {
    const jobs = Array.from({ length: 5000 }, (_, i) => {
      const name = `Job ${i}`;
      return i % 100 === 37 ? { ...tideLedger, name, book: { width_mm: -i } } : { ...tideLedger, name };
    });
    const read = readShelfFile(shelfFile(jobs));
    expect(read.broken[0]?.name).toBe('Job 37');
    expect(read.broken.map(({ index }) => index)).toEqual(Array.from({ length: 50 }, (_, i) => 100 * i + 37));
    for (const { issues } of read.broken)
      expect(issues.map(({ path }) => path)).toEqual(['book.width_mm', 'book.height_mm', 'book.thickness_mm']);

    const shelf = new Shelf({ name: 'import' });
    expect(await shelf.addAll(read.documents)).toEqual({ ok: true, value: 4950 });
    const list = await shelf.list();
    expect(list.ok && list.value).toHaveLength(4950);
    // Importing it again adds nothing.
    expect(await shelf.addAll(read.documents)).toEqual({ ok: true, value: 0 });
    await shelf.close();
  });

  test.each([
    ['', 'empty'],
    [' \n', 'empty'],
    ['{', 'not_json'],
    ['{"format":"coverwright-jobs","version":2,"jobs":[]}', 'choice'],
    ['{"format":"coverwright-jobs","version":1}', 'choice'],
  ])('%j is refused as a whole', (text, code) => {
    const { documents: none, broken } = readShelfFile(text);
    expect(none).toEqual([]);
    expect(broken).toMatchObject([{ index: 0, issues: [{ code, path: '(file)' }] }]);
  });

  test('that the browser cannot read, or that is far too large, is refused as a whole and not read', async () => {
    const gone = { size: 7, text: () => Promise.reject(new DOMException('gone', 'NotReadableError')) };
    const huge = { size: 5 * MAX_SHELF_CHARACTERS, text: () => Promise.reject(new Error('it was read')) };
    const code = async (file: object) =>
      (await readChosenFile(file as Blob)).broken.map(({ issues }) => issues[0]?.code);
    expect(await code(gone)).toEqual(['unreadable']);
    expect(await code(huge)).toEqual(['too_large']);
    expect((await readChosenFile(new Blob([shelfFile(documents)]))).documents).toEqual(documents);
  });

  const sound = shelfFile(documents);
  const damaged = fc
    .array(fc.record({ at: fc.nat(sound.length), drop: fc.nat(30), put: fc.string({ maxLength: 5 }) }), {
      minLength: 1,
      maxLength: 3,
    })
    .map((edits) => edits.reduce((text, { at, drop, put }) => text.slice(0, at) + put + text.slice(at + drop), sound));
  const anyFile = fc.oneof({ weight: 4, arbitrary: damaged }, fc.string(), fc.json());

  test('damaged files are read without a throw, and what they give is sound', () => {
    checkLaw(
      fc.property(anyFile, (text) => {
        const read = readShelfFile(text);
        expect(readShelfFile(shelfFile(read.documents))).toMatchObject({ documents: read.documents, broken: [] });
        for (const { issues } of read.broken) expect(issues.length).toBeGreaterThan(0);
      }),
      { cost: 0.02 },
    );
  });

  test('importing damaged files changes no job on the shelf, and adds only sound ones', async () => {
    let count = 0;
    await checkLaw(
      fc.asyncProperty(fc.array(anyFile, { minLength: 100, maxLength: 100, size: 'max' }), async (texts) => {
        const shelf = new Shelf({ name: `fuzz ${count++}` });
        await shelf.addAll(documents);
        const before = await value(shelf.list());
        let added = 0;
        for (const text of texts) {
          const imported = await shelf.addAll(readShelfFile(text).documents);
          if (!imported.ok) throw new Error(imported.trouble.message);
          added += imported.value;
        }
        const after = await value(shelf.list());
        await shelf.close();
        expect(after).toEqual(expect.arrayContaining([...before]));
        expect(after).toHaveLength(before.length + added);
        for (const { document } of after) expect(openJob(document).ok).toBe(true);
      }),
      { cost: 2 },
    );
    expect(count).toBe(lawCases(2));
  });
});

describe('searching the shelf', () => {
  const jobs = [tideLedger, ...documents.slice(1), { ...tideLedger, name: 'Élégie à l’océan' }].map(
    (document, i): ShelfJob => ({
      id: String(i),
      revision: 1,
      name: String(document.name),
      document,
      savedAt: i,
      removedAt: null,
    }),
  );
  const found = (text: string) => shelfSearch(jobs, jobWords)(text).map(({ name }) => name);

  test.each([
    ['', ['Tide ledger', 'Choir book', 'Shore guide', 'Élégie à l’océan']],
    ['TIDE', ['Tide ledger']],
    ['book choir', ['Choir book']],
    ['elegie ocean', ['Élégie à l’océan']],
    ['paperback', ['Shore guide']],
    ['double loop 165', ['Tide ledger', 'Élégie à l’océan']],
    ['tide stitching', []],
    ['(', []],
  ])('%j finds %j', (text, names) => expect(found(text)).toEqual(names));

  test('accepts a document without a book', () => {
    expect(shelfSearch([{ ...nth(jobs, 0), document: { book: 7 } }], jobWords)('tide')).toHaveLength(1);
  });
});

describe('asking for lasting storage', () => {
  const storage = (has: boolean, gets: boolean | Error) =>
    ({
      persisted: async () => has,
      persist: async () => {
        if (gets instanceof Error) throw gets;
        return gets;
      },
    }) as unknown as StorageManager;

  test.each([
    ['had it', storage(true, false), 'granted'],
    ['gives it', storage(false, true), 'granted'],
    ['refuses it', storage(false, false), 'refused'],
    ['fails', storage(false, new Error('no')), 'unknown'],
    ['cannot', {} as StorageManager, 'unknown'],
    ['has no such thing', undefined, 'unknown'],
  ])('where the browser %s', async (_what, manager, answer) => {
    expect(await askForLastingStorage(manager)).toBe(answer);
  });
});
