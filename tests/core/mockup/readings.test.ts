import { describe, expect, test } from 'vitest';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { cardTrial } from '../../../src/core/mockup/cardTrial.ts';
import { type CardReadings, isTaken, readingsOf } from '../../../src/core/mockup/readings.ts';
import { UNKNOWNS, type Unknown, type Values } from '../../../src/core/mockup/unknowns.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { nth } from '../../nth.ts';
import { card, tide, typed } from './trials.ts';

const { readings } = tide.mockup;
const books = (change: Partial<Job['book']>): Job => ({ ...tide, book: { ...tide.book, ...change } });
const flat = books({ jointDip_mm: mm(0) });

const all = (job: Job, change: Partial<CardReadings> = {}, sheet = card) =>
  readingsOf(job, cardTrial(job, sheet), { ...readings, ...change }, typed(job, sheet));
const taken = (job: Job, change: Partial<CardReadings> = {}, sheet = card) => all(job, change, sheet).filter(isTaken);

const other = (change: Partial<Record<Unknown, number>>): Values =>
  UNKNOWNS.map((name, i) => change[name] ?? typed(tide)[i]!);

describe('the readings of a card', () => {
  test('are sums of opposite gaps, each read with an error of two standard deviations', () => {
    const found = taken(tide, { front_mm: mm(1.5), back_mm: mm(2), head_mm: mm(1), tail_mm: mm(0.5) });
    const error = (Math.SQRT2 * readings.error_mm) / 2;
    expect(found).toMatchObject([
      { name: 'gap at the fore-edges', of: 'wrap', from: 'card', value: 3.5, error },
      { name: 'gap at head and tail', of: 'height', from: 'card', value: 1.5, error },
    ]);
    const values = other({ width: 165.5, foreEdgeStop: 0.2, headTailStop: -0.1 });
    const { gaps } = cardTrial(tide, card);
    expect(found.map(({ predict }) => predict(values))).toEqual([gaps(values).wrap, gaps(values).height]);
  });

  test('count only with the opposite edge', () => {
    for (const edge of ['front_mm', 'back_mm', 'head_mm', 'tail_mm'])
      expect(taken(tide, { [edge]: mm(2) })).toEqual([]);
  });

  test('include a card that holds the book open, unless it closes', () => {
    const [{ predict, ...found }] = taken(flat, { opening_deg: 30 }) as [ReturnType<typeof taken>[number]];
    expect(found).toEqual({
      name: 'spare wrap at the opening read',
      of: 'wrap',
      from: 'card',
      path: 'mockup.readings.opening_deg',
      value: 0,
      // The angle, read to 3 degrees, changes the wrap by 0.013 mm: less than the error of a gap.
      error: readings.error_mm / 2,
    });
    expect(predict(typed(flat))).toBe(cardTrial(flat, card).spareAt(typed(flat), Math.PI / 6));
    expect(taken(flat, { opening_deg: 0 })).toEqual([]);
    expect(all(flat).some(({ path }) => path === 'mockup.readings.opening_deg')).toBe(false);
  });

  test('are as good as the angle where that moves the wrap by more, down to a closed book', () => {
    const thick = { ...card, thickness_mm: mm(3), neutral: 0.8 };
    const error = (opening_deg: number) => nth(taken(flat, { opening_deg, error_deg: 45 }, thick), 0).error;
    expect(error(90)).toBeCloseTo((2.4 * Math.PI) / 4 / 2, 6);
    // From 0 to 55 degrees: half of that.
    expect(error(10)).toBeCloseTo((2.4 * ((55 / 180) * Math.PI)) / 2 / 2, 6);
  });
});

describe('readings of the book', () => {
  test('include a paper strip round it, which may be a slip, and a half round, rolled on card, as good as a ruler', () => {
    const measured = { ...tide.book.measured, closedWrap_mm: mm(359), rolledHalf_mm: mm(179) };
    const found = taken(books({ measured }));
    expect(found).toMatchObject([
      { name: 'paper strip round the closed book', of: 'wrap', from: 'tape', value: 359, error: 0.25 },
      { name: 'half round', of: 'wrap', from: 'tape', value: 179, error: 0.25 },
    ]);
    const values = other({ width: 165.5, strip: 4 });
    expect(found.map(({ predict }) => predict(values))).toEqual([
      expect.closeTo(2 * 165.5 + 28 + 4, 9),
      expect.closeTo(165.5 + 14, 9),
    ]);
    const exact = taken(books({ measured: { ...measured, error_mm: mm(0) } }));
    expect(exact.map(({ error }) => error)).toEqual([0.05, 0.05]);
  });

  test('include every measure that was taken again', () => {
    const again = { spine_mm: mm(30), width_mm: mm(166), rise_mm: mm(2), height_mm: mm(241) };
    const found = taken({ ...tide, mockup: { ...tide.mockup, again } });
    expect(found).toMatchObject([
      { name: 'spine by callipers', of: 'wrap', value: 30, error: 0.15 },
      { name: 'width, measured again', of: 'wrap', value: 166, error: 0.25 },
      { name: 'rise by a straight edge', of: 'wrap', value: 2, error: 0.25 },
      { name: 'height, measured again', of: 'height', value: 241, error: 0.25 },
    ]);
    const values = other({ thickness: 29, swell: 2, width: 166.5, rise: -3, height: 242 });
    expect(found.map(({ predict }) => predict(values))).toEqual([31, 166.5, 3, 242]);
  });

  test('name the field of each, one of a gap the first of the two', () => {
    expect(all(tide).map(({ path, value }) => [path, value])).toEqual(
      [
        'book.measured.closedWrap_mm',
        'book.measured.rolledHalf_mm',
        'mockup.readings.front_mm',
        'mockup.readings.head_mm',
        'mockup.again.spine_mm',
        'mockup.again.width_mm',
        'mockup.again.rise_mm',
        'mockup.again.height_mm',
      ].map((path) => [path, null]),
    );
  });
});
