import { describe, expect, test } from 'vitest';
import type { CardLesson, ReadingResidual } from '../../../src/core/mockup/cardLesson.ts';
import { lessonSentences } from '../../../src/core/mockup/lessonSentences.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { printer } from '../../../src/core/units/printer.ts';
import { tide } from './trials.ts';

const reading = (of: 'wrap' | 'height', from: 'card' | 'tape' = 'card'): ReadingResidual => ({
  name: of,
  of,
  from,
  read: 3,
  expected: 3,
  fitted: 3,
  deviation: 0,
});

const same = (value: number) => ({ before: value, after: value, errorBefore: 0.5, errorAfter: 0.3 });

const lesson: Omit<CardLesson, 'sentences'> = {
  status: 'learned',
  measures: { width: same(165), thickness: same(28), height: same(240) },
  wrap: same(358),
  height: same(240),
  cardFolds: 0,
  residuals: [reading('wrap'), reading('height')],
  undecided: [],
  change: [],
  job: tide,
  iterations: 2,
  residual: 0,
};

const sentences = (change: Partial<typeof lesson>) => lessonSentences(tide, { ...lesson, ...change }, printer('mm'));

const stays = 'In leather the outside stays 382.5 mm x 260.5 mm.';
const wrap = 'The closed book is 358.0 mm round from fore-edge to fore-edge, as measured, give or take 0.3 mm.';
const height = 'The book is 240 mm high, as measured, give or take 0.3 mm.';

test('a trial without a reading asks for one, and one that does not converge says so', () => {
  expect(sentences({ status: 'nothingRead' })).toEqual([
    'Enter the gaps at both fore-edges, or at head and tail, or how far it stays open.',
  ]);
  expect(sentences({ status: 'notConverged' })).toEqual([
    'No measures were found that explain these readings. Read the card again.',
  ]);
});

describe('a lesson', () => {
  test('names the lengths that the card showed, and no others', () => {
    expect(sentences({}).slice(0, -1)).toEqual([wrap, height]);
    expect(sentences({ residuals: [reading('wrap'), reading('height', 'tape')] }).slice(0, -1)).toEqual([wrap]);
    expect(sentences({ residuals: [reading('height'), reading('wrap', 'tape')] }).slice(0, -1)).toEqual([height]);
  });

  test('says how much more or less than measured a length is', () => {
    const at = (after: number) => sentences({ wrap: { ...same(358), after }, height: { ...same(240), after } });
    expect(at(359.24)[0]).toContain('is 359.2 mm round from fore-edge to fore-edge, 1.2 mm more than measured,');
    expect(at(356.5)[0]).toContain('is 356.5 mm round from fore-edge to fore-edge, 1.5 mm less than measured,');
    expect(at(358.04)[0]).toContain(', as measured,');
    expect(at(239.25)[1]).toBe('The book is 239.25 mm high, 0.8 mm less than measured, give or take 0.3 mm.');
  });

  test('names the measures that are left undecided between them', () => {
    const measures = {
      width: { ...same(165), after: 165.4 },
      thickness: { ...same(28), after: 28.2 },
      rise: { ...same(6), after: 6.1 },
    };
    expect(sentences({ measures, undecided: ['width', 'thickness'] })[1]).toBe(
      'The card cannot say whether width or thickness was off, so both are corrected a little: ' +
        'width 165 mm to 165.4 mm, thickness 28 mm to 28.2 mm. The cut size is the same either way.',
    );
    expect(sentences({ measures, undecided: ['width', 'thickness', 'rise'] })[1]).toBe(
      'The card cannot say whether width or thickness or rise was off, so all are corrected a little: ' +
        'width 165 mm to 165.4 mm, thickness 28 mm to 28.2 mm, rise 6 mm to 6.1 mm. The cut size is the same either way.',
    );
    expect(sentences({ undecided: ['width'] })[1]).toBe(height);
  });

  test("gives the share of the card's folds, unless that prints as zero", () => {
    const folds = '0.4 mm of the gap is put down to how the card folds, not to the book.';
    expect(sentences({ cardFolds: -0.42 })[1]).toBe(folds);
    expect(sentences({ cardFolds: 0.42 })[1]).toBe(folds);
    expect(sentences({ cardFolds: 0.04 })[1]).toBe(height);
  });

  test('gives the cut size in leather', () => {
    expect(sentences({}).at(-1)).toBe(stays);
    const job = { ...tide, book: { ...tide.book, width_mm: mm(167), height_mm: mm(241) } };
    expect(sentences({ job }).at(-1)).toBe(
      'In leather the outside becomes 386.5 mm x 261.5 mm; it was 382.5 mm x 260.5 mm.',
    );
  });
});
