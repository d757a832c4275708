import fc from 'fast-check';
import { afterAll, describe, expect, test } from 'vitest';
import { type CoverDesign, coverDesign } from '../../src/core/fold/coverDesign.ts';
import { cutStep } from '../../src/core/job/workSchema.ts';
import { cardDesign } from '../../src/core/mockup/cardDesign.ts';
import type { CutSum, Drawing } from '../../src/core/pattern/drawing.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { sumColumn, sumLines } from '../../src/core/pattern/sumColumn.ts';
import { designReport } from '../../src/core/report/designReport.ts';
import { printer } from '../../src/core/units/printer.ts';
import { benchSheetContent } from '../../src/output/benchSheet/benchSheetContent.ts';
import { customerSheet } from '../../src/output/customerSheet/customerSheet.ts';
import { patternPdf } from '../../src/output/pdf/patternPdf.ts';
import { titleBlock } from '../../src/output/titleBlock.ts';
import { defined } from '../defined.ts';
import { soundJob } from '../jobArbitrary.ts';
import { checkLaw, lawCases } from '../laws.ts';
import { nth } from '../nth.ts';
import { sheetTexts } from '../output/customerSheet/sheetTexts.ts';
import { readPdf } from '../output/pdfReading.ts';
import { constructedJob } from '../property/constructionArbitrary.ts';
import { proofSize } from './proofSize.ts';

/** Random jobs; each is worked in both units. */
const JOBS = proofSize(500, lawCases(5));
/** Every so many jobs the template is made too, and its check page read. */
const PAGES_EVERY = 20;

const MM_PER_INCH = 25.4;
const counts = { jobs: 0, sizes: 0, sums: 0, sentences: 0, pages: 0 };

/** A number as printed, as a ratio of whole numbers: `8 1/2` is 17/2, `385.5` is 3855/10. Read here, not by the product. */
function ratio(text: string): readonly [number, number] {
  const [, sign, whole = '0', over = '0', under = '1'] = /^(−?)(?:(\d+)(?: |$))?(?:(\d+)\/(\d+))?$/.exec(text) ?? [];
  if (sign !== undefined)
    return [(sign === '' ? 1 : -1) * (Number(whole) * Number(under) + Number(over)), Number(under)];
  const [, minus, digits, decimals] = /^(−?)(\d+)\.(\d+)$/.exec(text) ?? [];
  if (decimals === undefined) throw new Error(`“${text}” is no printed number`);
  return [(minus === '' ? 1 : -1) * Number(`${digits}${decimals}`), 10 ** decimals.length];
}

/** Whole hundredths of a millimetre or 64ths of an inch; a printed number that is no whole number of them is an error. */
function wholeSteps(text: string, unit: 'mm' | 'in'): number {
  const [over, under] = ratio(text);
  const steps = (over * (unit === 'in' ? 64 : 100)) / under;
  expect(Number.isInteger(steps)).toBe(true);
  return steps;
}

const millimetres = (text: string): number => {
  const [, number, unit] = defined(/^(.+) (mm|in)$/.exec(text));
  const [over, under] = ratio(number!);
  return (over / under) * (unit === 'in' ? MM_PER_INCH : 1);
};

/** A job document with measures as a ruler in its unit shows them, or with any. */
const worked = fc
  .record({
    document: constructedJob,
    isRuled: fc.boolean(),
    fine: fc.boolean(),
    ribbon: fc.boolean(),
    givesWidth: fc.boolean(),
  })
  .map(({ document, isRuled, fine, ribbon, givesWidth }) => (units: 'mm' | 'in') => {
    const rule = units === 'in' ? MM_PER_INCH / 16 : 0.5;
    const ruled = (value: number): number => (isRuled ? Math.ceil(value / rule) * rule : value);
    const { book } = document;
    const [width_mm, height_mm] = [ruled(book.width_mm), ruled(book.height_mm)];
    return {
      ...document,
      work: { units, cutStep_mm: units === 'in' && fine ? MM_PER_INCH / 32 : null },
      book: { ...book, width_mm, height_mm },
      construction: { ...document.construction, ribbon: ribbon ? {} : null },
      pattern: givesWidth ? { outsideWidth_mm: 2 * width_mm + 180.07 } : {},
    };
  });

