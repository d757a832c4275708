import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { RANGE_POINTS } from '../../../src/core/leather/leatherModel.ts';
import { designReport } from '../../../src/core/report/designReport.ts';
import { type CustomerSheet, customerSheet } from '../../../src/output/customerSheet/customerSheet.ts';
import { type CustomerSheetOptions, customerSheetPdf } from '../../../src/output/customerSheet/customerSheetPdf.ts';
import { nth } from '../../nth.ts';

const tideLedger = EXAMPLE_JOBS[0].document;

function designOf(change: Record<string, unknown> = {}) {
  const parsed = parseJob({ ...tideLedger, ...change });
  if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
  return coverDesign(parsed.job);
}

function sheetOf(change: Record<string, unknown> = {}): CustomerSheet {
  const design = designOf(change);
  return customerSheet(design, designReport(design));
}

test('what is tooled is named face by face, and not at all where nothing is', () => {
  const value = (change: Record<string, unknown>) =>
    sheetOf(change).facts.find(({ name }) => name === 'Tooling')?.value;
  expect(value({})).toBeUndefined();
  const designs = [
    { kind: 'title', area: 'front', text: 'Tides of 1812' },
    { kind: 'border', area: 'front', lines: 2 },
    { kind: 'title', area: 'spine', text: 'II' },
    { kind: 'border', area: 'strap' },
  ];
  // This cover has no strap.
  expect(value({ tooling: { designs } })).toBe('spine “II”; front “Tides of 1812”, border of two lines');
});

describe('the three numbers', () => {
  test('are the least over the range of the leather, never better than computed', () => {
    const { fits } = designOf();
    const [foreEdge, ends, held] = sheetOf().numbers.map(({ value }) => Number.parseFloat(value));
    const least = (of: (fit: (typeof fits)['thin']) => number): number =>
      Math.min(...RANGE_POINTS.map((p) => of(fits[p])));
    for (const [shown, computed] of [
      [foreEdge!, least((fit) => Math.min(fit.foreEdge.front, fit.foreEdge.back))],
      [ends!, least((fit) => Math.min(fit.head, fit.tail))],
      [held!, least((fit) => fit.pocket.held)],
    ] as const) {
      expect(shown).toBeLessThanOrEqual(computed + 1e-9);
      expect(shown).toBeGreaterThan(computed - 0.1);
    }
  });

  test('give the overrun of a cover cut too small in words, without a minus sign', () => {
    const sheet = sheetOf({ pattern: { outsideWidth_mm: 376 } });
    expect(sheet.verdict).toBe('fails');
    expect(sheet.fit).toMatch(
      /^As drawn, this cover does not fit this book yet. What falls short: closing round the book, /,
    );
    expect(sheet.numbers[0].name).toBe('Too short at the fore-edge by');
    expect(sheet.numbers[0].value).toMatch(/^\d/);
    expect(sheetOf().numbers[0].name).toBe('Room at the fore-edge, at least');
  });

  test('are in inches where those are chosen', () => {
    for (const { value } of sheetOf({ work: { units: 'in' } }).numbers) expect(value).toMatch(/ in$/);
  });
});

