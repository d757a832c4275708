import { describe, expect, test } from 'vitest';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { cardDesign } from '../../../src/core/mockup/cardDesign.ts';
import { cardTrial } from '../../../src/core/mockup/cardTrial.ts';
import { explanationsOf } from '../../../src/core/mockup/explanations.ts';
import { UNKNOWNS, type Unknown, type Values } from '../../../src/core/mockup/unknowns.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { card, choir, tide, typed } from './trials.ts';

const books = (change: Partial<Job['book']>): Job => ({ ...tide, book: { ...tide.book, ...change } });
const flat = books({ jointDip_mm: mm(0) });

/** The measures as typed and the card as assumed, with changes. */
const withOther = (job: Job, change: Partial<Record<Unknown, number>> = {}): Values =>
  UNKNOWNS.map((name, i) => change[name] ?? typed(job)[i]!);

const OTHER = { width: 165.5, thickness: 27.6, height: 240.3, neutral: 0.55, bendRatio: 0.48 };
const { width, thickness, height, neutral: k, bendRatio: b } = OTHER;

describe('the unknowns of a trial', () => {
  test("are the measures with the doubts of the job, the card's folds with 0.1 each, and the stops with half theirs", () => {
    const [{ expectation }] = explanationsOf(tide, card, { wrap: true, height: true, strip: true });
    expect(expectation).toEqual({
      width: { mean: 165, error: 0.25 },
      thickness: { mean: 28, error: 0.3 },
      rise: { mean: 0, error: 0 },
      height: { mean: 240, error: 0.25 },
      swell: { mean: 0, error: 0 },
      neutral: { mean: 0.5, error: 0.1 },
      bendRatio: { mean: 0.5, error: 0.1 },
      foreEdgeStop: { mean: 0, error: 0.25 },
      headTailStop: { mean: 0, error: 0.25 },
      strip: { mean: 0, error: 0 },
    });
  });

  test('include the rise of a rounded back, with a larger error where it is an estimate', () => {
    const riseIn = (job: Job) =>
      explanationsOf(job, card, { wrap: true, height: true, strip: true })[0].expectation.rise;
    const { spine, thickness_mm } = choir.book;
    expect(riseIn(choir)).toEqual({ mean: spine.rise_mm, error: 0.5 });
    const estimated = riseIn({ ...choir, book: { ...choir.book, spine: { ...spine, rise_mm: null } } });
    // A third of a circle on the chord T, with a standard uncertainty of 0.08 T.
    expect(estimated.mean).toBeCloseTo((thickness_mm / 2) * Math.tan(Math.PI / 6), 9);
    expect(estimated.error).toBeCloseTo(0.08 * thickness_mm, 9);
  });

  test('make a book: a thickness is off at the fore-edge too, a swell only at the spine', () => {
    const wedged = books({ foreEdgeThickness_mm: mm(26) });
    const { bookAs } = cardTrial(wedged, card);
    expect(bookAs(withOther(wedged, { ...OTHER, swell: 2 })).book).toEqual({
      ...wedged.book,
      width_mm: 165.5,
      thickness_mm: expect.closeTo(29.6, 9),
      foreEdgeThickness_mm: expect.closeTo(25.6, 9),
      height_mm: 240.3,
    });
  });

  test('keep the rise of a rounded back within its limits, whatever its sign, and over 0, which would not be measured', () => {
    const rise = (value: number) => cardTrial(choir, card).bookAs(withOther(choir, { rise: value })).book.spine;
    expect(rise(5)).toEqual({ shape: 'rounded', rise_mm: 5 });
    expect(rise(-5)).toEqual(rise(5));
    expect(rise(0).rise_mm).toBe(0.01);
    expect(rise(1000).rise_mm).toBe(choir.book.thickness_mm / 2);
  });

  test('round a flat back from a rise of 0.01 mm', () => {
    const spine = (rise: number) => cardTrial(tide, card).bookAs(withOther(tide, { rise })).book.spine;
    expect(spine(0.009)).toBe(tide.book.spine);
    expect(spine(0.01)).toEqual({ shape: 'rounded', rise_mm: 0.01 });
    expect(spine(4)).toEqual({ shape: 'rounded', rise_mm: 4 });
  });

  test('leave an estimated rise out of the job until it changes', () => {
    const spine = { ...choir.book.spine, rise_mm: null };
    const job = { ...choir, book: { ...choir.book, spine } };
    const { bookAs } = cardTrial(job, card);
    expect(bookAs(withOther(job)).book.spine).toEqual(spine);
    expect(bookAs(withOther(job, { rise: 6 })).book.spine).toEqual({ ...spine, rise_mm: 6 });
  });
});

