import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { flattened } from '../../src/core/math/contour.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { fitToPage, type Paper } from '../../src/output/pdf/paper.ts';
import { patternPdf } from '../../src/output/pdf/patternPdf.ts';
import { BAR_LENGTH } from '../../src/output/pdf/printerScale.ts';
import { visualRuns } from '../../src/output/pdf/visualRuns.ts';
import { coverOf } from '../core/pattern/coverOf.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { apart, boundsOf, moved } from './outlineDistance.ts';
import { lyingOn, outlineOn, pagesOf } from './patternReading.ts';
import { type ReadPage, readPdf } from './pdfReading.ts';
import { wordsOnLines } from './wordsOnLines.ts';

/** A cover with every kind of piece and edge. */
const design = coverOf({
  leather: { outside: { foldThickness_mm: 1 }, lining: { min_mm: 0.7, max_mm: 0.8 } },
  seam: { cornerRadius_mm: 12 },
  construction: { mouth: 'curved', strap: {}, penLoop: {}, ribbon: {} },
});
const drawing = patternDrawing(design);

const PAPERS: readonly Paper[] = ['A4', 'Letter', 'A3', 'Tabloid', { roll_mm: 610 }, { roll_mm: 210 }];
const nameOf = (paper: Paper): string => (typeof paper === 'string' ? paper : `roll of ${paper.roll_mm} mm`);

