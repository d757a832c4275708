import { readdirSync, readFileSync } from 'node:fs';
import { crc32 } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import type { JobRecord } from '../../src/core/job/migrate.ts';
import { parseJob } from '../../src/core/job/parseJob.ts';
import { SheetFile } from '../../src/output/pdf/sheetFile.ts';
import type { PageOf } from '../../src/output/pdf/titleBlock.ts';
import { drawTitleBlock, footLine, TITLE_BLOCK } from '../../src/output/pdf/titleBlock.ts';
import { readShareFragment } from '../../src/output/shareLink/shareLink.ts';
import { type TitleBlock, titleBlock } from '../../src/output/titleBlock.ts';
import { versionMark } from '../../src/output/versionMark.ts';
import { nth } from '../nth.ts';
import { readPdf } from './pdfReading.ts';
import { readSquare } from './squareReading.ts';

const DEMO = readdirSync('public/jobs').map(
  (name): JobRecord => JSON.parse(readFileSync(`public/jobs/${name}`, 'utf8')),
);
const ADDRESS = 'https://leather.example/covers/';
const PAGE: PageOf = { page: 2, pages: 7 };

function read(document: JobRecord) {
  const parsed = parseJob(document);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
  return parsed.job;
}

function blockOf(document: JobRecord, also: TitleBlock['facts'] = []): TitleBlock {
  const job = read(document);
  const design = coverDesign(job);
  return titleBlock({ sheet: 'Template', job, design, document, date: '2026-11-27', address: ADDRESS, also });
}

async function drawn(block: TitleBlock, width = 180) {
  const file = await SheetFile.titled('A title block', ['plain']);
  const height = drawTitleBlock(file.addPage({ width: 210, height: 297 }).in.plain, [15, 280], width, block, PAGE);
  const [page] = await readPdf(await file.save({}));
  return { height, page: page! };
}

describe('the mark of a version', () => {
  const job = read(nth(DEMO, 0));

  test('is the CRC-32 of the job with its names sorted, as zlib computes it, in base 32', () => {
    const sorted = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(sorted);
      if (value === null || typeof value !== 'object') return value;
      const names = Object.keys(value).sort();
      return Object.fromEntries(names.map((name) => [name, sorted((value as Record<string, unknown>)[name])]));
    };
    const { made: _, ...rest } = job;
    const mark = versionMark(job);
    expect(mark).toMatch(/^[0-9A-HJKMNP-TV-Z]{7}$/);
    const value = [...mark].reduce((sum, digit) => sum * 32 + '0123456789ABCDEFGHJKMNPQRSTVWXYZ'.indexOf(digit), 0);
    expect(value).toBe(crc32(JSON.stringify(sorted(rest))));
  });

  test('is the same however the document is written, and for a tick of work done', () => {
    const turned = Object.fromEntries(Object.entries(nth(DEMO, 0)).reverse());
    expect(versionMark(read(turned))).toBe(versionMark(job));
    expect(versionMark(read(job))).toBe(versionMark(job));
    expect(versionMark({ ...job, made: { ...job.made, cut: '2026-11-26' } })).toBe(versionMark(job));
  });

  test('changes with each figure of the job', () => {
    const marks = new Set<string>([versionMark(job)]);
    let changes = 0;
    const change = (value: unknown, put: (changed: unknown) => unknown): void => {
      if (typeof value === 'number') {
        changes++;
        marks.add(versionMark(put(value + 0.01) as typeof job));
      } else if (value !== null && typeof value === 'object' && !Array.isArray(value))
        for (const [name, each] of Object.entries(value)) change(each, (changed) => put({ ...value, [name]: changed }));
    };
    change(job, (changed) => changed);
    expect(changes).toBeGreaterThan(60);
    expect(marks.size).toBe(changes + 1);
  });
});