describe('what a card should show', () => {
  test('is its cut size less book and folds, by hand', () => {
    const { spare, bareWrap } = cardTrial(tide, card);
    const { outside } = cardDesign(tide, card).pieces;
    const values = withOther(tide, OTHER);
    // Seam radius R = (b + 1/2) t, t = 0.5; a margin of 6.35 mm at each seam. The board is thicker than 2 R: the fore-edge
    // stops at 2 R, head and tail take the quarter circles and what is left of half the board. Wrap 2 W + T + pi K t.
    const radius = (b + 0.5) * 0.5;
    const edge = Math.PI * radius + tide.book.boardThickness_mm / 2 - 2 * radius;
    expect(bareWrap(values)).toBeCloseTo(2 * width + thickness, 9);
    expect(spare(values).wrap).toBeCloseTo(
      outside.width - 12.7 - 4 * radius - (2 * width + thickness + Math.PI * k * 0.5),
      9,
    );
    expect(spare(values).height).toBeCloseTo(outside.height - 12.7 - 2 * edge - height, 9);
    expect(spare(values)).toBe(spare([...values]));
  });

  test('is read too wide at both edges by as much as the stops are taken to be further off', () => {
    const { spare, gaps } = cardTrial(tide, card);
    const values = withOther(tide, { ...OTHER, foreEdgeStop: 0.3, headTailStop: -0.2 });
    expect(gaps(values).wrap - spare(values).wrap).toBeCloseTo(0.6, 9);
    expect(gaps(values).height - spare(values).height).toBeCloseTo(-0.4, 9);
    expect(spare(values)).toEqual(spare(withOther(tide, OTHER)));
  });

  test('depends on the swell, which makes the wrap longer by as much and turns it less than a closed book', () => {
    const { spare, bareWrap } = cardTrial(tide, card);
    const swollen = withOther(tide, { swell: 3 });
    expect(bareWrap(swollen)).toBeCloseTo(2 * 165 + 31, 9);
    // The boards run together toward the fore-edge by asin(3 / 2 / 165) each, so each fold turns by that much more.
    const turned = 2 * Math.asin(3 / 2 / 165) * 0.25;
    expect(spare(withOther(tide)).wrap - spare(swollen).wrap).toBeCloseTo(3 + turned, 3);
  });

  test('never has the card fold tighter than on itself', () => {
    const { spare } = cardTrial(tide, card);
    const at = (bendRatio: number) => spare(withOther(tide, { bendRatio }));
    expect(at(-0.2)).toEqual(at(0));
    expect(at(0.2).wrap).toBeLessThan(at(0).wrap);
  });
});

describe('a card that stays open', () => {
  const thick = { ...card, thickness_mm: mm(3), neutral: 0.8 };

  test('reaches at the angle whose turning it lacks', () => {
    const { staysOpen, spare, spareAt } = cardTrial(flat, thick);
    expect(staysOpen(typed(flat, thick))).toBe(0);
    const values = UNKNOWNS.map((name, i) => typed(flat, thick)[i]! + (name === 'width' ? 2 : 0));
    // Short by s, it stays open by s / z, z = K t = 2.4.
    const { wrap } = spare(values);
    expect(wrap).toBeLessThan(0);
    expect(staysOpen(values)).toBeCloseTo(-wrap / 2.4, 6);
    expect(spareAt(values, -wrap / 2.4)).toBeCloseTo(0, 9);
  });

  test('has nothing to spare at that angle: the wrap is 2 W + T + (pi - angle) K t', () => {
    const { outside } = cardDesign(flat, card).pieces;
    const at30 = cardTrial(flat, card).spareAt(typed(flat), Math.PI / 6);
    expect(at30).toBeCloseTo(outside.width - 12.7 - 2 - (358 + (Math.PI - Math.PI / 6) * 0.25), 9);
  });

  test('is counted with turned pockets as the fit counts them', () => {
    const turned: Job = { ...flat, pockets: { ...flat.pockets, construction: 'turned' } };
    const { spare, spareAt } = cardTrial(turned, card);
    // From closed to 30 degrees the folds turn by that much less.
    expect(spareAt(typed(turned), Math.PI / 6) - spare(typed(turned)).wrap).toBeCloseTo((Math.PI / 6) * 0.25, 9);
  });
});
