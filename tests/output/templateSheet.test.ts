import { beforeAll, describe, expect, test } from 'vitest';
import { LAYERS } from '../../src/core/pattern/drawing.ts';
import { holeStrips } from '../../src/core/pattern/holeStrips.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { LAYER_NAMES } from '../../src/output/layerNames.ts';
import { pagePlan } from '../../src/output/pdf/pagePlan.ts';
import type { Paper } from '../../src/output/pdf/paper.ts';
import { patternPdf } from '../../src/output/pdf/patternPdf.ts';
import { joints } from '../../src/output/pdf/tiling.ts';
import { type TitleBlock, titleBlock } from '../../src/output/titleBlock.ts';
import { coverOf } from '../core/pattern/coverOf.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { flatTags, type ReadDocument, readDocument } from './documentReading.ts';
import { boundsOf } from './outlineDistance.ts';
import { lyingOn, outlineOn, pagesOf } from './patternReading.ts';
import { type ReadPage, readPdf } from './pdfReading.ts';
import { wordsOnLines } from './wordsOnLines.ts';

const design = coverOf({
  leather: { outside: { foldThickness_mm: 1 }, lining: { min_mm: 0.7, max_mm: 0.8 } },
  seam: { cornerRadius_mm: 12 },
  construction: { strap: {}, penLoop: {}, ribbon: {} },
});
const drawing = patternDrawing(design);
const block = titleBlock({
  sheet: 'Template',
  job: design.job,
  design,
  document: { name: design.job.name },
  date: '2026-11-27',
  address: 'https://leather.example/covers/',
});
const PAPERS: readonly Paper[] = ['A4', 'Letter', { roll_mm: 200 }];

const textOf = ({ words }: ReadPage): string =>
  words
    .map(({ text }) => text)
    .join(' ')
    .replace(/ +/g, ' ');

describe.each(PAPERS.map((paper) => [JSON.stringify(paper), paper] as const))('the template on %s', (_, paper) => {
  let pages: ReadPage[];
  let read: ReadDocument;
  beforeAll(async () => {
    const bytes = await patternPdf(drawing, { paper, block });
    [pages, read] = [await readPdf(bytes), await readDocument(bytes)];
  });

  test('says at the head of its first page of which job in which version it is', () => {
    const said = textOf(nth(pages, 0));
    for (const { name, value } of block.facts) expect(said).toContain(`${name} ${value.slice(0, 40)}`);
    expect(said).toContain(`${block.version}, drawn 27 Nov 2026`);
    expect(flatTags(nth(read.pages, 0).tags).some(({ alt }) => alt?.startsWith('Square code of the address'))).toBe(
      true,
    );
  });

  test('names job, piece, version, day and page at the foot of every page, as an artifact', () => {
    pages.forEach((page, i) => {
      const { artifacts, unmarked } = nth(read.pages, i);
      expect(unmarked).toBe('');
      expect(artifacts).toContain(
        `Template, print at actual size, 100 %, version ${block.version}, 27 Nov 2026, page ${i + 1} of ${pages.length}`,
      );
      expect(artifacts).toContain(`${design.job.name}: `);
      for (const { name, count } of drawing.pieces) {
        const isHere = pagesOf([page], name).length > 0;
        expect(artifacts.includes(`${name}, cut ${count}`)).toBe(isHere);
      }
    });
    for (const { name } of drawing.pieces) expect(pagesOf(pages, name).length).toBeGreaterThan(0);
  });

  test('has a figure for each part of a page, which says what it shows', () => {
    for (const { name, count } of drawing.pieces) {
      const on = pages.flatMap((page, i) => (pagesOf([page], name).length > 0 ? [nth(read.pages, i)] : []));
      for (const { tags } of on) {
        const figures = flatTags(tags).filter(({ role }) => role === 'Figure');
        expect(
          figures.some(({ alt }) => alt?.startsWith(`${name}, cut ${count}`) && alt.includes('grain side up')),
        ).toBe(true);
      }
    }
  });

  test('explains every kind of line that it has, and no other', () => {
    const said = nth(pages, 0).words.map(({ text }) => text);
    const drawn = LAYERS.filter(
      (layer) => layer !== 'text' && drawing.pieces.some(({ layers }) => layers[layer].length > 0),
    );
    expect(drawn.length).toBeGreaterThan(7);
    // Ends of slits and leaders are marks that come with the paper.
    for (const layer of LAYERS.filter((each) => each !== 'text'))
      if (layer !== 'mark') expect([layer, said.includes(LAYER_NAMES[layer])]).toEqual([layer, drawn.includes(layer)]);
    expect(read.layers.filter((name) => name !== 'TEXT')).toEqual(
      expect.arrayContaining(drawn.map((layer) => layer.toUpperCase())),
    );
  });

  test('has a corner in which a bank card ends between two lines both ways, at true size only', () => {
    const lines = nth(pages, 0).paths.flatMap(({ chains, lineWidth, isDashed }) =>
      chains.flatMap((chain) => (chain.length === 2 && !isDashed ? [{ chain, lineWidth, ...boundsOf(chain) }] : [])),
    );
    // ISO/IEC 7810, size ID-1: 85.60 by 53.98 mm; 85.47 to 85.72 and 53.92 to 54.03 mm with its tolerance (from memory).
    const sides = [
      { along: 0, cards: [85.47, 85.6, 85.72] },
      { along: 1, cards: [53.92, 53.98, 54.03] },
    ] as const;
    const thick = lines.filter(({ lineWidth }) => Math.abs(lineWidth - 0.22) < 1e-3);
    const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;
    const [level] = thick.filter(
      ({ height, low }) =>
        height < 1e-6 &&
        thick.some((each) => each.width < 1e-6 && near(each.low[0], low[0]) && near(each.low[1], low[1])),
    );
    const corner = defined(level).low;
    for (const { along, cards } of sides) {
      const ends = lines
        .filter(
          ({ low, width, height, lineWidth }) =>
            Math.abs(lineWidth - 0.1) < 1e-3 &&
            (along === 0 ? width : height) < 1e-6 &&
            near(low[along === 0 ? 1 : 0], corner[along === 0 ? 1 : 0]) &&
            low[along] > corner[along] + 40 &&
            low[along] < corner[along] + 90,
        )
        .sort((a, b) => a.low[along] - b.low[along]);
      expect(ends).toHaveLength(2);
      const [first, second] = ends.map(({ low }) => low[along] - corner[along]) as [number, number];
      // Three dots of a print at 300 dpi stay white between the lines.
      expect(second - first - 0.1).toBeGreaterThan((3 * 25.4) / 300);
      const isTaken = (card: number, print: number): boolean => print * first < card && card < print * second;
      for (const card of cards) {
        expect([card, isTaken(card, 1)]).toEqual([card, true]);
        for (const print of [0.94, 0.95, 0.96, 0.97, 0.973, 0.99, 0.995, 1.005, 1.01, 1.03, 1.06])
          expect([card, print, isTaken(card, print)]).toEqual([card, print, false]);
      }
    }
  });
});

