import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { endNeed, largestHeadTail, needsAt, needsIn, needsOverRange } from '../../../src/core/allowance/needs.ts';
import { hasSameSection } from '../../../src/core/book/bookModel.ts';
import type { JobInput } from '../../../src/core/job/jobSchema.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';

type Range = readonly [min: number, max: number];

/** A book 30 mm thick in leathers of bend ratio 0.2, so R = 0.7 t. */
function document(outside: Range, pocket: Range, board = 2.5): JobInput {
  const leather = ([min_mm, max_mm]: Range) => ({ min_mm, max_mm, bendRatio: 0.2 });
  return {
    format: 'coverwright-job',
    version: 1,
    book: { width_mm: 150, height_mm: 220, thickness_mm: 30, boardThickness_mm: board, pageGive: 0.25 },
    leather: { outside: leather(outside), pocket: leather(pocket) },
  };
}

const needsOf = (...leathers: Parameters<typeof document>) => needsOverRange(soundJob(document(...leathers)));

describe('what a book needs of unequal leathers', () => {
  test('is a seat of the pocket leather at the fore-edge: two radii of 0.7 mm under a board that is higher', () => {
    expect(needsOf([2, 2], [1, 1]).nominal.foreEdge.seat).toBeCloseTo(1.4, 12);
  });

  test('is a seat of both at head and tail, the heavier leather giving way more', () => {
    // Found apart from this code, by halving: h_o + h_p = 2.5 with L - d alike, radii 1.4 and 0.42.
    const { needed, outsideOffset } = needsOf([2, 2], [0.6, 0.6]).nominal.headTail;
    expect(needed).toBeCloseTo(3.0972835, 6);
    expect(outsideOffset).toBeGreaterThan(2.5 / 2);
  });

  test('is a fore-edge that two pockets spread: 2 x 4 mm less a quarter of the 25 mm of pages', () => {
    const { book } = needsOf([2, 2], [4, 4]).nominal;
    expect(Math.sin(book.wedge)).toBeCloseTo((8 - 6.25) / 2 / 150, 12);
    expect(needsOf([2, 2], [3, 3]).nominal.book.wedge).toBe(0);
  });
});

describe('an end of the outside needs beyond the wrap', () => {
  test('margin and seat where a pocket is sewn on: 4 + 1.4 mm', () => {
    expect(endNeed(needsOf([2, 2], [1, 1]).nominal)).toBeCloseTo(4 + 1.4, 12);
  });

  test('the way round the board where it is turned: 2.5 + pi (2/pi) 2 mm', () => {
    const leather = { outside: { min_mm: 2, max_mm: 2, neutral: 2 / Math.PI } };
    const pockets = { construction: 'turned' };
    const job = soundJob({ ...document([2, 2], [1, 1]), leather, pockets });
    expect(endNeed(needsOverRange(job).nominal)).toBeCloseTo(6.5, 12);
  });
});

describe('head and tail are cut', () => {
  // Needed at the thin end, the middle and the thick end, found apart from this code as above.
  test.each([
    ['thick end where both leathers are alike', [1, 2], [1, 2], 2.5, 2.7556192],
    ['thin end where a heavier pocket takes more of the board', [2, 2], [0.6, 1.4], 2.5, 3.0972835], // 2.9505, 2.8549
    ['middle where it asks for most', [0.7, 2.2], [2.9, 3.4], 6.75, 6.3856806], // 6.3534, 6.3857, 6.3855
  ] as const)('for the %s', (_, outside, pocket, board, needed) => {
    expect(largestHeadTail(needsOf(outside, pocket, board)).needed).toBeCloseTo(needed, 6);
  });
});

/** Measures of a book that are made a little less, one or two at a time; some leave its section as it is. */
const CHANGED = [
  ['width_mm'],
  ['height_mm'],
  ['thickness_mm', 'foreEdgeThickness_mm'],
  ['foreEdgeThickness_mm'],
  ['boardThickness_mm'],
  ['cornerRadius_mm'],
  ['jointDip_mm'],
  ['rise_mm'],
] as const;

test('needs that take paths from those of another book are the same as those computed alone', () => {
  const count = { shared: 0, own: 0 };
  checkLaw(
    fc.property(jobDocument, jobDocument, fc.constantFrom(...CHANGED), (document, other, keys) => {
      const job = soundJob({ ...document, book: { ...document.book, jointDip_mm: 2 } });
      const known = needsAt(job, 'nominal');
      const measures = { ...job.book, rise_mm: job.book.spine.rise_mm ?? 0 };
      const less = Object.fromEntries(keys.map((key) => [key, 0.99 * measures[key]]));
      const spine = { ...job.book.spine, ...less };
      const book = { ...job.book, ...less, spine };
      const changed = { ...job, book, leather: soundJob(other).leather };
      const alone = needsAt(changed, 'thick');
      expect(needsAt(changed, 'thick', known)).toEqual(alone);
      const ofBook = { ...job, book };
      expect(needsIn(ofBook, known.leathers, known)).toEqual(needsAt(ofBook, 'nominal'));
      count[hasSameSection(known.book, alone.book, 'flat') ? 'shared' : 'own']++;
    }),
  );
  expect(count.shared).toBeGreaterThan(20);
  expect(count.own).toBeGreaterThan(20);
});
