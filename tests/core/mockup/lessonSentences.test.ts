import { describe, expect, test } from 'vitest';
import type { CardLesson, Explained } from '../../../src/core/mockup/cardLesson.ts';
import { lessonSentences } from '../../../src/core/mockup/lessonSentences.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { printer } from '../../../src/core/units/printer.ts';
import { tide } from './trials.ts';

const same = (value: number) => ({ before: value, after: value, errorBefore: 0.25, errorAfter: 0.15 });

const likeliest: Explained = {
  id: 'asMeasured',
  words: 'all measures are right as typed',
  chance: 0.86,
  measures: { width: same(165), thickness: same(28), height: same(240) },
  wrap: same(358),
  height: same(240),
  cardFolds: 0,
  residuals: [],
  shared: [],
  change: [],
  job: tide,
  cut: { width: 382.5, height: 260.5 },
  iterations: 2,
  residual: 0,
};

const lesson: Omit<CardLesson, 'sentences'> = {
  status: 'learned',
  explanations: [likeliest],
  unweighed: [],
  wrap: same(358),
  height: same(240),
  chanceOff: 0.01,
  further: [],
  change: [],
  job: tide,
};

const sentences = (change: Partial<typeof lesson>, explained: Partial<Explained> = {}) =>
  lessonSentences(tide, { ...lesson, explanations: [{ ...likeliest, ...explained }], ...change }, printer('mm'));

const best = 'What fits best (very likely, 86 %): all measures are right as typed.';
const stays = 'In leather the outside stays 382.5 mm × 260.5 mm.';
const wrap = 'The closed book is 358.0 mm round from fore-edge to fore-edge, as measured, give or take 0.3 mm.';
const height = 'The book is 240 mm high, as measured, give or take 0.3 mm.';

test('a trial without a reading asks for one, and one that does not converge says so', () => {
  expect(sentences({ status: 'nothingRead', explanations: [] })).toEqual([
    'Enter the gaps at both fore-edges, or at head and tail, or how far it stays open.',
  ]);
  expect(sentences({ status: 'notConverged', explanations: [] })).toEqual([
    'No measures were found that explain these readings. Read the card again.',
  ]);
});

describe('a lesson', () => {
  test('names the likeliest explanation and the lengths that the card showed, and no others', () => {
    expect(sentences({})).toEqual([best, wrap, height, stays]);
    expect(sentences({ height: null })).toEqual([best, wrap, stays]);
    expect(sentences({ wrap: null })).toEqual([best, height, stays]);
  });

  test('says how much more or less than measured a length is', () => {
    const at = (after: number) => sentences({ wrap: { ...same(358), after }, height: { ...same(240), after } });
    expect(at(359.24)[1]).toContain('is 359.2 mm round from fore-edge to fore-edge, 1.2 mm more than measured,');
    expect(at(356.5)[1]).toContain('is 356.5 mm round from fore-edge to fore-edge, 1.5 mm less than measured,');
    expect(at(358.04)[1]).toContain(', as measured,');
    expect(at(239.25)[2]).toBe('The book is 239.25 mm high, 0.8 mm less than measured, give or take 0.3 mm.');
  });

  test('names the measures that cannot be told apart', () => {
    const measures = {
      width: { ...same(165), after: 165.4 },
      thickness: { ...same(28), after: 28.2 },
      rise: { ...same(6), after: 6.1 },
    };
    expect(sentences({}, { measures, shared: ['width', 'thickness'] })[3]).toBe(
      'The card cannot say whether width or thickness was off, so both are corrected a little: ' +
        'width 165 mm to 165.4 mm, thickness 28 mm to 28.2 mm. The cut size is the same either way.',
    );
    const three = sentences({}, { measures, shared: ['width', 'thickness', 'rise'] });
    expect(three[3]).toBe(
      'The card cannot say whether width or thickness or rise was off, so all are corrected a little: ' +
        'width 165 mm to 165.4 mm, thickness 28 mm to 28.2 mm, rise 6 mm to 6.1 mm. The cut size is the same either way.',
    );
    expect(sentences({}, { shared: ['width'] })[3]).toBe(stays);
    expect(sentences({ wrap: null }, { measures, shared: ['width', 'thickness'] })[2]).toBe(stays);
  });

  test("gives the share of the card's folds, unless that prints as zero", () => {
    const folds = '0.4 mm of the gap is put down to how the card folds, not to the book.';
    expect(sentences({}, { cardFolds: -0.42 })[3]).toBe(folds);
    expect(sentences({}, { cardFolds: 0.42 })[3]).toBe(folds);
    expect(sentences({}, { cardFolds: 0.04 })[3]).toBe(stays);
  });

  test('gives the cut size in leather', () => {
    expect(sentences({}).at(-1)).toBe(stays);
    const job = { ...tide, book: { ...tide.book, width_mm: mm(167), height_mm: mm(241) } };
    expect(sentences({ job }).at(-1)).toBe(
      'In leather the outside becomes 386.5 mm × 261.5 mm; it was 382.5 mm × 260.5 mm.',
    );
  });

  test('names explanations that could not be weighed', () => {
    expect(sentences({ unweighed: ['the width was measured wrongly', 'the card folds'] }).at(-1)).toBe(
      'Not weighed, because no possible book was found for it: the width was measured wrongly; the card folds.',
    );
  });
});

describe('an undecided lesson', () => {
  const open = 'That is not sure enough to cut by, so nothing is corrected unless you choose it below.';
  const further = [
    { name: 'half round', path: 'book.measured.rolledHalf_mm', information: 1, leaves: 0.21 },
    { name: 'width, measured again', path: 'mockup.again.width_mm', information: 0.5, leaves: 0.4 },
  ] as const;

  test('corrects nothing and asks for the most telling reading', () => {
    const ask = 'The reading that would tell most: half round. With it, ';
    expect(sentences({ status: 'undecided', further })).toEqual([
      best,
      wrap,
      height,
      open,
      `${ask}the length round the book should be known, give or take 0.4 mm.`,
    ]);
    expect(sentences({ status: 'undecided', further, wrap: null }).at(-1)).toBe(
      `${ask}the height should be known, give or take 0.4 mm.`,
    );
    expect(sentences({ status: 'undecided' }).at(-1)).toBe(open);
  });
});
