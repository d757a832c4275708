import { describe, expect, test } from 'vitest';
import { type Explanation, explanationsOf } from '../../../src/core/mockup/explanations.ts';
import { furtherReadings } from '../../../src/core/mockup/furtherReadings.ts';
import type { Reading } from '../../../src/core/mockup/readings.ts';
import { type Expected, UNKNOWNS, type Unknown, valueIn } from '../../../src/core/mockup/unknowns.ts';
import { weigh } from '../../../src/core/mockup/weigh.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';
import { card, choir, tide } from './trials.ts';

const explanation = (odds: number, width: Expected, change: Partial<Explanation> = {}): Explanation => ({
  id: 'asMeasured',
  words: '',
  isBookAsTyped: true,
  odds,
  expectation: Object.fromEntries(
    UNKNOWNS.map((name) => [name, name === 'width' ? width : { mean: 0, error: 0 }]),
  ) as Explanation['expectation'],
  ...change,
});

const reading = (error: number, name: Unknown = 'width'): Reading => ({
  name,
  of: 'wrap',
  from: 'ruler',
  path: 'book.width_mm',
  value: null,
  error,
  predict: (values) => valueIn(values, name),
});

const width = (values: readonly number[]): number => valueIn(values, 'width');

describe('explanations', () => {
  test('are weighed by odds times the density of the readings, likeliest first', () => {
    // A reading of 3 with error 1: densities of variances 1 + 0 and 1 + 8, exp(-9/2) and exp(-1/2) / 3; odds 10 to 1.
    const narrow = explanation(10, { mean: 0, error: 0 });
    const wide = explanation(1, { mean: 0, error: Math.sqrt(8) }, { id: 'widthSlip' });
    const found = weigh([narrow, wide], [{ ...reading(1), value: 3 }]);
    const [a, b] = [10 * Math.exp(-4.5), Math.exp(-0.5) / 3];
    expect(found.map(({ explanation: { id }, chance }) => [id, chance])).toEqual([
      ['widthSlip', expect.closeTo(b / (a + b), 9)],
      ['asMeasured', expect.closeTo(a / (a + b), 9)],
    ]);
    expect(nth(nth(found, 0).result.mean, 0)).toBeCloseTo((3 * 8) / 9, 6);
  });

  test('keep the odds where nothing was read, and stay comparable where nothing explains a reading', () => {
    const two = [explanation(3, { mean: 0, error: 1 }), explanation(1, { mean: 10, error: 1 })];
    expect(weigh(two, []).map(({ chance }) => chance)).toEqual([expect.closeTo(0.75, 9), expect.closeTo(0.25, 9)]);
    const far = weigh(two, [{ ...reading(0.1), value: 1e4 }]).map(({ chance }) => chance);
    expect(far).toEqual([1, expect.closeTo(0, 9)]);
  });

  test('are those that the readings say something of', () => {
    const ids = (read: Parameters<typeof explanationsOf>[2], job = tide) =>
      explanationsOf(job, card, read).map(({ id }) => id);
    expect(ids({ wrap: true, height: false, strip: false })).toEqual([
      'asMeasured',
      'swollenSpine',
      'otherRise',
      'widthSlip',
      'otherStops',
      'otherFolds',
    ]);
    expect(ids({ wrap: false, height: true, strip: false })).toEqual([
      'asMeasured',
      'heightSlip',
      'otherStops',
      'otherFolds',
    ]);
    expect(ids({ wrap: true, height: true, strip: true })).toContain('stripSlip');
    const spine = { ...choir.book.spine, rise_mm: null };
    const estimated = { ...choir, book: { ...choir.book, spine } };
    expect(ids({ wrap: true, height: true, strip: true }, choir)).toContain('otherRise');
    expect(ids({ wrap: true, height: true, strip: true }, estimated)).not.toContain('otherRise');
  });

  test('differ from the measures as typed in their own unknowns only, and never by a smaller error', () => {
    const rough = { ...tide, book: { ...tide.book, measured: { ...tide.book.measured, error_mm: 5 as never } } };
    for (const job of [tide, choir, rough]) {
      const [usual, ...others] = explanationsOf(job, card, { wrap: true, height: true, strip: true });
      const differs = others.map(({ id, expectation }) => [
        id,
        UNKNOWNS.filter((name) => {
          const [was, is] = [usual.expectation[name], expectation[name]];
          expect(is.error, `${id} ${name}`).toBeGreaterThanOrEqual(was.error);
          return is.error > was.error || is.mean !== was.mean;
        }).join(),
      ]);
      expect(differs).toEqual([
        ['swollenSpine', 'swell'],
        ['otherRise', 'rise'],
        ['widthSlip', 'width'],
        ['heightSlip', 'height'],
        ['otherStops', 'foreEdgeStop,headTailStop'],
        ['otherFolds', 'neutral,bendRatio'],
        ['stripSlip', 'strip'],
      ]);
    }
  });

  test('expect a swell of 7 +- 5 % of the thickness, and of a flat spine a rise of 14.5 +- 8 %', () => {
    const [, swollen, rounded] = explanationsOf(tide, card, { wrap: true, height: true, strip: false });
    expect(defined(swollen).expectation.swell).toEqual({
      mean: expect.closeTo(1.96, 9),
      error: expect.closeTo(1.4, 9),
    });
    expect(defined(rounded).expectation.rise).toEqual({
      mean: expect.closeTo(4.06, 9),
      error: expect.closeTo(2.24, 9),
    });
    const [, , other] = explanationsOf(choir, card, { wrap: true, height: true, strip: false });
    expect(defined(other).expectation.rise).toEqual({ mean: 9, error: expect.closeTo(4.32, 9) });
    expect(defined(rounded).words).not.toBe(defined(other).words);
  });
});

