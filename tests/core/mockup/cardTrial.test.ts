import { describe, expect, test } from 'vitest';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { cardDesign } from '../../../src/core/mockup/cardDesign.ts';
import { type CardReadings, cardTrial } from '../../../src/core/mockup/cardTrial.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { card, choir, tide } from './trials.ts';

const { readings } = tide.mockup;
const books = (change: Partial<Job['book']>): Job => ({ ...tide, book: { ...tide.book, ...change } });
const flat = books({ jointDip_mm: mm(0) });

/** Width, thickness, rise and height of the book, and neutral fraction K and bend ratio b of the card. */
const MEAN = [165, 28, 0, 240, 0.5, 0.5];
const UNKNOWNS = [165.5, 27.6, 0, 240.3, 0.55, 0.48];

const observed = (job: Job, change: Partial<CardReadings>, sheet = card) =>
  cardTrial(job, sheet, { ...readings, ...change }).observations;

describe('the unknowns of a trial', () => {
  test("are the measures with their errors, and the card's two fold values with 0.1 each", () => {
    expect(cardTrial(tide, card, readings).prior).toEqual({ mean: MEAN, error: [0.5, 0.5, 0, 0.5, 0.1, 0.1] });
  });

  test('include the rise of a rounded back, with a larger error where it is an estimate', () => {
    const { spine, thickness_mm } = choir.book;
    const measured = cardTrial(choir, card, readings).prior;
    expect([measured.mean[2], measured.error[2]]).toEqual([spine.rise_mm, choir.book.measured.error_mm]);
    const estimated = { ...choir, book: { ...choir.book, spine: { ...spine, rise_mm: null } } };
    const { mean, error } = cardTrial(estimated, card, readings).prior;
    // A third of a circle on the chord T, with an error of 2 x 0.08 T.
    expect(mean[2]).toBeCloseTo((thickness_mm / 2) * Math.tan(Math.PI / 6), 9);
    expect(error[2]).toBeCloseTo(0.16 * thickness_mm, 9);
  });

  test('make a book: the fore-edge keeps its difference from the spine, and the rise its limits', () => {
    const wedged = books({ foreEdgeThickness_mm: mm(26) });
    expect(cardTrial(wedged, card, readings).bookAs(UNKNOWNS).book).toEqual({
      ...wedged.book,
      width_mm: 165.5,
      thickness_mm: 27.6,
      foreEdgeThickness_mm: expect.closeTo(25.6, 9),
      height_mm: 240.3,
    });
    const { bookAs, prior } = cardTrial(choir, card, readings);
    const rise = (value: number) => bookAs(prior.mean.map((x, i) => (i === 2 ? value : x))).book.spine.rise_mm;
    expect(rise(5)).toBe(5);
    expect(rise(-1)).toBe(0);
    expect(rise(1000)).toBe(choir.book.thickness_mm / 2);
  });

  test('leave an estimated rise out of the job until it changes', () => {
    const spine = { ...choir.book.spine, rise_mm: null };
    const { bookAs, prior } = cardTrial({ ...choir, book: { ...choir.book, spine } }, card, readings);
    expect(bookAs(prior.mean).book.spine).toEqual(spine);
    expect(bookAs(prior.mean.map((x, i) => (i === 2 ? 6 : x))).book.spine).toEqual({ ...spine, rise_mm: 6 });
  });
});

describe('what a card should show', () => {
  test('is its cut size less book and folds, by hand', () => {
    const { gaps, bareWrap } = cardTrial(tide, card, readings);
    const { outside } = cardDesign(tide, card).pieces;
    // Seam radius R = (b + 1/2) t, t = 0.5; a margin of 6.35 mm at each seam. The board is thicker than 2 R: the fore-edge
    // stops at 2 R, head and tail take the quarter circles and what is left of half the board. Wrap 2 W + T + pi K t.
    const [width, thickness, , height, k, b] = UNKNOWNS as [number, number, number, number, number, number];
    const radius = (b + 0.5) * 0.5;
    const edge = Math.PI * radius + tide.book.boardThickness_mm / 2 - 2 * radius;
    expect(bareWrap(UNKNOWNS)).toBeCloseTo(2 * width + thickness, 9);
    expect(gaps(UNKNOWNS).wrap).toBeCloseTo(
      outside.width - 12.7 - 4 * radius - (2 * width + thickness + Math.PI * k * 0.5),
      9,
    );
    expect(gaps(UNKNOWNS).height).toBeCloseTo(outside.height - 12.7 - 2 * edge - height, 9);
    expect(gaps(UNKNOWNS)).toBe(gaps(UNKNOWNS));
  });

  test('never has the card fold tighter than on itself', () => {
    const { gaps } = cardTrial(tide, card, readings);
    const at = (bendRatio: number) => gaps([...MEAN.slice(0, 5), bendRatio]);
    expect(at(-0.2)).toEqual(at(0));
    expect(at(0.2).wrap).toBeLessThan(at(0).wrap);
  });
});

