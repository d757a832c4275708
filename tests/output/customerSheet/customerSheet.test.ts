import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import { fitReport } from '../../../src/core/fitReport.ts';
import { createElasticSolvers } from '../../../src/core/fold/elastic/elasticFit.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { RANGE_POINTS } from '../../../src/core/leather/leatherModel.ts';
import { designReport } from '../../../src/core/report/designReport.ts';
import type { ResultOrigin } from '../../../src/core/words/resultOrigin.ts';
import { type CustomerSheet, customerSheet } from '../../../src/output/customerSheet/customerSheet.ts';
import { type CustomerSheetOptions, customerSheetPdf } from '../../../src/output/customerSheet/customerSheetPdf.ts';
import { PLAIN_OFFER } from '../../../src/output/customerSheet/offer.ts';
import { png } from '../../../src/output/png.ts';
import { nth } from '../../nth.ts';
import { designOf, sheetOf } from './coverSheet.ts';
import { sheetTexts } from './sheetTexts.ts';

const factOf = ({ madeOf }: CustomerSheet, wanted: string): string | undefined =>
  madeOf.facts.find(({ name }) => name === wanted)?.value;

/** Everything that a sheet says, in one string. */
const said = (sheet: CustomerSheet): string => sheetTexts(sheet).join(' ');