describe('what a further reading is expected to tell', () => {
  test('is ln(1 + P / s^2) / 2 of one normal length, which it leaves a variance of 1 / (1/P + 1/s^2)', () => {
    // Lindley 1956, Ann. Math. Stat. 27, 986: the information of an experiment is the expected loss of entropy, here of
    // a normal variable of variance 4 read with error 1.
    const weighed = weigh([explanation(1, { mean: 5, error: 2 })], []);
    const [found] = furtherReadings(weighed, [reading(1)], [width]);
    expect(defined(found).information).toBeCloseTo(Math.log(5) / 2, 9);
    expect(defined(found).leaves).toBeCloseTo(Math.sqrt(0.8), 9);
  });

  test('is the entropy of the odds where it tells two explanations apart with certainty', () => {
    const weighed = weigh([explanation(3, { mean: 0, error: 0 }), explanation(1, { mean: 100, error: 0 })], []);
    const [found] = furtherReadings(weighed, [reading(1)], [width]);
    expect(defined(found).information).toBeCloseTo(-0.75 * Math.log(0.75) - 0.25 * Math.log(0.25), 9);
    expect(defined(found).leaves).toBeCloseTo(0, 6);
  });

  test('is nothing of a reading that says nothing, which leaves the mixture as wide as it was', () => {
    const weighed = weigh([explanation(1, { mean: -2, error: 1 }), explanation(1, { mean: 2, error: 1 })], []);
    const [found] = furtherReadings(weighed, [reading(1, 'height')], [width]);
    expect(defined(found).information).toBeCloseTo(0, 9);
    expect(defined(found).leaves).toBeCloseTo(Math.sqrt(5), 9);
  });

  test('ranks readings, most telling first', () => {
    const weighed = weigh([explanation(1, { mean: 0, error: 1 }), explanation(1, { mean: 3, error: 1 })], []);
    const named = [reading(2), reading(0.1), reading(1, 'height'), reading(0.5)].map((each, i) => ({
      ...each,
      name: String(i),
    }));
    expect(furtherReadings(weighed, named, [width]).map(({ name }) => name)).toEqual(['1', '3', '0', '2']);
  });

  test('counts a length that is not asked for only as far as it tells the explanations apart', () => {
    const other = explanation(1, { mean: 0, error: 1 });
    const withHeight = { ...other, expectation: { ...other.expectation, height: { mean: 0, error: 3 } } };
    const weighed = weigh([withHeight], []);
    const asked = (...lengths: [typeof width, ...(typeof width)[]]) =>
      defined(furtherReadings(weighed, [reading(1, 'height')], lengths)[0]).information;
    expect(asked(width)).toBeCloseTo(0, 9);
    expect(asked(width, (values) => valueIn(values, 'height'))).toBeCloseTo(Math.log(10) / 2, 9);
  });
});