/** Middles of the joining diamonds by the number printed in each. */
function diamondsOn(page: ReadPage): Map<string, Vec2> {
  const lines = page.paths.filter(({ lineWidth, isDashed }) => !isDashed && Math.abs(lineWidth - 0.2) < 1e-3);
  const found = new Map<string, Vec2>();
  for (const { text, at } of page.words.filter(({ text }) => /^\d+'?$/.test(text))) {
    const near = lines
      .flatMap(({ chains }) => chains)
      .filter((chain) => {
        const { low, high, width, height } = boundsOf(chain);
        const isSlant = Math.abs(width - 4) < 0.2 && Math.abs(height - 4) < 0.2;
        return isSlant && Math.hypot((low[0] + high[0]) / 2 - at[0], (low[1] + high[1]) / 2 - at[1]) < 8;
      });
    expect(near.length).toBe(4);
    const { low, high } = boundsOf(near.flat());
    found.set(text, [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2]);
  }
  return found;
}

describe.each(PAPERS.map((paper) => [nameOf(paper), paper] as const))('the template on %s, read back', (_, paper) => {
  let reading: Promise<ReadPage[]>;
  beforeAll(() => {
    reading = patternPdf(patternDrawing(design), { paper }).then(readPdf);
    return reading;
  }, 180_000);

  test('has every outline in true size on each of its pages, within 0.01 mm', async () => {
    const pages = await reading;
    for (const piece of drawing.pieces) {
      const tiles = pagesOf(pages, piece.name);
      expect(tiles.length).toBeGreaterThan(0);
      const truth = flattened(piece.outline, 1e-3);
      for (const page of tiles) {
        const outline = outlineOn(page, piece);
        const { low, width, height } = boundsOf(outline);
        expect(width).toBeCloseTo(piece.width, 2);
        expect(height).toBeCloseTo(piece.height, 2);
        expect(apart(moved(outline, [-low[0], -low[1]]), truth)).toBeLessThan(0.01);
      }
    }
  });

  test('joins without a step: laid together by any diamond, neighbouring outlines fall on each other within 0.01 mm', async () => {
    const pages = await reading;
    for (const piece of drawing.pieces) {
      const tiles = pagesOf(pages, piece.name).map((page) => ({
        origin: boundsOf(lyingOn(page, piece)).low,
        diamonds: diamondsOn(page),
      }));
      // A page of a smaller piece may carry the diamonds of another.
      if (tiles.length === 1) continue;
      const places = new Map<string, Vec2[]>();
      for (const { origin, diamonds } of tiles)
        for (const [name, at] of diamonds)
          places.set(name, [...(places.get(name) ?? []), [at[0] - origin[0], at[1] - origin[1]]]);
      expect(places.size).toBeGreaterThanOrEqual(2 * (tiles.length - 1));
      for (const [name, found] of places) {
        expect([name, found.length]).toEqual([name, 2]);
        expect(Math.hypot(nth(found, 0)[0] - nth(found, 1)[0], nth(found, 0)[1] - nth(found, 1)[1])).toBeLessThan(0.01);
      }
    }
  });

  test('leaves no part of a piece off its pages, and draws inside them', async () => {
    const pages = await reading;
    for (const piece of drawing.pieces) {
      let isTurned = false;
      const windows = pagesOf(pages, piece.name).map((page) => {
        const lying = boundsOf(lyingOn(page, piece));
        const { low } = lying;
        isTurned ||= Math.abs(lying.width - piece.width) > 0.1;
        const clip = nth(page.clips, 0);
        expect(clip.low[0]).toBeGreaterThan(9);
        expect(clip.low[1]).toBeGreaterThan(9);
        expect(clip.high[0]).toBeLessThan(page.width - 9);
        expect(clip.high[1]).toBeLessThan(page.height - 9);
        return {
          low: [clip.low[0] - low[0], clip.low[1] - low[1]] as const,
          high: [clip.high[0] - low[0], clip.high[1] - low[1]] as const,
        };
      });
      for (let i = 0; i <= 40; i++) {
        for (let j = 0; j <= 40; j++) {
          const [wide, high] = isTurned ? [piece.height, piece.width] : [piece.width, piece.height];
          const at = [(wide * i) / 40, (high * j) / 40] as const;
          const isSeen = windows.some(
            ({ low, high }) => at[0] > low[0] && at[0] < high[0] && at[1] > low[1] && at[1] < high[1],
          );
          expect([piece.id, at, isSeen]).toEqual([piece.id, at, true]);
        }
      }
    }
  });

  test('sets no word of its first page on a line', async () => {
    const [first] = await reading;
    expect(wordsOnLines(first!, () => true)).toEqual([]);
  });

  test('numbers its pages and names their tiles in text that can be selected', async () => {
    const pages = await reading;
    pages.forEach((page, i) => {
      const text = page.words.map((word) => word.text).join('\n');
      expect(text.toLowerCase()).toContain(`page ${i + 1} of ${pages.length}`);
    });
  });

  test('has two check bars of the length printed beside them, and nothing along either that measures longer', async () => {
    const [first] = await reading;
    const chains = first!.paths.flatMap((path) => path.chains);
    const bars = chains
      .map((chain) => boundsOf(chain))
      .filter(({ width, height }) => Math.max(width, height) > 100 && Math.min(width, height) < 1e-6)
      .filter(({ width, height }) => Math.abs(Math.max(width, height) - BAR_LENGTH) < 0.01);
    expect(bars.map(({ width, height }) => (width > height ? 'x' : 'y')).sort()).toEqual(['x', 'y']);
    for (const { low, high, width, height } of bars) {
      const axis = width > height ? 0 : 1;
      // Lines so near to the bar that a rule laid along it would meet them.
      const beside = chains
        .flat()
        .filter((point) => Math.abs(nth(point, 1 - axis) - nth(low, 1 - axis)) < 5)
        .filter((point) => point[axis] > low[axis] - 8 && point[axis] < high[axis] + 8)
        .map((point) => point[axis]);
      expect(Math.min(...beside)).toBeCloseTo(low[axis], 6);
      expect(Math.max(...beside)).toBeCloseTo(high[axis], 6);
    }
    const text = first!.words.map((word) => word.text).join('\n');
    expect(text).toContain(`x check bar: ${BAR_LENGTH} mm between the tips of its arrows`);
    expect(text).toContain(`y check bar: ${BAR_LENGTH} mm between the tips of its arrows`);
  });
});

describe('the template', () => {
  test('is the same to the byte when made again', async () => {
    const [a, b] = [await patternPdf(patternDrawing(design)), await patternPdf(patternDrawing(design))];
    expect(Buffer.compare(Buffer.from(a), Buffer.from(b))).toBe(0);
  });

  test('says on its first page what "fit to page" would do: 94.1 % or 97.3 %', async () => {
    const said = async (paper: Paper): Promise<string> =>
      nth(await readPdf(await patternPdf(patternDrawing(design), { paper })), 0)
        .words.map(({ text }) => text)
        .join(' ');
    expect(await said('A4')).toContain('onto Letter paper gives 94.1 %');
    expect(await said('Letter')).toContain('onto A4 paper gives 97.3 %');
    expect(defined(fitToPage('A4')).share).toBeCloseTo(279.4 / 297, 12);
    expect(defined(fitToPage('Letter')).share).toBeCloseTo(210 / 215.9, 12);
    expect(fitToPage({ roll_mm: 610 })).toBeNull();
  });

  test('gives diagonals of the pieces on its first page', async () => {
    const [first] = await readPdf(await patternPdf(patternDrawing(design)));
    const text = first!.words.map((word) => word.text).join(' ');
    const { width, height } = design.pieces.outside;
    expect(text).toContain(`diagonal ${Math.hypot(width, height).toFixed(1)} mm`);
  });

  test('marks where the edges of a rounded corner would meet, for its diagonal, and prints sizes as drawn', async () => {
    const inches = coverDesign({ ...design.job, work: { units: 'in', cutStep_mm: null } });
    const pages = await readPdf(await patternPdf(patternDrawing(inches), { paper: { roll_mm: 610 } }));
    const outside = nth(patternDrawing(inches).pieces, 0);
    const page = nth(pagesOf(pages, outside.name), 0);
    const { low, high } = boundsOf(lyingOn(page, outside));
    const arms = page.paths.filter(({ lineWidth, isDashed }) => !isDashed && Math.abs(lineWidth - 0.1) < 1e-3);
    for (const x of [low[0], high[0]])
      for (const y of [low[1], high[1]]) {
        const from = arms.flatMap(({ chains }) => chains).filter(([at]) => Math.hypot(at![0] - x, at![1] - y) < 1e-3);
        expect(from.length).toBe(2);
      }
    const text = nth(pages, 0)
      .words.map((word) => word.text)
      .join(' ');
    expect(text).toContain('the angle marked where two edges would meet');
    const said = defined(/Outside, cut 1: (\d+) (\d+)\/(\d+) in ×/.exec(text))
      .slice(1)
      .map(Number) as [number, number, number];
    expect((said[0] + said[1] / said[2]) * 25.4).toBeCloseTo(outside.width, 6);
    const square = await readPdf(await patternPdf(patternDrawing(coverOf())));
    expect(
      nth(square, 0)
        .words.map((word) => word.text)
        .join(' '),
    ).not.toContain('angle marked');
  });

  test('corrects for a printer whose bars measured off: what it shrinks is drawn larger by as much', async () => {
    const bars = { x_mm: 148.5, y_mm: 151.2 };
    const pages = await readPdf(await patternPdf(patternDrawing(design), { bars }));
    const outside = nth(drawing.pieces, 0);
    for (const page of pagesOf(pages, outside.name)) {
      const { width, height } = boundsOf(outlineOn(page, outside));
      expect((width * bars.x_mm) / 150).toBeCloseTo(outside.width, 2);
      expect((height * bars.y_mm) / 150).toBeCloseTo(outside.height, 2);
    }
  });

  test('names "fit to page" where both bars show it, and refuses bars with a larger error than printers have', async () => {
    const pages = await readPdf(await patternPdf(patternDrawing(design), { bars: { x_mm: 141.1, y_mm: 141.2 } }));
    expect(
      nth(pages, 0)
        .words.map(({ text }) => text)
        .join(' '),
    ).toContain('fitted to Letter paper');
    await expect(patternPdf(patternDrawing(design), { bars: { x_mm: 120, y_mm: 150 } })).rejects.toThrow(
      /135 to 165 mm can be corrected/,
    );
    await expect(patternPdf(patternDrawing(design), { bars: { x_mm: Number.NaN, y_mm: 150 } })).rejects.toThrow(
      RangeError,
    );
  });

  test.each([false, true])('lies as the drawing does, so that front is front, mirrored %s', async (mirrored) => {
    const outside = nth(drawing.pieces, 0);
    const pages = await readPdf(await patternPdf(patternDrawing(design), { paper: { roll_mm: 610 }, mirrored }));
    const page = nth(pagesOf(pages, outside.name), 0);
    const { low } = boundsOf(lyingOn(page, outside));
    const drawn = page.paths.flatMap(({ chains }) => chains.flat());
    // Marks of seam, strap and pen loop differ at all corners.
    for (const mark of outside.layers.mark) {
      if (mark.kind !== 'line') continue;
      for (const [x, y] of [mark.from, mark.to]) {
        const [u, v] = [low[0] + (mirrored ? outside.width - x : x), low[1] + y];
        expect(Math.min(...drawn.map((point) => Math.hypot(point[0] - u, point[1] - v)))).toBeLessThan(0.01);
      }
    }
    const said = nth(pages, 0)
      .words.map(({ text }) => text)
      .join(' ');
    expect(said).toContain(mirrored ? 'Flesh side up, mirrored' : 'Grain side up, as on the screen');
  });

  test('mirrored has the same outline turned over', async () => {
    const outside = nth(drawing.pieces, 0);
    const page = nth(
      pagesOf(
        await readPdf(await patternPdf(patternDrawing(design), { paper: { roll_mm: 610 }, mirrored: true })),
        outside.name,
      ),
      0,
    );
    const { low } = boundsOf(outlineOn(page, outside));
    const outline = moved(outlineOn(page, outside), [-low[0], -low[1]]);
    const truth = flattened(outside.outline, 1e-3).map(([x, y]): Vec2 => [outside.width - x, y]);
    expect(apart(outline, truth)).toBeLessThan(0.01);
  });

  test('refuses an unknown paper', async () => {
    await expect(patternPdf(patternDrawing(design), { paper: 'A9' as Paper })).rejects.toThrow(/allowed: A4, Letter/);
    await expect(patternPdf(patternDrawing(design), { paper: { roll_mm: 20 } })).rejects.toThrow(
      /200 to 1700 mm is allowed/,
    );
  });

  test('of the largest cover there is comes out whole, or is refused where it would take over 400 pages', async () => {
    const huge = coverOf({
      book: { width_mm: 1000, height_mm: 1500, thickness_mm: 300 },
      pattern: { outsideWidth_mm: 4000, outsideHeight_mm: 2000 },
    });
    const pages = await readPdf(await patternPdf(patternDrawing(huge), { paper: { roll_mm: 914 } }));
    expect(pagesOf(pages, nth(patternDrawing(huge).pieces, 0).name).length).toBeGreaterThan(1);
    expect((await readPdf(await patternPdf(patternDrawing(huge)))).length).toBeLessThanOrEqual(400);
    const four = {
      ...patternDrawing(huge),
      pieces: Array.from({ length: 4 }, () => nth(patternDrawing(huge).pieces, 0)),
    };
    await expect(patternPdf(four)).rejects.toThrow(/allowed: 400. Choose a larger paper/);
  });

  test('has words without room on a small piece beside it on its page, with a leader', async () => {
    const book = { width_mm: 35, height_mm: 50, thickness_mm: 6, boardThickness_mm: 1 };
    const small = coverOf({ book, construction: { strap: { width_mm: 14 }, penLoop: { width_mm: 16 } } });
    const [outside] = patternDrawing(small).pieces;
    expect(outside!.unwritten.length).toBeGreaterThan(0);
    const page = nth(pagesOf(await readPdf(await patternPdf(patternDrawing(small))), 'Outside'), 0);
    const { low, high } = boundsOf(lyingOn(page, outside!));
    const said = page.words.filter(({ at }) => at[1] < low[1] && at[1] > 20);
    const text = said.map((word) => word.text).join(' ');
    for (const words of outside!.unwritten) expect(text).toContain(words.replace(/ =$/, ''));
    for (const { at, width } of said) expect(at[0] + width).toBeLessThan(page.width - 10);
    const leads = page.paths
      .flatMap(({ chains }) => chains)
      .filter(([a, b]) => a![1] < low[1] && Math.abs(b![1] - low[1]) < 2 && b![0] > low[0] && b![0] < high[0]);
    expect(leads).toHaveLength(1);
  });

  test('names by number the characters that its letters lack, and draws a box for each', async () => {
    const pages = await readPdf(await patternPdf(patternDrawing(coverOf({ name: 'Küste → 潮 🐟' }))));
    expect(nth(nth(pages, 0).words, 0).text).toBe('Küste → □ □');
    expect(nth(pages, 0).words.map(({ text }) => text)).toContain(
      "□ stands for what this sheet's letters lack: U+6F6E, U+1F41F. Write it in by hand.",
    );
    const told: string[] = [];
    await patternPdf(patternDrawing(coverOf({ name: '潮 → 潮 🐟' })), {
      onLacking: (characters) => told.push(...characters),
    });
    expect(told).toEqual(['潮', '🐟']);
    const plain = await readPdf(
      await patternPdf(patternDrawing(coverOf({ name: 'Küste → x' })), {
        onLacking: () => expect.fail('nothing is lacking'),
      }),
    );
    expect(
      nth(plain, 0)
        .words.map(({ text }) => text)
        .join(' '),
    ).not.toContain('lack');
  });

  test('sets a letter and its accent as one, and leaves out what is not drawn', async () => {
    const pages = await readPdf(
      await patternPdf(patternDrawing(coverOf({ name: 'thu\u0309y\u200b\u00adtrie\u0302\u0300u\t1' }))),
    );
    expect(nth(nth(pages, 0).words, 0).text).toBe('thủytriều 1');
  });

  test.each([
    ['כתב abc 12, ים', ['כתב', ' abc 12, ', 'ים']],
    ['ספר הים 12', ['12', 'ספר הים ']],
    ['Tide ledger', ['Tide ledger']],
  ])('sets “%s” in runs of one direction, from the left of the page', (text, runs) => {
    expect(visualRuns(text)).toEqual(runs);
  });
});

test('the licence of the letters is published with them as their package has it', () => {
  const text = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
  expect(text('public/fonts/DejaVu-LICENSE.txt')).toBe(text('node_modules/dejavu-fonts-ttf/LICENSE'));
});
