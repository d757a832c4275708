import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { JobPath } from '../../../src/core/job/jobPath.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { columnsOf, parseRow, readHeader, rowDocument } from '../../../src/output/catalogue/rowDocument.ts';
import { jobDocument } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';

const headerOf = (...cells: string[]) => {
  const read = readHeader(cells);
  if (!read.ok) throw new Error(read.issues.map(({ message }) => message).join('\n'));
  return columnsOf(read.header);
};

const badPaths = (...cells: string[]) => {
  const read = readHeader(cells);
  return read.ok ? [] : read.issues.map(({ path }) => path);
};

/** Leaves of a document by dotted path, as a table would name them. */
function leaves(value: unknown, path = ''): [string, unknown][] {
  if (
    typeof value !== 'object' ||
    value === null ||
    (Array.isArray(value) && value.every(Number.isInteger) && value.length > 0)
  )
    return [[path, value]];
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, path === '' ? key : `${path}.${key}`));
}

describe('a row of a table of jobs', () => {
  test('makes the document whose fields the header names', () => {
    const header = headerOf('name', 'book.width_mm', 'leather.outside.min_mm', 'pockets.depth_mm', 'seam.style');
    expect(rowDocument(header, ['1984', ' 165 ', '1.5', 'null', 'double loop'])).toEqual({
      format: 'coverwright-job',
      version: 3,
      name: '1984',
      book: { width_mm: 165 },
      leather: { outside: { min_mm: 1.5 } },
      pockets: { depth_mm: null },
      seam: { style: 'double loop' },
    });
  });

  test('reads truth values, and keeps text that looks like another value', () => {
    const header = headerOf('name', 'mockup.readings.closes', 'rates.currency');
    expect(rowDocument(header, ['true', 'true', '1'])).toMatchObject({
      name: 'true',
      mockup: { readings: { closes: true } },
      rates: { currency: '1' },
    });
  });

  test('leaves the fields of empty and missing cells to their defaults', () => {
    const header = headerOf('name', 'book.width_mm', 'book.spine.rise_mm');
    expect(rowDocument(header, ['A', '  '])).toEqual({ format: 'coverwright-job', version: 3, name: 'A' });
  });

  test.each(['abc', '1,500', '12 oz', 'NaN', 'Infinity', '0x10', '1e', '--1', '.', '8 9/8', '-1 mm', 'true'])(
    'refuses %j as a length',
    (text) => {
      const parsed = parseRow(headerOf('book.width_mm'), [text]);
      const issue = parsed.ok ? undefined : parsed.issues.find(({ path }) => path === 'book.width_mm');
      expect(issue?.got).toBe(JSON.stringify(text));
    },
  );

  test.each([
    ['165', 165],
    ['-2.5', -2.5],
    ['.5', 0.5],
    ['1e2', 100],
    ['165,5', 165.5],
    ['0,125', 0.125],
    ['8 1/2 in', 215.9],
    ['8½', 215.9],
    ['21,6 cm', 216],
  ])('reads %j as a number', (text, value) => {
    expect(rowDocument(headerOf('book.width_mm'), [text])).toMatchObject({ book: { width_mm: value } });
  });

  test('reads a leather weight at one end of a range, and a range where one column stands for both ends', () => {
    const header = headerOf(
      'leather.outside.min_mm',
      'leather.outside.max_mm',
      'leather.outside.neutral',
      'leather.pocket',
    );
    expect(rowDocument(header, ['4 oz', '1,984375', '0,6', '4-5 oz']).leather).toEqual({
      outside: { min_mm: 1.5875, max_mm: 1.984375, neutral: 0.6 },
      pocket: { min_mm: 1.5875, max_mm: 1.984375 },
    });
    const parsed = parseRow(header, ['4-5 oz', '2', '0.6', '5-4 oz']);
    const said = parsed.ok ? {} : Object.fromEntries(parsed.issues.map(({ path, remedy }) => [path, remedy]));
    expect(said['leather.outside.min_mm']).toContain('leather.outside');
    expect(said['leather.pocket']).toContain('thinner end first');
  });

  test('says the same as the document that it was written from', () => {
    checkLaw(
      fc.property(jobDocument, (document) => {
        const cells = leaves(JSON.parse(JSON.stringify(document))).filter(([path]) => path !== 'leather.lining');
        const row = rowDocument(
          headerOf(...cells.map(([path]) => path)),
          cells.map(([, value]) => String(value)),
        );
        expect(parseJob(row)).toEqual(parseJob(document));
      }),
    );
  });
});

test.each([
  ['2 10', [2, 10]],
  ['6', [6]],
  ['2, 6;10', [2, 6, 10]],
])('the teeth of an iron %j are whole numbers', (text, teeth) => {
  expect(rowDocument(headerOf('seam.iron.teeth'), [text])).toMatchObject({ seam: { iron: { teeth } } });
});

test('teeth that are no whole numbers are refused in words', () => {
  const parsed = parseRow(headerOf('seam.iron.teeth'), ['two']);
  const issue = parsed.ok ? undefined : parsed.issues.find(({ path }) => path === 'seam.iron.teeth');
  expect(issue?.message).toBe('got "two"; allowed: whole numbers, as 2 10; write them with spaces');
});

describe('the header of a table of jobs', () => {
  test.each([
    [['book.widht_mm'], 'book.widht_mm'],
    [['colour'], 'colour'],
    [['name', 'name'], 'name'],
    [['name', ''], '(column 2)'],
    [['book', 'book.width_mm'], 'book'],
    [['book'], 'book'],
    [['name.first'], 'name.first'],
    [['book..width_mm'], 'book..width_mm'],
    [['leather.outside', 'leather.outside.min_mm'], 'leather.outside'],
    [['leather'], 'leather'],
    [['name;book.width_mm'], 'name;book.width_mm'],
    [['width mm'], 'width mm'],
    [['__proto__.polluted'], '__proto__.polluted'],
    [['constructor.prototype.polluted'], 'constructor.prototype.polluted'],
  ])('%j is refused', (cells, path) => expect(badPaths(...cells)).toContain(path));

  test('cannot reach inherited properties', () => {
    rowDocument(columnsOf(['constructor.prototype.polluted' as JobPath]), ['1']);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  test('may name every leaf of a job', () => {
    const taken = { id: 'a', revision: 1, name: 'Oak bark shoulder' };
    const parsed = parseJob({
      format: 'coverwright-job',
      version: 2,
      book: { width_mm: 100, height_mm: 100, thickness_mm: 20 },
      leather: { outside: { min_mm: 1, max_mm: 2, taken }, lining: { min_mm: 1, max_mm: 1, taken } },
      seam: { iron: { kind: 'pricking iron', pitch_mm: 4, tooth_mm: 2 } },
      construction: { strap: {}, penLoop: {}, ribbon: {} },
      finish: { pocket: {} },
      hides: { outside: {}, pocket: {}, lining: {} },
    });
    const paths = leaves(parsed.ok && parsed.job).map(([path]) => path);
    expect(paths.length).toBeGreaterThan(40);
    expect(badPaths(...paths)).toEqual([]);
  });
});
