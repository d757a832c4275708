import { readdirSync, readFileSync } from 'node:fs';
import jsQR from 'jsqr';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import type { JobRecord } from '../../src/core/job/migrate.ts';
import { randomDraws } from '../../src/core/math/randomDraws.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { designReport } from '../../src/core/report/designReport.ts';
import { benchSheetPdf } from '../../src/output/benchSheet/benchSheetPdf.ts';
import { customerSheet } from '../../src/output/customerSheet/customerSheet.ts';
import { customerSheetPdf } from '../../src/output/customerSheet/customerSheetPdf.ts';
import { draftingSheet } from '../../src/output/draftingSheet/draftingSheet.ts';
import { draftingSheetPdf } from '../../src/output/draftingSheet/draftingSheetPdf.ts';
import { measuringSheetPdf } from '../../src/output/measuringSheet/measuringSheetPdf.ts';
import { patternPdf } from '../../src/output/pdf/patternPdf.ts';
import { SheetFile } from '../../src/output/pdf/sheetFile.ts';
import { photographSheetPdf } from '../../src/output/photographSheet/photographSheetPdf.ts';
import { readShareFragment } from '../../src/output/shareLink/shareLink.ts';
import { titleBlock } from '../../src/output/titleBlock.ts';
import { soundJob } from '../jobArbitrary.ts';
import { flatTags, readDocument } from '../output/documentReading.ts';
import { readPdf } from '../output/pdfReading.ts';
import { hasReaders, type Raster, rasterised, readWith } from '../output/poppler.ts';
import { squareOn } from '../output/squareReading.ts';
import { isWholeProof } from './proofSize.ts';

const DATE = '2026-11-27';
const ADDRESS = 'https://leather.example/covers/';
const DEMO = readdirSync('public/jobs').map(
  (name): JobRecord => JSON.parse(readFileSync(`public/jobs/${name}`, 'utf8')),
);

/** Names in six scripts; invented. */
const NAMES = [
  'The harbour book',
  'Βιβλίο της θάλασσας',
  'Книга приливов',
  'Sách thủy triều',
  'كتاب المد والجزر',
  'ספר הגאות',
];

/** Every sheet of a job, with its name. */
async function sheets(document: JobRecord): Promise<readonly (readonly [string, Uint8Array])[]> {
  const design = coverDesign(soundJob(document));
  const block = (sheet: string) =>
    titleBlock({ sheet, job: design.job, design, document, date: DATE, address: ADDRESS });
  const bench = ['bench', await benchSheetPdf(design, { block: block('Bench sheet') })] as const;
  if (!isWholeProof) return [bench];
  const drawing = patternDrawing(design);
  return [
    bench,
    ['template', await patternPdf(drawing, { block: block('Template') })],
    ['drafting', await draftingSheetPdf(draftingSheet(design, drawing), { block: block('Drafting sheet') })],
    [
      'customer',
      await customerSheetPdf(customerSheet(design, designReport(design)), { block: block('Customer sheet') }),
    ],
    ['measuring', await measuringSheetPdf({ date: DATE })],
    ['photograph', await photographSheetPdf({ date: DATE, job: design.job.name, pages: 1 })],
  ];
}

