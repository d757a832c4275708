import { describe, expect, test } from 'vitest';
import { measuringSheetPdf } from '../../../src/output/measuringSheet/measuringSheetPdf.ts';
import { printedRuler } from '../../../src/output/measuringSheet/printedRuler.ts';
import { ASKED } from '../../../src/output/measuringSheet/sheetWords.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';
import { type ReadWords, readPdf } from '../pdfReading.ts';

const SHEETS = [
  { paper: 'A4', units: 'mm', width: 210, height: 297 },
  { paper: 'A4', units: 'in', width: 210, height: 297 },
  { paper: 'Letter', units: 'mm', width: 215.9, height: 279.4 },
  { paper: 'Letter', units: 'in', width: 215.9, height: 279.4 },
] as const;

describe.each(SHEETS)('the measuring sheet on $paper in $units', ({ paper, units, width, height }) => {
  test('is one page with its words to select, and nothing runs over its edges', async () => {
    const pages = await readPdf(await measuringSheetPdf({ paper, units }));
    expect(pages).toHaveLength(1);
    const page = nth(pages, 0);
    expect(page.width).toBeCloseTo(width, 1);
    expect(page.height).toBeCloseTo(height, 1);
    const text = page.words.map((word) => word.text).join(' ');
    for (const { name } of ASKED) expect(text).toContain(name);
    expect(text).toContain('Measuring a book');
    const points = [
      ...page.paths.flatMap(({ chains }) => chains.flat()),
      ...page.words.filter((word) => word.text.trim() !== '').map(({ at }) => at),
    ];
    for (const [x, y] of points) {
      expect(x).toBeGreaterThanOrEqual(5);
      expect(x).toBeLessThanOrEqual(width - 5);
      expect(y).toBeGreaterThanOrEqual(5);
      expect(y).toBeLessThanOrEqual(height - 5);
    }
  });

  test('sets no line of words on another', async () => {
    const page = nth(await readPdf(await measuringSheetPdf({ paper, units })), 0);
    const words = page.words.filter((word) => word.text.trim() !== '');
    const meet = (a: ReadWords, b: ReadWords): boolean =>
      Math.abs(a.at[1] - b.at[1]) < 0.9 * Math.max(a.height, b.height) &&
      a.at[0] < b.at[0] + b.width &&
      b.at[0] < a.at[0] + a.width;
    const tooNear = words.flatMap((a, i) =>
      words
        .slice(i + 1)
        .filter((b) => meet(a, b))
        .map((b) => `${a.text} / ${b.text}`),
    );
    expect(tooNear).toEqual([]);
  });

  test('asks in words for every letter of the drawings, in the unit wanted', async () => {
    const page = nth(await readPdf(await measuringSheetPdf({ paper, units })), 0);
    const texts = page.words.map((word) => word.text);
    for (const { letter } of ASKED) expect(texts.filter((text) => text === letter)).toHaveLength(2);
    expect(texts.filter((text) => text === units)).toHaveLength(ASKED.length);
  });

  test('gives the same bytes each time', async () => {
    expect(await measuringSheetPdf({ paper, units })).toEqual(await measuringSheetPdf({ paper, units }));
  });

  test('has a gap that a bank card ends in at true size, and at no print that is off by 0.5 % or more', async () => {
    const page = nth(await readPdf(await measuringSheetPdf({ paper, units })), 0);
    const upright = page.paths.flatMap(({ chains, lineWidth, isDashed }) =>
      chains.flatMap(([a, b]) =>
        a !== undefined && b !== undefined && a[0] === b[0] && a[1] < 30 && b[1] < 30
          ? [{ x: a[0], top: Math.max(a[1], b[1]), lineWidth, isDashed }]
          : [],
      ),
    );
    const top = Math.max(...upright.map((line) => line.top));
    const lines = upright.filter((line) => top - line.top < 1e-6).sort((a, b) => a.x - b.x);
    expect(lines).toHaveLength(3);
    const [stop, first, second] = [nth(lines, 0), nth(lines, 1), nth(lines, 2)];
    expect(stop.x).toBeCloseTo(Math.min(...upright.map(({ x }) => x)), 6);
    // A line as thick as the gap would fill it; three dots of a print at 300 dpi stay white.
    expect(second.x - first.x - first.lineWidth).toBeGreaterThan((3 * 25.4) / 300);
    expect(lines.every(({ isDashed }) => !isDashed)).toBe(true);
    // ISO/IEC 7810, size ID-1: 85.60 mm; 85.47 to 85.72 mm with its tolerance (from memory).
    const isTaken = (card: number, print: number): boolean =>
      print * (first.x - stop.x) < card && card < print * (second.x - stop.x);
    for (const card of [85.47, 85.6, 85.72]) {
      expect(isTaken(card, 1)).toBe(true);
      for (const print of [0.94, 0.95, 0.96, 0.97, 0.973, 0.99, 0.995, 1.005, 1.01, 1.03, 1.06])
        expect([card, print, isTaken(card, print)]).toEqual([card, print, false]);
    }
    // At 97 % the card covers both lines, by 2 mm and more.
    expect(85.6 - 0.97 * (second.x - stop.x)).toBeGreaterThan(2);
    const wordsAt = (text: string) => defined(page.words.find((word) => word.text.includes(text)));
    const [large, small] = [wordsAt('print too large'), wordsAt('print too small')];
    expect(large.at[0] + large.width).toBeLessThan(first.x);
    expect(large.at[0] + large.width).toBeGreaterThan(first.x - 3);
    expect(small.at[0]).toBeGreaterThan(second.x);
    expect(small.at[0]).toBeLessThan(second.x + 3);
    expect(page.words.map(({ text }) => text).join(' ')).toContain('must end between the two lines');
  });
});

describe('the printed ruler', () => {
  test.each([
    ['mm', 178, 170, 171, 18],
    ['in', 178, 177.8, 113, 8],
  ] as const)('in %s of %d mm has whole units only', (units, room, length, ticks, figures) => {
    const ruler = printedRuler(units, room);
    expect(ruler.length).toBeCloseTo(length, 9);
    expect(ruler.ticks).toHaveLength(ticks + 1); // and its base line
    expect(ruler.figures).toHaveLength(figures);
    expect(ruler.figures.at(-1)?.at).toBeCloseTo(length, 9);
  });
});
