import { describe, expect, test } from 'vitest';
import { TEST_STRIPS } from '../../src/core/leatherTest/testStrip.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import { testStripDrawing } from '../../src/core/pattern/testStripDrawing.ts';
import { patternPdf } from '../../src/output/pdf/patternPdf.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { boundsOf } from './outlineDistance.ts';
import { pagesOf } from './patternReading.ts';
import { readPdf } from './pdfReading.ts';
import { wordsOnLines } from './wordsOnLines.ts';

describe.each(['A4', 'Letter'] as const)('the strips for the tests of a leather on %s', (paper) => {
  const pages = patternPdf(testStripDrawing('mm', 'Harbour calf'), { paper }).then(readPdf);

  test('are two pages, each with every strip in true size, its lines and its letter', async () => {
    const read = await pages;
    expect(read).toHaveLength(2);
    const found = new Set<string>();
    for (const { letter, length, width, folds, bends, edges, marks } of TEST_STRIPS) {
      const page = nth(pagesOf(read, `Strip ${letter}`, 'Strips for testing Harbour calf'), 0);
      // Two strips of one size lie on a page: the one that has the letter within it.
      const inside = page.words.find(({ text }) => text === letter);
      const at = defined(inside).at;
      const chains = page.paths
        .flatMap(({ chains }) => chains)
        .filter((chain) => {
          const { low, high } = boundsOf(chain);
          return low[0] < at[0] && at[0] < high[0] && low[1] < at[1] && at[1] < high[1];
        })
        .filter((chain) => boundsOf(chain).width < 260);
      const box = boundsOf(
        nth(
          chains.toSorted((a, b) => boundsOf(a).width - boundsOf(b).width),
          0,
        ),
      );
      const isTurned = box.height > box.width;
      const [long, high] = isTurned ? [box.height, box.width] : [box.width, box.height];
      expect([letter, Number(long.toFixed(3)), Number(high.toFixed(3))]).toEqual([letter, length, width]);
      found.add(`${read.indexOf(page)} ${box.low}`);

      /** Lines on the strip that run across it, and the upright strokes of the marks, by their distance from its left end. */
      const along = ([x, y]: Vec2): number => (isTurned ? box.high[1] - y : x - box.low[0]);
      const within = page.paths
        .flatMap(({ chains }) => chains)
        .filter((chain) => chain.length === 2)
        .filter((chain) =>
          chain.every(
            ([x, y]) =>
              x >= box.low[0] - 1e-3 && x <= box.high[0] + 1e-3 && y >= box.low[1] - 1e-3 && y <= box.high[1] + 1e-3,
          ),
        );
      const across = within.filter((chain) => Math.abs(along(nth(chain, 0)) - along(nth(chain, 1))) < 1e-6);
      for (const place of [...folds, ...bends, ...edges, ...marks])
        expect(Math.min(...across.map((chain) => Math.abs(along(nth(chain, 0)) - place)))).toBeLessThan(1e-3);
    }
    expect(found.size).toBe(TEST_STRIPS.length);
  });

  test('set no words on a line', async () => {
    for (const page of await pages) expect(wordsOnLines(page, ({ lineWidth }) => lineWidth > 0.15)).toEqual([]);
  });
});

test('strips along and across are of one size for each test, and marks are 100 mm apart', () => {
  for (const [along, across] of [
    [0, 1],
    [2, 3],
    [4, 5],
    [6, 7],
  ] as const) {
    const { letter: _a, way: first, ...one } = nth(TEST_STRIPS, along);
    const { letter: _b, way: second, ...other } = nth(TEST_STRIPS, across);
    expect([first, second]).toEqual(['along', 'across']);
    expect(one).toEqual(other);
  }
  const { marks } = nth(TEST_STRIPS, 4);
  expect(marks.slice(1).map((mark, i) => mark - nth(marks, i))).toEqual([100, 100]);
});

test('every arrow lies along the backbone: along the strip that is cut along it, across the other, and clear of its lines', () => {
  for (const { id, layers } of testStripDrawing('mm', '').pieces) {
    const shaft = layers.direction[0];
    if (shaft?.kind !== 'line') throw new Error('an arrow begins with its shaft');
    const strip = defined(TEST_STRIPS.find(({ letter }) => id === `testStrip${letter}`));
    expect(shaft.from[1] === shaft.to[1]).toBe(strip.way === 'along');
    const [left, right] = [Math.min(shaft.from[0], shaft.to[0]) - 3, Math.max(shaft.from[0], shaft.to[0]) + 3];
    const lines = [...strip.folds, ...strip.bends, ...strip.edges, ...strip.marks];
    expect(lines.filter((x) => x > left && x < right)).toEqual([]);
  }
});