/** Text without direction marks and line breaks. */
const plain = (text: string): string =>
  text.replace(/[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, '').replace(/\s+/g, ' ');

const CASES = NAMES.map((name, i) => [name, { ...DEMO[i % DEMO.length], name } as JobRecord] as const);

test.skipIf(!hasReaders)('six scripts are found on one sheet, alone and among Latin words', async () => {
  const file = await SheetFile.titled('Scripts', ['plain', 'bold'], { date: DATE });
  const { plain: canvas, bold } = file.addPage({ width: 210, height: 297 }).in;
  NAMES.forEach((name, i) => {
    canvas.words(name, [20, 270 - 20 * i], 5);
    bold.words(`Job ${name}, page 1`, [20, 260 - 20 * i], 5);
  });
  const text = plain(readWith('pdftotext', ['-layout', '{file}', '-'], await file.save()));
  for (const name of NAMES) {
    expect(text).toContain(name);
    expect(text.indexOf(name, text.indexOf(name) + 1)).toBeGreaterThan(0);
  }
});

test('a sign that the letters lack is one box, however many characters it has, and is named by number', async () => {
  const file = await SheetFile.titled('Signs', ['plain']);
  const family = '\u{1f469}\u200d\u{1f469}\u200d\u{1f467}';
  const words = `a ${family} b \u{1f44d}\u{1f3fd} c \u{1f1e9}\u{1f1ea} d \u6d77\u672c e x\u0301`;
  file.addPage({ width: 210, height: 297 }).in.plain.words(words, [20, 270], 5);
  const lacking: string[] = [];
  const [page] = await readPdf(await file.save({ onLacking: (signs) => lacking.push(...signs) }));
  const said = page!.words.map(({ text }) => text).join(' ');
  expect(said).toContain('a □ b □ c □ d □□ e x\u0301');
  expect(said).toContain('U+1F469 U+200D U+1F469 U+200D U+1F467, U+1F44D U+1F3FD');
  expect(said).toContain('Write it in by hand');
  expect(lacking).toHaveLength(5);
});

describe.skipIf(!hasReaders)('every sheet, by poppler and qpdf (skipped where they are not installed)', () => {
  test.each(isWholeProof ? CASES : CASES.slice(4, 5))('of a job called %s', async (name, document) => {
    for (const [kind, bytes] of await sheets(document)) {
      expect(readWith('qpdf', ['--check', '{file}'], bytes)).toContain('No syntax or stream encoding errors');
      const fonts = readWith('pdffonts', ['{file}'], bytes).trim().split('\n').slice(2);
      expect(fonts.length).toBeGreaterThan(0);
      // Embedded, subset, with a table back to Unicode.
      for (const font of fonts) expect([kind, font]).toEqual([kind, expect.stringMatching(/ yes yes yes /)]);
      const info = readWith('pdfinfo', ['-isodates', '{file}'], bytes);
      expect(info).toMatch(/Tagged: +yes/);
      expect(info).toMatch(/CreationDate: +2026-11-27T00:00:00Z/);
      if (kind !== 'measuring') {
        expect(info).toContain(name);
        expect(plain(readWith('pdftotext', ['{file}', '-'], bytes))).toContain(name);
      }
      const read = await readDocument(bytes);
      expect(read).toMatchObject({ language: 'en-GB', isTagged: true });
      expect(read.preferences).toMatchObject({ PrintScaling: 'None', DisplayDocTitle: true });
      for (const { unmarked, tags } of read.pages) {
        expect([kind, unmarked]).toEqual([kind, '']);
        const figures = flatTags(tags).filter(({ role }) => role === 'Figure');
        for (const { alt } of figures) expect(alt).toMatch(/\S/);
      }
      if (kind !== 'template') {
        const roles = read.pages.flatMap(({ tags }) => flatTags(tags)).map(({ role }) => role);
        expect([kind, roles.filter((role) => role === 'H1').length]).toEqual([kind, 1]);
      }
    }
  });
});

/** What a telephone might take of a page, half askew, out of focus and in poor light: the part round a place. */
function photographed(
  { width, height, grey }: Raster,
  [cx, cy]: readonly [number, number],
  reach: number,
  seed: number,
) {
  const random = randomDraws(seed);
  const size = 900;
  const turn = (random() - 0.5) * 0.6;
  const [leanX, leanY] = [0.3 * (random() - 0.5), 0.3 * (random() - 0.5)];
  const dot = (i: number, k: number): number =>
    grey[Math.min(height - 1, Math.max(0, k)) * width + Math.min(width - 1, Math.max(0, i))] ?? 255;
  // Between dots in proportion: taking the nearest would add steps to every edge that no lens makes.
  const at = (x: number, y: number): number => {
    const [i, k] = [Math.floor(x), Math.floor(y)];
    const [u, v] = [x - i, y - k];
    return (1 - v) * ((1 - u) * dot(i, k) + u * dot(i + 1, k)) + v * ((1 - u) * dot(i, k + 1) + u * dot(i + 1, k + 1));
  };
  const pixels = new Uint8ClampedArray(4 * size * size);
  for (let row = 0; row < size; row++)
    for (let column = 0; column < size; column++) {
      const [s, t] = [(2 * column) / size - 1, (2 * row) / size - 1];
      const depth = 1 + leanX * s + leanY * t;
      const x = cx + (reach * (s * Math.cos(turn) - t * Math.sin(turn))) / depth;
      const y = cy + (reach * (s * Math.sin(turn) + t * Math.cos(turn))) / depth;
      let sum = 0;
      for (const dx of [-0.9, 0, 0.9]) for (const dy of [-0.9, 0, 0.9]) sum += at(x + dx, y + dy);
      // A third of the light is gone on one side, and black is no more than dark grey.
      const value = 40 + 0.5 * (sum / 9) * (1 - 0.17 * (s + 1)) + 16 * (random() - 0.5);
      pixels.fill(value, 4 * (row * size + column), 4 * (row * size + column) + 3);
      pixels[4 * (row * size + column) + 3] = 255;
    }
  return jsQR(pixels, size, size)?.data ?? null;
}

describe.skipIf(!hasReaders)('a photograph of the square code (skipped without poppler)', () => {
  const DPI = 200;
  test.each(isWholeProof ? DEMO : DEMO.slice(0, 1))('of $name opens the very job', async (document) => {
    const design = coverDesign(soundJob(document));
    const block = titleBlock({ sheet: 'Bench sheet', job: design.job, design, document, date: DATE, address: ADDRESS });
    const bytes = await benchSheetPdf(design, { block });
    const [page] = await readPdf(bytes);
    const { left, top, side } = squareOn(page!);
    const raster = rasterised(bytes, 1, DPI);
    const dots = DPI / 25.4;
    const middle = [(left + side / 2) * dots, (page!.height - top + side / 2) * dots] as const;
    const tries = isWholeProof ? 40 : 2;
    let read = 0;
    for (let seed = 1; seed <= tries; seed++) {
      const text = photographed(raster, middle, side * dots, seed);
      if (text === null) continue;
      read++;
      const opened = readShareFragment(text.slice(ADDRESS.length));
      expect(opened.ok && opened.job).toEqual(design.job);
    }
    console.info(
      `${String(document.name)}: ${read} of ${tries} photographs read at ${DPI} dpi, side ${side.toFixed(1)} mm`,
    );
    // A telephone tries many pictures a second: one in two is enough, and none may open another job.
    expect(read).toBeGreaterThanOrEqual(tries / 2);
  });
});