describe('what a customer can picture', () => {
  test('each length has a meaning: room in sheets of paper of 0.1 mm, the hold as a share of the board', () => {
    const { fits, job } = designOf();
    const [foreEdge, ends, held] = sheetOf().numbers;
    const least = Math.min(...RANGE_POINTS.flatMap((p) => [fits[p].foreEdge.front, fits[p].foreEdge.back]));
    const sheets = Number(/about (\d+) sheets of paper\.$/.exec(foreEdge.means)?.[1]);
    expect(sheets).toBe(Math.floor(least / 0.1));
    expect(ends.means).toMatch(/: about \d+ sheets of paper\.$/);
    const share = Math.min(...RANGE_POINTS.map((p) => fits[p].pocket.held)) / job.book.width_mm;
    expect(held.means).toBe(`${Math.round(100 * share)} % of the width of the board.`);
  });

  test('a gap of less than a sheet says so', () => {
    const { pieces, fits } = designOf();
    const least = Math.min(...RANGE_POINTS.map((p) => Math.min(fits[p].head, fits[p].tail)));
    const [, ends] = sheetOf({ pattern: { outsideHeight_mm: pieces.outside.height - 2 * (least - 0.05) } }).numbers;
    expect(ends.means).toBe('For the book to lie in it without rubbing: less than a sheet of paper.');
  });

  test('what is too short promises nothing', () => {
    const [foreEdge] = sheetOf({ pattern: { outsideWidth_mm: 376 } }).numbers;
    expect(foreEdge.means).toMatch(/^Short by about \d+ sheets of paper\.$/);
  });

  test('the thickness in the hand, and what an ounce would change', () => {
    // By hand: 28 mm and twice 2 mm; an ounce is 25.4 / 64 = 0.397 mm. (2.397 / 2)^3 = 1.721, (1.603125 / 2)^3 = 0.51501.
    const { facts } = sheetOf({ leather: { outside: { min_mm: 2, max_mm: 2 } } });
    const value = (wanted: string) => facts.find(({ name }) => name === wanted)?.value;
    expect(value('In the hand')).toBe('32.0 mm thick at the spine, 4.0 mm of it leather');
    expect(value('Other leather')).toBe(
      'An ounce lighter is 0.8 mm thinner in all and 48 % less stiff. ' +
        'An ounce heavier is 0.8 mm thicker in all and 72 % stiffer.',
    );
    const lined = sheetOf({ leather: { outside: { min_mm: 2, max_mm: 2 }, lining: { min_mm: 1, max_mm: 1 } } });
    expect(lined.facts.find(({ name }) => name === 'In the hand')?.value).toMatch(/, 6.0 mm of it leather$/);
    // No leather is sold that thin.
    const thin = sheetOf({ leather: { outside: { min_mm: 0.7, max_mm: 0.7 } } });
    expect(thin.facts.find(({ name }) => name === 'Other leather')?.value).toMatch(/^An ounce heavier/);
  });

  test('the maker is named where the job has a name', () => {
    expect(sheetOf().lead).toBe('A leather cover for this book');
    expect(sheetOf({ rates: { maker: 'The harbour bench' } }).lead).toBe(
      'A leather cover for this book, by The harbour bench',
    );
  });
});

test('what is near its limit is named edge by edge, and all edges at once only where no single one is', () => {
  expect(sheetOf({ ease: { foreEdge_mm: 0.2, head_mm: 0.4, tail_mm: 0.4 } }).fit).toBe(
    'This cover should do. Near its limit: closing round the book, room at the fore-edges, room at the head, room at the tail. ' +
      'We will try it in card before cutting leather.',
  );
  const fixed = { pattern: { outsideWidth_mm: 382.5, outsideHeight_mm: 260 }, ease: { share: 0.98 } };
  expect(sheetOf(fixed).fit).toContain('Near its limit: room at all edges at once.');
});

test('the fittings of a cover are named, and none where there are none', () => {
  const fittings = (construction: object) =>
    sheetOf({ construction }).facts.find(({ name }) => name === 'Fittings')?.value;
  expect(fittings({})).toBeUndefined();
  expect(fittings({ ribbon: {} })).toBe('one dark red ribbon');
  expect(fittings({ strap: {}, penLoop: { pen_mm: 9 }, ribbon: { count: 2 } })).toBe(
    'a closure strap with a brass stud, a loop for a pen of 9 mm, two dark red ribbons',
  );
});