describe('a title block', () => {
  test.each(DEMO.map((document) => [String(document.name), document] as const))(
    'of %s says what the job is, and its square holds the very job',
    async (_, document) => {
      const block = blockOf(document);
      const { page, height } = await drawn(block);
      const words = page.words.map(({ text }) => text).join(' ');
      for (const said of [
        block.job,
        block.version,
        '27 Nov 2026',
        'page 2 of 7',
        'Template',
        'mm wide',
        'temper',
        'pitch',
      ])
        expect(words).toContain(said);
      expect(height).toBeGreaterThanOrEqual(TITLE_BLOCK.leastHeight);
      expect(height).toBeLessThanOrEqual(TITLE_BLOCK.mostHeight);
      const { text, module } = readSquare(page);
      // Five dots of a print at 300 dpi.
      expect(module).toBeGreaterThanOrEqual((5 * 25.4) / 300 - 1e-6);
      expect(text.startsWith(`${ADDRESS}#`)).toBe(true);
      const opened = readShareFragment(text.slice(ADDRESS.length));
      // A document of an older version opens as it does from its file.
      expect(opened.ok && opened.job).toEqual(read(document));
    },
  );

  test('names the leather that was taken to the maker, and not to a customer', () => {
    const document = nth(DEMO, 0);
    const taken = { id: 'a', revision: 2, name: 'Harness back' };
    const job = read({ ...document, leather: { outside: { min_mm: 1.6, max_mm: 2, taken } } });
    const source = { sheet: 'Template', job, design: coverDesign(job), document };
    const said = (block: TitleBlock) => block.facts.find(({ name }) => name === 'Leather')?.value;
    expect(said(titleBlock(source))).toMatch(/^Harness back 1\.6-2 mm, medium temper/);
    expect(said(titleBlock({ ...source, fragment: 'customer=x' }))).toMatch(/^1\.6-2 mm, medium temper/);
  });

  test('stays within its height at its least width, however much is said', async () => {
    const full: JobRecord = {
      ...nth(DEMO, 0),
      leather: {
        outside: { min_mm: 1.9, max_mm: 2.4, bendRatio: 0.23, taken: { id: 'a', revision: 1, name: 'x'.repeat(120) } },
        pocket: { min_mm: 1.1, max_mm: 1.3, taken: { id: 'b', revision: 1, name: 'long name '.repeat(12) } },
        lining: { min_mm: 0.7, max_mm: 0.9 },
      },
      name: 'A very long name of a job that says who it is for and what the book is about, and goes on',
    };
    const block = blockOf(full, [
      { name: 'Pieces', value: 'outside, front pocket, back pocket, full lining, strap, pen loop' },
    ]);
    for (const link of [block.link, `${ADDRESS}#${'x'.repeat(780)}`, `${ADDRESS}#${'x'.repeat(2000)}`]) {
      const { height, page } = await drawn({ ...block, link }, TITLE_BLOCK.leastWidth);
      expect(height).toBeLessThanOrEqual(TITLE_BLOCK.mostHeight);
      for (const { at, width } of page.words) expect(at[0] + width).toBeLessThanOrEqual(15 + TITLE_BLOCK.leastWidth);
    }
  });

  test('says of a job that is too large for a square what to do, and draws none', async () => {
    const { page } = await drawn({ ...blockOf(nth(DEMO, 0)), link: `${ADDRESS}#job=4.${'x'.repeat(1200)}` });
    expect(page.words.map(({ text }) => text).join(' ')).toContain('too large for a square code. Save it as a file');
    expect(page.paths.every(({ chains }) => chains.length < 10)).toBe(true);
    // Coordinates without a pattern do not shrink.
    const outline = Array.from({ length: 4000 }, (_, i) => [Math.sin(i * i) * 100, Math.cos(i * i * 1.3) * 100]);
    const large = { ...nth(DEMO, 0), note: outline };
    const job = read(nth(DEMO, 0));
    const block = titleBlock({ sheet: 'Template', job, design: coverDesign(job), document: large, address: ADDRESS });
    expect(block).toMatchObject({ link: null, isTooLarge: true });
    expect((await drawn(block)).page.words.map(({ text }) => text).join(' ')).toContain('too large for a square code');
  });

  test('has a line for pages without it', () => {
    const block = blockOf(nth(DEMO, 0));
    expect(footLine('Choir book: outside', block, PAGE)).toBe(
      `Choir book: outside, version ${block.version}, 27 Nov 2026, page 2 of 7`,
    );
    expect(footLine('Measuring sheet', undefined, PAGE)).toBe('Measuring sheet, page 2 of 7');
  });
});