/** Everything that is said of a job in sentences, by where it is said. */
function sentences(design: CoverDesign, drawing: Drawing): Record<string, readonly string[]> {
  const report = designReport(design);
  const sheet = benchSheetContent(design);
  const customer = customerSheet(design, report);
  return {
    report: [report.headline, ...report.checks.flatMap(({ message, remedy }) => [message, remedy])],
    pattern: [
      ...drawing.pieces.flatMap(({ layers }) =>
        layers.text.flatMap((entity) => (entity.kind === 'text' ? [entity.text] : [])),
      ),
      ...drawing.notes,
    ],
    bench: [
      ...titleBlock({ sheet: 'Bench sheet', job: design.job, design, document: design.job }).facts.map(
        ({ name, value }) => `${name}: ${value}`,
      ),
      sheet.headline,
      ...sheet.blocks.map((block) => ('aside' in block ? `${block.text} ${block.aside}` : block.text)),
    ],
    customer: [...sheetTexts(customer), ...customer.madeOf.facts.map(({ name, value }) => `${name}: ${value}`)],
  };
}

/** The dimensions that lines of text give, as `width 15 1/16 in =`. */
const dimensions = (lines: readonly string[]): string[] =>
  lines.flatMap((line) => /^((?:width|height|length) .+ (?:mm|in))(?: =)?$/.exec(line)?.[1] ?? []);

/** The one capture of a pattern that all lines agree on. */
function theOne(lines: readonly string[], pattern: RegExp): string {
  const found = new Set(lines.flatMap((line) => pattern.exec(line)?.[1] ?? []));
  expect([...found]).toHaveLength(1);
  return nth([...found], 0);
}

function everySize(design: CoverDesign, drawing: Drawing, said: ReturnType<typeof sentences>): void {
  const { job, pieces } = design;
  const { units } = job.work;
  const within = units === 'in' ? 1e-6 : 0.005 + 1e-9;
  const isGiven = (sum: CutSum): boolean =>
    (sum.dimension === 'width' && job.pattern.outsideWidth_mm !== null) || sum.parts.length < 2;
  const allSums = [...drawing.pieces, ...drawing.lengths.map(({ sum }) => ({ sums: [sum] }))].flatMap(
    ({ sums }) => sums,
  );
  const onSheet = dimensions(defined(said.bench));
  // One line a dimension of each piece, in the order of the drawing; the sheet has no other.
  expect(onSheet).toHaveLength(allSums.length);
  allSums.forEach((sum, i) => {
    const [dimension, text] = [sum.dimension, nth(onSheet, i).slice(sum.dimension.length + 1)];
    expect(nth(onSheet, i).startsWith(dimension)).toBe(true);
    expect(Math.abs(millimetres(text) - sum.total)).toBeLessThanOrEqual(isGiven(sum) ? 0.005 + 1e-9 : within);
    counts.sizes++;
  });
  for (const piece of drawing.pieces) {
    const [sheet, label] = [
      dimensions(
        defined(said.bench).slice(defined(said.bench).findIndex((line) => line.startsWith(`${piece.name} cut `))),
      ),
      dimensions(piece.layers.text.flatMap((entity) => (entity.kind === 'text' ? [entity.text] : []))),
    ];
    for (const line of label) expect(sheet.slice(0, piece.sums.length)).toContain(line);
    // What the label says is what is drawn.
    for (const line of label.filter((each) => each.startsWith('width') || each.startsWith('height')))
      expect(
        Math.abs(
          millimetres(line.slice(line.indexOf(' ') + 1)) - (line.startsWith('width') ? piece.width : piece.height),
        ),
      ).toBeLessThanOrEqual(0.005 + 1e-9);
  }
  const depth = theOne(defined(said.bench), /Pocket depth: (.+? (?:mm|in))\b/);
  expect(Math.abs(millimetres(depth) - pieces.pocketDepth)).toBeLessThanOrEqual(within);
  expect(theOne(defined(said.bench), /^Book: \w+, (.+ thick),/)).toBe(
    theOne(defined(said.customer), /^Book: \w+, (.+ thick)/),
  );
  expect(theOne(defined(said.bench), /^Leather: ([^,]+)/)).toBe(theOne(defined(said.customer), /^Leather: ([^,]+)/));
  const card = dimensions(
    defined(sentences(cardDesign(job, job.mockup.card), patternDrawing(cardDesign(job, job.mockup.card))).bench),
  );
  expect(theOne(defined(said.bench), /Outside in card: (.+?) ×/)).toBe(nth(card, 0).slice('width '.length));
}

