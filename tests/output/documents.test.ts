import { beforeAll, describe, expect, test } from 'vitest';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { patternPdf } from '../../src/output/pdf/patternPdf.ts';
import { SheetFile } from '../../src/output/pdf/sheetFile.ts';
import { coverOf } from '../core/pattern/coverOf.ts';
import { nth } from '../nth.ts';
import { flatTags, type ReadDocument, readDocument } from './documentReading.ts';

const design = coverOf({ name: 'Tide & <moon> “ledger”' });
const DATE = '2026-11-27';

describe('a sheet as a document', () => {
  const make = async (date: string | undefined, words = 'A paragraph by itself.') => {
    const file = await SheetFile.titled(design.job.name, ['plain', 'bold'], { date });
    const { plain, bold } = file.addPage({ width: 210, height: 297 }).in;
    plain.tagged('H1', () => bold.words('Heading', [20, 250], 6));
    plain.words(words, [20, 240], 3);
    plain.artifact(() => plain.words('Page 1 of 1', [20, 10], 3));
    plain.group('Table', () => {
      for (const [name, value] of [
        ['Width', '165 mm'],
        ['Height', '240 mm'],
      ] as const)
        plain.group('TR', () => {
          plain.tagged('TH', () => plain.words(name, [20, 200], 3), { scope: 'Row' });
          plain.tagged('TD', () => bold.words(value, [60, 200], 3));
        });
    });
    const piece = nth(patternDrawing(design).pieces, 0);
    plain.tagged(
      'Figure',
      () => {
        for (const layer of ['text', 'fold', 'cut'] as const)
          plain.layer(layer, piece.layers[layer], { origin: [20, 20], from: [0, 0], scale: [0.3, 0.3] });
      },
      { alt: 'The outside', box: { x: 20, y: 20, width: 100, height: 80 } },
    );
    return file.save();
  };
  let bytes: Uint8Array;
  let read: ReadDocument;
  beforeAll(async () => {
    bytes = await make(DATE);
    read = await readDocument(bytes);
  });

  test('says its title, language and day alike in its dictionary and in XMP', () => {
    expect(read.title).toBe('Tide & <moon> “ledger”');
    expect(read.language).toBe('en-GB');
    expect(read.created).toBe('D:20261127000000Z');
    expect(read.metadata).toMatchObject({
      'dc:title': read.title,
      'dc:language': 'en-GB',
      'xmp:createdate': '2026-11-27T00:00:00Z',
      'pdf:producer': 'Coverwright',
    });
    // No validator is packaged, so that no conformance is claimed.
    expect(
      Object.keys(read.metadata).filter((name) => name.startsWith('pdfaid') || name.startsWith('pdfuaid')),
    ).toEqual([]);
  });

  test('shows its title, and asks to be printed at actual size', () => {
    expect(read.preferences).toMatchObject({ DisplayDocTitle: true, PrintScaling: 'None' });
  });

  test('has its parts in reading order, each in its role, and nothing that is neither part nor artifact', () => {
    expect(read.isTagged).toBe(true);
    const [page] = read.pages;
    expect(flatTags(nth(page!.tags.children, 0)).map(({ role, words }) => [role, words].join(' ').trim())).toEqual([
      'Document',
      'H1 Heading',
      'P A paragraph by itself.',
      'Table',
      'TR',
      'TH Width',
      'TD 165 mm',
      'TR',
      'TH Height',
      'TD 240 mm',
      expect.stringMatching(/^Figure/),
    ]);
    expect(flatTags(page!.tags).find(({ role }) => role === 'Figure')?.alt).toBe('The outside');
    expect(page!.unmarked).toBe('');
    expect(page!.artifacts).toBe('Page 1 of 1');
  });

  test('lists its layers in the order of a drawing', () => {
    expect(read.layers).toEqual(['CUT', 'FOLD', 'TEXT']);
  });

  test('has the same bytes and identifier for the same content, and others for another day or word', async () => {
    expect(await make(DATE)).toEqual(bytes);
    expect(read.id).toMatch(/^[0-9a-f]{32}$/);
    expect(read.id).not.toBe('0'.repeat(32));
    const others = await Promise.all([make('2026-11-28'), make(undefined), make(DATE, 'A paragraph by itself,')]);
    const ids = await Promise.all(others.map(async (other) => (await readDocument(other)).id));
    expect(new Set([read.id, ...ids]).size).toBe(4);
  });

  test('names no day where none is given, and refuses one that is none', async () => {
    const undated = await readDocument(await make(undefined));
    expect(undated.created).toBeUndefined();
    expect(undated.metadata).not.toHaveProperty('xmp:createdate');
    await expect(make('27/11/2026')).rejects.toThrow('Got date "27/11/2026"; allowed: a day such as 2026-11-27');
  });
});

test('the template is tagged, and its lines are on layers', async () => {
  const { layers, pages } = await readDocument(await patternPdf(patternDrawing(design), { date: DATE }));
  expect(layers).toEqual(expect.arrayContaining(['CUT', 'FOLD', 'SEAM', 'HOLE', 'TEXT']));
  for (const { unmarked } of pages) expect(unmarked).toBe('');
});