test('what is tooled is named face by face, and not at all where nothing is', () => {
  const value = (change: Record<string, unknown>) => factOf(sheetOf(change), 'Tooling');
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

describe('how it fits', () => {
  const least = (of: (point: (typeof RANGE_POINTS)[number]) => number): number => Math.min(...RANGE_POINTS.map(of));
  const sentences = (change = {}) => nth(sheetOf(change).passages, 0).sentences;

  test('room is told in round figures where they say enough, with the least of it in the picture, never better than computed', () => {
    const { fits } = designOf();
    const sides = least((point) => fits[point].closedSlack / 2);
    expect(nth(sentences(), 0)).toBe(
      `It slips on with about 1 mm to spare at each side, as much as ${Math.floor(sides / 0.1)} sheets of paper.`,
    );
    expect(Math.abs(sides - 1)).toBeLessThan(0.25);
    const shown = Number(/at least (\d+\.\d) mm$/.exec(said1(sheetOf(), 'room'))?.[1]);
    expect(shown).toBeLessThanOrEqual(sides + 1e-9);
    expect(shown).toBeGreaterThan(sides - 0.1);
  });

  test('room under three quarters of a millimetre is told as it is, not rounded up', () => {
    const { pieces, fits } = designOf();
    const ends = least((point) => Math.min(fits[point].head, fits[point].tail));
    const at = (room: number) =>
      nth(sentences({ pattern: { outsideHeight_mm: pieces.outside.height - 2 * (ends - room) } }), 1);
    expect(at(0.349)).toBe('At the top and the bottom there is 0.3 mm to spare, as much as 3 sheets of paper.');
    expect(at(0.051)).toBe('At the top and the bottom there is 0.0 mm to spare, less than a sheet of paper.');
  });

  test('a cover cut too small says by how much, without a minus sign, and is drawn so', () => {
    const sheet = sheetOf({ pattern: { outsideWidth_mm: 379 } });
    expect(sheet.verdict).toBe('fails');
    expect(sheet.fit).toMatch(
      /^As drawn, this cover does not fit this book yet. What falls short: closing round the book, /,
    );
    expect(nth(nth(sheet.passages, 0).sentences, 0)).toMatch(/^As drawn, it is \d+\.\d mm too short at each side\.$/);
    expect(said1(sheet, 'overrun')).toMatch(/^Too short by \d/);
    expect(sheet.covers.closed).toMatch(/^Stays open \d+ degrees$/);
  });

  test('a cover whose boards do not go in has no picture of room, and promises neither closing nor opening', () => {
    const sheet = sheetOf({ pattern: { outsideWidth_mm: 300 } });
    expect(sheet.covers).toEqual({ closed: 'The boards do not go in', open: 'The boards do not go in' });
    expect(nth(sheet.passages, 0).picture).toBeNull();
    expect(said(sheet)).toContain('The boards do not go into the pockets yet.');
    expect(said(sheet)).toContain('neither closes nor opens');
    expect(said(sheet)).not.toContain('To put it on');
  });

  test('the hold of a pocket and how the second board goes in are those of the checks', () => {
    const { fits, job } = designOf();
    const held = least((point) => fits[point].pocket.held);
    const [, , hold, goesOn] = sentences();
    expect(hold).toMatch(new RegExp(`, ${Math.round((100 * held) / job.book.width_mm)} % of the width\\.$`));
    const angle = Math.max(...RANGE_POINTS.map((point) => fits[point].pocket.loadingAngle));
    expect(goesOn).toContain(`bend the boards back ${Math.ceil((angle * 180) / Math.PI - 1e-9)} degrees past flat`);
    expect(nth(sentences({ book: { ...designOf().job.book, foldBack_deg: 10 } }), 3)).toMatch(
      /more than this book allows\.$/,
    );
  });

  test('figures are in inches where those are chosen', () => {
    for (const words of sentences({ work: { units: 'in' } }).slice(0, 3)) expect(words).toMatch(/\d in /);
  });

  test('the picture is to scale: its room is the gap, its board as thick as the book has it', () => {
    const { fits, job } = designOf();
    const { picture } = nth(sheetOf().passages, 0);
    const outline = (wanted: string) => picture?.shapes.find(({ kind }) => kind === wanted)?.outline ?? [];
    const extent = (wanted: string, axis: 0 | 1) => {
      const values = outline(wanted).map((point) => point[axis]);
      return Math.max(...values) - Math.min(...values);
    };
    expect(extent('room', 0)).toBeCloseTo(
      least((point) => fits[point].closedSlack / 2),
      9,
    );
    expect(extent('room', 1)).toBeCloseTo(job.book.boardThickness_mm, 9);
    expect(extent('board', 1)).toBeCloseTo(job.book.boardThickness_mm, 9);
    for (const { outline: all } of picture?.shapes ?? [])
      for (const [u, v] of all) {
        expect(u).toBeGreaterThanOrEqual(picture!.box.low[0] - 1e-9);
        expect(v).toBeLessThanOrEqual(picture!.box.high[1]);
      }
  });
});

const said1 = (sheet: CustomerSheet, kind: string): string =>
  nth(sheet.passages, 0).picture?.key.find((each) => each.kind === kind)?.words ?? '';

describe('how it opens and rests', () => {
  const sentences = (change = {}) => nth(sheetOf(change).passages, 1).sentences;

  test('closing and opening are those of the fit', () => {
    expect(sentences().slice(0, 2)).toEqual([
      'It closes fully round the book.',
      'The book opens flat in it, so that it can be read on a table.',
    ]);
    expect(nth(sentences({ pattern: { outsideWidth_mm: 379 } }), 0)).toMatch(
      /^It does not close .* stays open \d+ degrees\.$/,
    );
  });

  test('a closure holds it shut', () => {
    expect(sentences({ construction: { strap: {} } }).at(-1)).toBe('The strap holds it shut.');
    expect(sentences({ construction: { strap: { shape: 'flap' } } }).at(-1)).toBe('The flap holds it shut.');
  });

  test('how it rests is told from the elastic strip, and said to be unknown before it is solved', () => {
    const report = designReport(designOf());
    const unsaid = (origin: ResultOrigin) =>
      nth(customerSheet(designOf(), { ...report, origin }).passages, 1).sentences;
    expect(unsaid('being worked out')).toContain('How far it springs open when let go is being worked out.');
    expect(unsaid('not known')).toContain('How far it springs open when let go could not be worked out.');
    expect(sentences()).toContain('How far it springs open when let go is not worked out here.');
    const design = designOf();
    const solved = fitReport(design.job, { solvers: createElasticSolvers() });
    const { sentences: told } = nth(customerSheet(design, solved).passages, 1);
    const rest = told.find((words) => words.startsWith('Let go'));
    // The check tells makers the same ranges.
    const row = solved.checks.find(({ id }) => id === 'springsOpen')?.message ?? '';
    const [, fresh] = /Let go, a new cover (.*?); creased/.exec(row) ?? [];
    const [, pressed] = /pressed for a day it (.*?)\./.exec(row) ?? [];
    expect(rest).toBe(`Let go, the new cover ${fresh}; after a day under weights it ${pressed}.`);
  });
});

describe('why this leather', () => {
  const flat = { leather: { outside: { min_mm: 2, max_mm: 2 } } };
  const row = (sheet: CustomerSheet, wanted: string): readonly string[] =>
    sheet.weights.columns.map(({ values }) => nth(values, sheet.weights.rows.indexOf(wanted)));

  test('an ounce lighter and an ounce heavier stand beside it, thickness and stiffness as by hand', () => {
    // 28 mm and twice 2 mm; an ounce is 25.4 / 64 = 0.396875 mm. (1.603125 / 2)^3 = 0.51501, (2.396875 / 2)^3 = 1.7213.
    const { weights } = sheetOf(flat);
    expect(weights.columns.map(({ isChosen }) => isChosen)).toEqual([false, true, false]);
    expect(row(sheetOf(flat), 'Thickness in the hand')).toEqual(['31.2 mm', '32.0 mm', '32.8 mm']);
    expect(row(sheetOf(flat), 'Stiffness of the cover')).toEqual(['52 %', '100 %', '172 %']);
    expect(weights.sentences).toContain(
      'In 2.4 mm the book is 0.8 mm thicker in the hand, and its cover 72 % stiffer.',
    );
  });

  test('each is designed as a job of its own in that leather', () => {
    const sheet = sheetOf();
    const { min_mm, max_mm } = designOf().job.leather.outside;
    const ounce = 25.4 / 64;
    for (const [i, by] of [-1, 0, 1].entries()) {
      const { fits } = designOf({ leather: { outside: { min_mm: min_mm + by * ounce, max_mm: max_mm + by * ounce } } });
      const room = Math.min(...RANGE_POINTS.map((point) => fits[point].closedSlack / 2));
      expect(row(sheet, 'Room at each side')[i]).toBe(`${(Math.floor(room * 10 + 1e-9) / 10).toFixed(1)} mm`);
    }
  });

  test('a cut that the maker fixed is free in the other leathers, and they are told to fit where the chosen one does not', () => {
    const sheet = sheetOf({ pattern: { outsideWidth_mm: 379 } });
    expect(row(sheet, 'Fits')).toEqual(['yes', 'no', 'yes']);
    expect(sheet.weights.sentences.join()).not.toContain('Each of them would fit');
    expect(sheetOf().weights.sentences[0]).toBe(
      'Each of them would fit, so the choice is one of feel: thinner in the hand, or stiffer.',
    );
  });

  test('weights that were typed take the place of the ounce', () => {
    const { weights } = sheetOf(flat, { ...PLAIN_OFFER, heavier: { min_mm: 3, max_mm: 3.2 } });
    expect(weights.columns.map(({ name }) => name)).toEqual(['1.6 mm', '2 mm', '3-3.2 mm']);
  });

  test('no leather is shown that is sold nowhere', () => {
    expect(sheetOf({ leather: { outside: { min_mm: 0.6, max_mm: 0.7 } } }).weights.columns).toHaveLength(2);
    expect(sheetOf({ leather: { outside: { min_mm: 7, max_mm: 8 } } }).weights.columns).toHaveLength(2);
  });

  test('each has its price where the job has prices, and the difference is that of the amounts', () => {
    const prices = { outside_per_dm2: 10, hour: 300, thread_per_m: 1, lace_per_m: 1, cement_per_dm2: 1 };
    const sheet = sheetOf({ rates: { currency: 'kr', prices } });
    const [lighter, chosen, heavier] = row(sheet, 'Price').map((text) => Number(text.slice(3)));
    expect(chosen).toBe(Number(/^kr ([\d.]+)$/.exec(factOf(sheet, 'Price') ?? '')?.[1]));
    for (const [other, name] of [
      [lighter, '3-4 oz'],
      [heavier, '5-6 oz'],
    ] as const) {
      const by = (other ?? 0) - (chosen ?? 0);
      const words = by === 0 ? 'the same' : `kr ${Math.abs(by).toFixed(2)} ${by > 0 ? 'more' : 'less'}`;
      expect(sheet.weights.sentences).toContain(`${name} costs ${words}.`);
    }
    expect(sheetOf().weights.rows).not.toContain('Price');
  });
});

test('the sheet is dated where the offer is, and a day that no calendar has is left out', () => {
  const date = (day: string | null) => sheetOf({}, { ...PLAIN_OFFER, date: day }).date;
  expect(date('2026-11-27')).toBe('27 November 2026');
  expect(date('2026-13-41')).toBe('');
  expect(date(null)).toBe('');
});

describe('who makes it', () => {
  test('the maker is named where the job has a name', () => {
    expect(sheetOf().lead).toBe('A leather cover for this book');
    expect(sheetOf({ rates: { maker: 'The harbour bench' } }).lead).toBe(
      'A leather cover for this book, by The harbour bench',
    );
  });
});

test('what is near its limit is named edge by edge, and all edges at once only where no single one is', () => {
  expect(sheetOf({ ease: { foreEdge_mm: 0.2, head_mm: 0.4, tail_mm: 0.4 } }).fit).toBe(
    'This cover should do. Near its limit: closing round the book, room at the sides, room at the top, room at the bottom. ' +
      'We will try it in card before cutting leather.',
  );
  const fixed = { pattern: { outsideWidth_mm: 382.5, outsideHeight_mm: 260 }, ease: { share: 0.98 } };
  expect(sheetOf(fixed).fit).toContain('Near its limit: room at all edges at once.');
});

test('the fittings of a cover are named, and none where there are none', () => {
  const fittings = (construction: object) => factOf(sheetOf({ construction }), 'Fittings');
  expect(fittings({})).toBeUndefined();
  expect(fittings({ ribbon: {} })).toBe('one dark red ribbon');
  expect(fittings({ strap: {}, penLoop: { pen_mm: 9 }, ribbon: { count: 2 } })).toBe(
    'a closure strap with a brass stud, a loop for a pen of 9 mm, two dark red ribbons',
  );
});

describe('the price', () => {
  const price = (change: Record<string, unknown> = {}, offer = PLAIN_OFFER) => factOf(sheetOf(change, offer), 'Price');
  const rates = { currency: 'kr', prices: { hour: 300 } };

  test('is absent while the job prices nothing', () => expect(price()).toBeUndefined());

  test('names what it leaves out', () => {
    expect(price({ rates })).toMatch(/^kr \d+\.\d\d, without outside leather, /);
  });

  test('leaves nothing out when all is priced', () => {
    const prices = { outside_per_dm2: 1, thread_per_m: 1, lace_per_m: 1, cement_per_dm2: 1, hour: 1 };
    expect(price({ rates: { prices } })).toMatch(/^\d+\.\d\d$/);
  });

  test('is left out everywhere where the offer shows none', () => {
    const sheet = sheetOf({ rates }, { ...PLAIN_OFFER, prices: null });
    expect(said(sheet)).not.toMatch(/price|kr /i);
  });

  test('is that of the offer where it has one, without any rate in the job', () => {
    const chosen = { total: 812.5, currency: 'kr', decimals: 2, unpriced: ['Lining leather'] };
    const offer = { ...PLAIN_OFFER, prices: { lighter: null, chosen, heavier: { ...chosen, total: 840 } } };
    expect(price({}, offer)).toBe('kr 812.50, without lining leather');
    expect(sheetOf({}, offer).weights.sentences).toContain('5-6 oz costs kr 27.50 more.');
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
  const pages = await Promise.all(Array.from({ length: file.numPages }, (_, i) => file.getPage(i + 1)));
  const texts = await Promise.all(pages.map((page) => page.getTextContent()));
  const words = texts.flatMap(({ items }) =>
    items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item] : [])),
  );
  const operators = (await Promise.all(pages.map((page) => page.getOperatorList()))).flatMap(({ fnArray }) => fnArray);
  return {
    pages: file.numPages,
    size: nth(pages, 0).view.slice(2),
    text: words.map(({ str }) => str).join(' '),
    words,
    pictures: operators.filter((operator) => operator === OPS.paintImageXObject).length,
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

/** One grey pixel. */
const PNG = png({ width: 1, height: 1, channels: 1, bytes: Uint8Array.of(128) });

/** Words of a text without spaces, which lines break at. */
const letters = (text: string): string => text.replace(/\s/g, '');

describe.each(['A4', 'Letter'] as const)('the sheet on %s', (paper) => {
  const pictures = ['Closed', 'Open 110 degrees'].map((caption) => ({ jpeg: JPEG, caption }));
  const offer = { ...PLAIN_OFFER, date: '2026-11-27' };

  test.each(EXAMPLE_JOBS.map(({ id, document }) => [id, document] as const))(
    'says of the %s every sentence and figure of the page, and nothing else',
    async (_id, document) => {
      const parsed = parseJob({ ...document, rates: { maker: 'The harbour bench', prices: { hour: 300 } } });
      if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
      const sheet = sheetOf({ ...document, rates: parsed.job.rates, leather: parsed.job.leather }, offer);
      const pdf = await read(sheet, { paper, pictures, mark: PNG });
      let rest = letters(pdf.text);
      for (let page = 1; page <= pdf.pages; page++) {
        const foot = letters(`${sheet.title}, page ${page} of ${pdf.pages}`);
        expect(rest).toContain(foot);
        rest = rest.replace(foot, '');
      }
      // The longest first, so that no text is taken out of a longer one.
      for (const text of [...sheetTexts(sheet)].sort((a, b) => b.length - a.length)) {
        expect(rest).toContain(letters(text));
        rest = rest.replace(letters(text), '');
      }
      expect(rest).toBe('');
      expect(pdf.pictures).toBe(3);
      expect(pdf.pages).toBeLessThanOrEqual(2);
    },
  );

  test('keeps within its edges, whatever the length of its words', async () => {
    const sheet = sheetOf({
      name: 'x'.repeat(200),
      rates: { maker: 'w'.repeat(80), prices: { hour: 300 } },
      construction: { strap: {}, penLoop: {}, ribbon: { count: 4 } },
    });
    const pdf = await read(sheet, { paper, pictures, mark: PNG });
    for (const { transform, width } of pdf.words) {
      expect(transform[4]).toBeGreaterThan(20);
      expect(transform[4] + width).toBeLessThan(nth(pdf.size, 0) - 20);
      expect(transform[5]).toBeGreaterThan(20);
      expect(transform[5]).toBeLessThan(nth(pdf.size, 1) - 20);
    }
  });

  test('needs no pictures and no mark', async () => {
    const pdf = await read(sheetOf(), { paper });
    expect(pdf.pictures).toBe(0);
  });
});