test('a print that is corrected for its printer has the corner for a card corrected alike', async () => {
  const [x, y] = [149.1, 150.6];
  const pages = await readPdf(await patternPdf(drawing, { block, bars: { x_mm: x, y_mm: y } }));
  const verticals = nth(pages, 0).paths.flatMap(({ chains, lineWidth }) =>
    Math.abs(lineWidth - 0.22) < 1e-3 ? chains.map((chain) => boundsOf(chain)) : [],
  );
  const width = Math.max(...verticals.map((each) => each.width));
  const height = Math.max(...verticals.map((each) => each.height));
  expect((width * x) / 150).toBeCloseTo(85.35, 2);
  expect((height * y) / 150).toBeCloseTo(53.79, 2);
});

test('the longest title block leaves the words of the first page readable, clear of one another and of every line', async () => {
  const long: TitleBlock = { ...block, facts: [...block.facts, { name: 'Pieces', value: 'word '.repeat(60) }] };
  for (const paper of ['A4', 'Letter'] as const) {
    const page = nth(await readPdf(await patternPdf(drawing, { paper, block: long })), 0);
    expect(wordsOnLines(page, () => true)).toEqual([]);
    const level = page.words.filter(({ rotation, text }) => rotation === 0 && text.trim() !== '');
    expect(
      Math.min(...level.filter(({ text }) => text.startsWith('Outside, cut')).map(({ height }) => height)),
    ).toBeGreaterThan(1.8);
    for (const [i, a] of level.entries())
      for (const b of level.slice(i + 1))
        if (Math.abs(a.at[1] - b.at[1]) < 0.85 * Math.min(a.height, b.height))
          expect([a.text, b.text, a.at[0] + a.width <= b.at[0] + 0.01 || b.at[0] + b.width <= a.at[0] + 0.01]).toEqual([
            a.text,
            b.text,
            true,
          ]);
  }
  const [outside] = drawing.pieces;
  expect(
    lyingOn(nth(pagesOf(await readPdf(await patternPdf(drawing, { block: long })), 'Outside'), 0), outside!).length,
  ).toBeGreaterThan(3);
});

test('strips of holes lie on the pages in true size, and joints of long ones go between holes', async () => {
  const strips = holeStrips(design);
  const withStrips = { ...drawing, pieces: [...drawing.pieces, ...strips] };
  for (const paper of ['A4', { roll_mm: 610 }] as const) {
    const { tiled } = pagePlan(withStrips, paper, { x: 1, y: 1 });
    const long = tiled.filter(({ piece }) => piece.name.startsWith('Hole strip'));
    expect(long.length > 0).toBe(paper === 'A4');
    for (const { piece, tiling } of long)
      for (const joint of joints(tiling).x)
        for (const hole of piece.layers.hole) {
          const [from, to] = hole.kind === 'line' ? [hole.from[0], hole.to[0]] : [Number.NaN, Number.NaN];
          expect(Math.min(from, to) > joint || Math.max(from, to) < joint).toBe(true);
        }
    const pages = await readPdf(await patternPdf(withStrips, { paper, block }));
    for (const strip of strips) {
      const on = pages.filter(({ words }) => words.some(({ at, text }) => at[1] < 18 && text.includes(strip.name)));
      expect(on.length).toBeGreaterThan(0);
      const { width, height } = boundsOf(outlineOn(nth(on, 0), strip));
      expect([width, height]).toEqual([expect.closeTo(strip.width, 2), expect.closeTo(strip.height, 2)]);
    }
    // A tile is clipped above the foot, which the reader does not see.
    for (const page of pages)
      expect(wordsOnLines(page, ({ lineWidth }, { at }) => at[1] > 18 && Math.abs(lineWidth - 0.3) < 1e-3)).toEqual([]);
  }
});
