import { beforeAll, describe, expect, test } from 'vitest';
import type { CoverDesign } from '../../src/core/fold/coverDesign.ts';
import { cardDesign } from '../../src/core/mockup/cardDesign.ts';
import { LAYERS } from '../../src/core/pattern/drawing.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { textWidth } from '../../src/core/pattern/textBox.ts';
import { designReport } from '../../src/core/report/designReport.ts';
import { benchSheetPdf } from '../../src/output/benchSheet/benchSheetPdf.ts';
import { customerSheet } from '../../src/output/customerSheet/customerSheet.ts';
import { customerSheetPdf } from '../../src/output/customerSheet/customerSheetPdf.ts';
import { patternPdf } from '../../src/output/pdf/patternPdf.ts';
import { coverOf } from '../core/pattern/coverOf.ts';
import { boundsOf } from '../output/outlineDistance.ts';
import { outlineOn, pagesOf } from '../output/patternReading.ts';
import { type ReadPage, type ReadPath, readPdf } from '../output/pdfReading.ts';
import { wordsOnLines } from '../output/wordsOnLines.ts';
import { proofSize } from './proofSize.ts';

type Change = Parameters<typeof coverOf>[0];

const CHOIR = {
  book: {
    width_mm: 150,
    height_mm: 220,
    thickness_mm: 54,
    boardThickness_mm: 3,
    spine: { shape: 'rounded', rise_mm: 9 },
  },
} as const;
const SHORE = {
  book: { kind: 'paperback', width_mm: 118, height_mm: 186, thickness_mm: 17, boardThickness_mm: 0.4 },
} as const;
const TINY = { book: { width_mm: 60, height_mm: 80, thickness_mm: 10, boardThickness_mm: 1 } } as const;

/** Twelve jobs, each with a name in letters of its own; invented names. */
const JOBS: readonly (readonly [name: string, change: Change])[] = [
  ['Βιβλίο της θάλασσας', CHOIR],
  ['Książka źródeł', SHORE],
  ['Книга приливов', {}],
  ['Sách thủy triều', TINY],
  ['Tide ledger', {}],
  ['Ὕμνοι τῆς θαλάσσης', { ...CHOIR, seam: { method: 'stitching', style: 'saddle' } }],
  ['Їжак і ґава, том Ⅱ', { pockets: { construction: 'turned' } }],
  ['SỔ TAY ĐI BIỂN', { construction: { mouth: 'curved', strap: {}, penLoop: {}, ribbon: {} } }],
  ['Žluťoučký kůň, ő ű ş ț', { leather: { lining: { min_mm: 0.7, max_mm: 0.8 } } }],
  ['Łódź → Gdańsk', { ...SHORE, seam: { cornerRadius_mm: 12 } }],
  ['Nan’s “Œuvre” – 5 €', { ...TINY, construction: { strap: {} } }],
  ['Дневник ŝipo Ἀργώ', { book: { kind: 'limp', boardThickness_mm: 0.6 } }],
];

/** A line of the pattern itself: not the frame of a page, nor a joint, which is cut through whatever lies there. */
const isDrawn = ({ lineWidth, dash }: ReadPath): boolean =>
  !(Math.abs(lineWidth - 0.1) < 1e-3 && dash.length === 0) && !(Math.abs((dash[0] ?? 0) - 2) < 1e-3);

interface Papers {
  readonly template: readonly ReadPage[];
  readonly bench: readonly ReadPage[];
  readonly customer: readonly ReadPage[];
  readonly sizes: readonly number[];
}

async function papersOf(design: CoverDesign): Promise<Papers> {
  const report = designReport(design);
  const files = [
    await patternPdf(patternDrawing(design)),
    await benchSheetPdf(design),
    await customerSheetPdf(customerSheet(design, report)),
  ];
  const [template, bench, customer] = await Promise.all(files.map(readPdf));
  return { template: template!, bench: bench!, customer: customer!, sizes: files.map(({ length }) => length) };
}

const textOf = (pages: readonly ReadPage[]): string =>
  pages.flatMap(({ words }) => words.map(({ text }) => text)).join(' ');

describe.each(JOBS.slice(0, proofSize(JOBS.length, 4)))('the papers of “%s”, read back', (name, change) => {
  let design: CoverDesign;
  let papers: Papers;
  beforeAll(async () => {
    design = coverOf({ ...change, name });
    papers = await papersOf(design);
    console.info(
      `${name}: template, bench and customer's sheet of ${papers.sizes.map((size) => `${(size / 1000).toFixed(0)} kB`).join(', ')}`,
    );
  }, 180_000);

  test('have the name as it was typed on each of them, and no question mark', () => {
    for (const pages of [papers.template, papers.bench, papers.customer]) {
      expect(textOf(pages)).toContain(name);
      expect(textOf(pages)).not.toContain('?');
    }
    // On every page of the template, so that no page is taken for that of another book.
    for (const page of papers.template) expect(textOf([page])).toContain(name);
  });

  test('carry the letters with them: every font is a subset within the file', () => {
    for (const { fonts } of [...papers.template, ...papers.bench, ...papers.customer]) {
      expect(fonts.length).toBeGreaterThan(0);
      for (const font of fonts) {
        expect(font.name).toMatch(/^[A-Z]{6}\+/);
        expect(font.size).toBeGreaterThan(1000);
      }
    }
    for (const size of papers.sizes) expect(size).toBeLessThan(400_000);
  });

  test('are drawn in true size, within 0.01 mm', () => {
    for (const piece of patternDrawing(design).pieces) {
      const tiles = pagesOf(papers.template, piece.name, name);
      expect(tiles.length).toBeGreaterThan(0);
      for (const page of tiles) {
        const { width, height } = boundsOf(outlineOn(page, piece));
        expect(width).toBeCloseTo(piece.width, 2);
        expect(height).toBeCloseTo(piece.height, 2);
      }
    }
  });

  test('have no word on a hole, a slit, a fold, a seam, a cut edge or any other line of the drawing', async () => {
    const { job } = design;
    const inInches = { ...job, work: { ...job.work, units: 'in' as const } };
    const card = await readPdf(
      await patternPdf(patternDrawing(cardDesign(inInches, job.mockup.card)), { mirrored: true }),
    );
    for (const page of [...papers.template.slice(1), ...card.slice(1)]) expect(wordsOnLines(page, isDrawn)).toEqual([]);
  });

  test('set no words wider than the room that the drawing keeps clear for them', () => {
    for (const piece of patternDrawing(design).pieces) {
      const texts = LAYERS.flatMap((layer) => piece.layers[layer]).filter((entity) => entity.kind === 'text');
      const words = pagesOf(papers.template, piece.name, name).flatMap((page) => page.words);
      for (const { text, height } of texts)
        for (const found of words.filter((word) => word.text === text && Math.abs(word.height - height) < 1e-3))
          expect(found.width).toBeLessThan(textWidth(text, height) + 0.02);
    }
  });
});
