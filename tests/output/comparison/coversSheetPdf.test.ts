import { expect, test } from 'vitest';
import { coversSheetPdf } from '../../../src/output/comparison/coversSheetPdf.ts';
import { COVER_COLUMNS } from '../../../src/output/comparison/coversTable.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';
import { readPdf } from '../pdfReading.ts';

test.each([
  ['A4', 297, 210],
  ['Letter', 279.4, 215.9],
] as const)(
  'the page for finished covers on %s is one, across, with the names of the table on it',
  async (paper, width, height) => {
    const date = '2026-11-28';
    const bytes = await coversSheetPdf({ paper, date });
    const pages = await readPdf(bytes);
    expect(pages).toHaveLength(1);
    const page = nth(pages, 0);
    expect(page.width).toBeCloseTo(width, 1);
    expect(page.height).toBeCloseTo(height, 1);
    const words = page.words.map(({ text }) => text);
    const named = COVER_COLUMNS.filter((name) => words.includes(name));
    expect(named).toEqual(COVER_COLUMNS.filter((name) => !['binding', 'kind', 'judged', 'source'].includes(name)));
    // Rows to write in, a pencil high.
    const rules = page.paths.length;
    expect(rules).toBeGreaterThan(12 + named.length);
    expect(defined(await coversSheetPdf({ paper, date }))).toEqual(bytes);
  },
);