describe('the readings of a trial', () => {
  test('are sums of opposite gaps, each read with its own error', () => {
    const found = observed(tide, { front_mm: mm(1.5), back_mm: mm(2), head_mm: mm(1), tail_mm: mm(0.5) });
    const error = Math.SQRT2 * readings.error_mm;
    expect(found).toMatchObject([
      { name: 'gap at the fore-edges', of: 'wrap', from: 'card', value: 3.5, error },
      { name: 'gap at head and tail', of: 'height', from: 'card', value: 1.5, error },
    ]);
    const { gaps } = cardTrial(tide, card, readings);
    expect(found.map(({ predict }) => predict(UNKNOWNS))).toEqual([gaps(UNKNOWNS).wrap, gaps(UNKNOWNS).height]);
  });

  test('count only with the opposite edge', () => {
    for (const edge of ['front_mm', 'back_mm', 'head_mm', 'tail_mm'])
      expect(observed(tide, { [edge]: mm(2) })).toEqual([]);
  });

  test('include a tape round the book, whole or half, with at least the error of a ruler', () => {
    const measured = { ...tide.book.measured, closedWrap_mm: mm(359), rolledHalf_mm: mm(179) };
    const found = observed(books({ measured }), {});
    expect(found).toMatchObject([
      { name: 'closed wrap', of: 'wrap', from: 'tape', value: 359, error: 0.5 },
      { name: 'rolled half', of: 'wrap', from: 'tape', value: 179, error: 0.5 },
    ]);
    const whole = 2 * 165.5 + 27.6;
    expect(found.map(({ predict }) => predict(UNKNOWNS))).toEqual([
      expect.closeTo(whole, 9),
      expect.closeTo(whole / 2, 9),
    ]);
    const exact = observed(books({ measured: { ...measured, error_mm: mm(0) } }), {});
    expect(exact.map(({ error }) => error)).toEqual([0.05, 0.05]);
  });
});

describe('a card that holds the book open', () => {
  const thick = { ...card, thickness_mm: mm(3), neutral: 0.8 };

  test('has nothing to spare at that angle: the wrap is 2 W + T + (pi - angle) K t', () => {
    const [{ predict, ...found }] = observed(flat, { opening_deg: 30 }) as [ReturnType<typeof observed>[number]];
    expect(found).toEqual({
      name: 'spare wrap at the opening read',
      of: 'wrap',
      from: 'card',
      value: 0,
      // The angle, read to 3 degrees, changes the wrap by 0.013 mm: less than the error of a gap.
      error: readings.error_mm,
    });
    const { outside } = cardDesign(flat, card).pieces;
    expect(predict(MEAN)).toBeCloseTo(outside.width - 12.7 - 2 - (358 + (Math.PI - Math.PI / 6) * 0.25), 9);
  });

  test('is read as well as its angle where that moves the wrap by more, down to a closed book', () => {
    const error = (opening_deg: number) => observed(flat, { opening_deg, error_deg: 45 }, thick)[0]!.error;
    expect(error(90)).toBeCloseTo((2.4 * Math.PI) / 4, 6);
    // From 0 to 55 degrees: half of that.
    expect(error(10)).toBeCloseTo((2.4 * ((55 / 180) * Math.PI)) / 2, 6);
  });

  test('adds no reading where it closes', () => {
    expect(observed(flat, { opening_deg: 0 })).toEqual([]);
  });
});

describe('turned pockets', () => {
  test('are counted as the fit counts them', () => {
    const turned: Job = { ...flat, pockets: { ...flat.pockets, construction: 'turned' } };
    const { gaps } = cardTrial(turned, card, readings);
    const [{ predict }] = observed(turned, { opening_deg: 30 }) as [ReturnType<typeof observed>[number]];
    // From closed to 30 degrees the folds turn by that much less.
    expect(predict(MEAN) - gaps(MEAN).wrap).toBeCloseTo((Math.PI / 6) * 0.25, 9);
  });
});
