import { describe, expect, test } from 'vitest';
import { lyingBook } from '../../../src/core/book/lyingBook.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { circularSegment } from '../../../src/core/math/circularSegment.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';

const bookOf = (i: number) => coverDesign(soundJob(nth(EXAMPLE_JOBS, i).document)).needs.nominal.book;
const [flat, round] = [bookOf(0), bookOf(1)];

describe('a book that lies on a bench', () => {
  test('keeps the length of its back at every opening, while the back flattens and spreads', () => {
    const book = round;
    let last = book;
    for (let k = 1; k <= 24; k++) {
      const lying = lyingBook(book, (Math.PI * k) / 24);
      expect(circularSegment(lying.thickness, lying.rise).arc).toBeCloseTo(book.spinePath, 9);
      expect(lying.rise).toBeLessThan(last.rise);
      expect(lying.thickness).toBeGreaterThan(last.thickness);
      last = lying;
    }
    expect(last.rise).toBe(0);
    expect(last.thickness).toBe(book.spinePath);
  });

  test('closed, and with a flat back at any opening, is the book itself', () => {
    expect(lyingBook(round, 0)).toBe(round);
    expect(lyingBook(flat, Math.PI)).toBe(flat);
  });
});