describe('the price', () => {
  test('is absent while the job prices nothing', () => expect(sheetOf().price).toBeNull());

  test('names what it leaves out', () => {
    const { price } = sheetOf({ rates: { currency: 'kr', prices: { hour: 300 } } });
    expect(price?.amount).toMatch(/^kr \d+\.\d\d$/);
    expect(price?.without).toMatch(/^without outside leather, /);
  });

  test('leaves nothing out when all is priced', () => {
    const prices = { outside_per_dm2: 1, thread_per_m: 1, lace_per_m: 1, cement_per_dm2: 1, hour: 1 };
    expect(sheetOf({ rates: { prices } }).price?.without).toBe('');
  });
});

/** The smallest JPEG there is: one grey pixel. */
const JPEG = Uint8Array.from(
  atob(
    '/9j/4AAQSkZJRgABAQEASABIAAD/2wBDAAMCAgICAgMCAgIDAwMDBAYEBAQEBAgGBgUGCQgKCgkICQkKDA8MCgsOCwkJDRENDg8QEBEQCgwSExIQEw8QEBD/yQALCAABAAEBAREA/8wABgAQEAX/2gAIAQEAAD8A0s8g/9k=',
  ),
  (letter) => letter.charCodeAt(0),
);

async function read(sheet: CustomerSheet, options: CustomerSheetOptions = {}) {
  const file = await getDocument({ data: await customerSheetPdf(sheet, options), verbosity: 0 }).promise;
  const page = await file.getPage(1);
  const { items } = await page.getTextContent();
  const { fnArray } = await page.getOperatorList();
  const words = items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item] : []));
  return {
    pages: file.numPages,
    size: page.view.slice(2),
    text: words.map(({ str }) => str).join(' '),
    words,
    pictures: fnArray.filter((operator) => operator === OPS.paintImageXObject).length,
  };
}

test('every check has words for a customer', () => {
  const { checks } = designReport(designOf());
  expect(checks.length).toBeGreaterThan(5);
  for (const { id, title } of checks) {
    const only = { ...designReport(designOf()), verdict: 'fails' as const };
    const failing = { ...only, checks: [{ ...nth(checks, 0), id, title, verdict: 'fails' as const }] };
    const { fit } = customerSheet(designOf(), failing);
    expect(fit).not.toContain(`short: ${title.toLowerCase()}.`);
  }
});

test('letters beyond the plain alphabet are printed as they are', async () => {
  const { text } = await read(sheetOf({ name: 'Nan’s “Zażółć”, Œuvre – 5 €, Ω' }));
  expect(text).toContain('Nan’s “Zażółć”');
  expect(text).toContain('Œuvre – 5 €, Ω');
});

describe.each(['A4', 'Letter'] as const)('the sheet on %s', (paper) => {
  const pictures = [
    { jpeg: JPEG, caption: 'closed' },
    { jpeg: JPEG, caption: 'open' },
  ];

  test('is one page with both pictures and all the words of the screen, within its edges', async () => {
    const sheet = sheetOf({ name: 'x'.repeat(200), rates: { prices: { hour: 300 } } });
    const pdf = await read(sheet, { paper, pictures });
    expect(pdf.pages).toBe(1);
    expect(pdf.pictures).toBe(2);
    for (const { name, value } of [...sheet.numbers, ...sheet.facts]) {
      expect(pdf.text).toContain(name);
      expect(pdf.text).toContain(value);
    }
    expect(pdf.text).toContain('Price');
    for (const { transform, width } of pdf.words) {
      expect(transform[4]).toBeGreaterThan(20);
      expect(transform[4] + width).toBeLessThan(nth(pdf.size, 0) - 20);
      expect(transform[5]).toBeGreaterThan(20);
      expect(transform[5]).toBeLessThan(nth(pdf.size, 1) - 20);
    }
  });

  test('leaves the price out on request, and needs no pictures', async () => {
    const pdf = await read(sheetOf({ rates: { prices: { hour: 300 } } }), { paper, withPrice: false });
    expect(pdf.text).not.toContain('Price');
    expect(pdf.pictures).toBe(0);
  });
});
