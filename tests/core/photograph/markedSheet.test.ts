import { expect, test } from 'vitest';
import {
  MARK_SIDE,
  MARKED_PAPERS,
  type MarkedPaper,
  markedPage,
  placeOfMark,
} from '../../../src/core/photograph/markedSheet.ts';

const PAGES = (['A4', 'Letter'] as const).flatMap((paper): [MarkedPaper, number][] =>
  Array.from({ length: MARKED_PAPERS[paper].pages }, (_, page) => [paper, page]),
);

test('every mark of every page has a number of its own, under the 250 of its dictionary, and is found by it', () => {
  const numbers = PAGES.flatMap(([paper, page]) => markedPage(paper, page).marks.map(({ id }) => id));
  expect(new Set(numbers).size).toBe(numbers.length);
  expect(Math.max(...numbers)).toBeLessThan(250);
  for (const [paper, page] of PAGES)
    for (const { id, corners } of markedPage(paper, page).marks)
      expect(placeOfMark(id)).toEqual({ paper, page, corners });
  expect(placeOfMark(-1)).toBeNull();
  expect(placeOfMark(249)).toBeNull();
  expect(placeOfMark(1.5)).toBeNull();
});

test.each(PAGES)(
  'on %s page %i marks are squares in the printable part, apart by more than a cell, and clear of the bars',
  (paper, page) => {
    const { width, height, marks, bars } = markedPage(paper, page);
    for (const { corners } of marks) {
      const [a, b, c, d] = corners;
      expect([b[0] - a[0], a[1] - d[1], c[0] - d[0], b[1] - c[1]]).toEqual(
        [MARK_SIDE, MARK_SIDE, MARK_SIDE, MARK_SIDE].map((side) => expect.closeTo(side, 9)),
      );
      for (const [x, y] of corners) {
        expect(width / 2 - Math.abs(x)).toBeGreaterThan(7.99);
        expect(height / 2 - Math.abs(y)).toBeGreaterThan(7.99);
      }
      const cell = MARK_SIDE / 8;
      expect(a[0] - cell > bars.along.from[0] || b[0] + cell < bars.along.from[0]).toBe(true);
      expect(d[1] - cell > bars.across.from[1] || a[1] + cell < bars.across.from[1]).toBe(true);
      for (const other of marks) {
        if (other.corners === corners) continue;
        const apart = Math.max(Math.abs(other.corners[0][0] - a[0]), Math.abs(other.corners[0][1] - a[1])) - MARK_SIDE;
        expect(apart).toBeGreaterThan(2 * cell);
      }
    }
    expect(bars.along.length).toBeGreaterThan(0.9 * (height - 16));
    expect(bars.across.length).toBeGreaterThan(0.9 * (width - 16));
  },
);

test('there is no page beyond the last', () => {
  expect(() => markedPage('A4', 6)).toThrow('pages 1 to 6');
  expect(() => markedPage('Letter', -1)).toThrow(RangeError);
});