function everySum(drawing: Drawing, units: 'mm' | 'in'): void {
  const print = printer(units);
  for (const sum of [...drawing.pieces.flatMap(({ sums }) => sums), ...drawing.lengths.map(({ sum }) => sum)]) {
    const { unit, total, lines } = sumColumn(sum, print);
    const step = unit === 'in' ? MM_PER_INCH / 64 : 0.01;
    const added = lines.reduce((all, { isLess, whole }) => all + (isLess ? -1 : 1) * wholeSteps(whole, unit), 0);
    expect(added).toBe(wholeSteps(total, unit));
    expect(`${total} ${unit}`).toBe(print.size(sum.total));
    // As written on the piece, each part as often as it counts.
    const [head, ...written] = sumLines(sum, print);
    if (written.length > 0) {
      const readOut = written.map((text) => {
        const [, less, times, each] = defined(/^(less )?(?:(2) x )?([\d. /]+) \D/.exec(text));
        return (less === undefined ? 1 : -1) * Number(times ?? 1) * wholeSteps(each!.trim(), unit);
      });
      expect(readOut.reduce((all, each) => all + each, 0)).toBe(
        wholeSteps(
          nth(dimensions([head!]), 0)
            .split(' ')
            .slice(1, -1)
            .join(' '),
          unit,
        ),
      );
    }
    // No part is nudged.
    for (const { name, times, each } of sum.parts.filter(({ isRest }) => isRest !== true)) {
      const line = lines.find((other) => other.name === name || other.name.startsWith(`${name} (`));
      expect(
        Math.abs((line === undefined ? 0 : wholeSteps(line.each, unit)) * step - Math.abs(each)),
      ).toBeLessThanOrEqual(step / 2 + 1e-6);
      if (line !== undefined) expect(wholeSteps(line.whole, unit)).toBe(times * wholeSteps(line.each, unit));
    }
    counts.sums++;
  }
}

/** Numbers of the job, however deep. */
const numbersIn = (value: unknown): number[] =>
  typeof value === 'number'
    ? [value]
    : typeof value === 'object' && value !== null
      ? Object.values(value).flatMap(numbersIn)
      : [];

/** Settings of the tool that a sheet may name: least margin, tuck of a lining. */
const OWN_SETTINGS = [1.5, 10];

function everySentence(design: CoverDesign, said: ReturnType<typeof sentences>): void {
  const { job } = design;
  const print = printer(job.work.units);
  const given = new Set([
    ...[...numbersIn(job), ...OWN_SETTINGS].flatMap((value) => [print.size(value), print.weight(value)]),
    // The weights beside that of the job are told as it is.
    ...customerSheet(design, designReport(design)).weights.columns.map(({ name }) => name),
  ]);
  for (const line of Object.values(said).flat()) {
    counts.sentences++;
    expect(line).not.toMatch(/\d\.\d+ degrees/);
    expect(line).not.toMatch(/(^|\s)-\d/);
    expect(line).not.toMatch(/laces? of [\d.]+ mm/);
    if (job.work.units === 'mm') expect(line).not.toMatch(/\d in(?![a-z])\b(?! (turn|tails|back|the|all|place|hand))/);
    // In an inch job millimetres stand only for what the maker gave in them.
    else
      for (const [text] of line.matchAll(/\d+(\.\d+)? mm/g))
        if (!/\d-$/.test(line.slice(0, line.indexOf(text)))) expect(given, line).toContain(text);
  }
  // A remedy shows the figure that it puts into the job.
  for (const { remedy, change } of designReport(design).checks)
    for (const { path, value } of change)
      if (path.endsWith('_mm') && typeof value === 'number') expect(remedy).toContain(print.size(value));
}

async function checkPage(design: CoverDesign, drawing: Drawing): Promise<void> {
  const [first] = await readPdf(await patternPdf(patternDrawing(design), { paper: { roll_mm: 1500 } }));
  const text = first!.words.map((word) => word.text).join(' ');
  const { size } = printer(design.job.work.units);
  for (const { name, count, width, height } of drawing.pieces)
    expect(text).toContain(`${name}, cut ${count}: ${size(width)} × ${size(height)}`);
  for (const { name, count, sum } of drawing.lengths)
    expect(text).toContain(`${name}, cut ${count}: ${size(sum.total)}`);
  counts.pages++;
}

describe('in both units', () => {
  test('every size has one text, printed parts add up, and what is drawn is what is printed', async () => {
    let n = 0;
    await checkLaw(
      fc.asyncProperty(worked, async (documentIn) => {
        counts.jobs++;
        for (const units of ['mm', 'in'] as const) {
          const design = coverDesign(soundJob(documentIn(units)));
          expect(cutStep(design.job)).toBeGreaterThan(0);
          const drawing = patternDrawing(design);
          const said = sentences(design, drawing);
          everySize(design, drawing, said);
          everySum(drawing, units);
          everySentence(design, said);
          if (n % PAGES_EVERY === 0) await checkPage(design, drawing);
        }
        n++;
      }),
      { cases: JOBS },
    );
  });

  afterAll(() =>
    console.info(
      `printer: ${counts.jobs} jobs in both units, ${counts.sizes} sizes, ${counts.sums} sums, ` +
        `${counts.sentences} sentences, ${counts.pages} check pages`,
    ),
  );
});
