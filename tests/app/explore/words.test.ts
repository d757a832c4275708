import { describe, expect, test } from 'vitest';
import { chanceWords, shareWords } from '../../../src/app/explore/chanceWords.ts';
import { fieldName } from '../../../src/app/explore/fieldWords.ts';
import { fieldFigure } from '../../../src/app/explore/figure.ts';
import { changeWords, noChangeWords } from '../../../src/app/explore/mustChangeWords.ts';
import { JOB_FIGURES } from '../../../src/core/explore/jobFigures.ts';
import { printer } from '../../../src/core/units/printer.ts';
import { defined } from '../../defined.ts';

test('no two fields have one name', () => {
  const names = JOB_FIGURES.map(({ path, note }) => fieldName({ id: path, note }));
  expect(new Set(names).size).toBe(names.length);
});

describe('a share of the trials', () => {
  test('is rounded down, so that only a cover that never failed has "all"', () => {
    expect(shareWords(2000, 2000)).toBe('all 2,000');
    expect(shareWords(1999, 2000)).toBe('99 of 100');
    expect(shareWords(1960, 2000)).toBe('98 of 100');
    expect(shareWords(7, 2000)).toBe('fewer than 1 of 100');
    expect(shareWords(0, 2000)).toBe('none of 2,000');
  });

  test('tells closing apart from fitting everywhere', () => {
    const chance = { draws: 2000, closes: 1960, liesOpen: 2000, head: 1900, tail: 2000, all: 1860 };
    expect(chanceWords(chance)).toBe(
      'In 98 of 100 trials it closes; in 93 of 100 it fits at every edge, closed and open.',
    );
    expect(chanceWords({ ...chance, all: 1960 })).toMatch(/^In 98 of 100 trials it closes, and fits at head/);
    expect(chanceWords({ ...chance, closes: 0, all: 0 })).toBe('In none of 2,000 trials does it close.');
  });
});

describe('what must change', () => {
  const { note } = defined(JOB_FIGURES.find(({ path }) => path === 'pattern.outsideWidth_mm'));
  const width = { id: 'pattern.outsideWidth_mm', note, present: 368, step: 0.5 } as const;
  const figure = fieldFigure(width, printer('mm'));
  const change = { status: 'change', from: 368, exact: 381.7, to: 382, changes: [], worsens: [] } as const;

  test('is given as size and difference, with the checks that it makes worse', () => {
    expect(changeWords(width, change, figure)).toBe('Outside width 382 mm, 14 mm more.');
    expect(changeWords(width, { ...change, to: 360, worsens: ['Boards load'] }, figure)).toBe(
      'Outside width 360 mm, 8 mm less. Worse for it: boards load.',
    );
  });

  test('where no value is enough, says why', () => {
    const none = { status: 'none', bears: true, best: 380, unfit: ['Head', 'Tail'] } as const;
    expect(noChangeWords(width, none, figure)).toBe(
      'Outside width: no value is enough; at 380 mm these still fall short: head and tail.',
    );
    expect(noChangeWords(width, { ...none, best: 368 }, figure)).toBe('Outside width: no value is enough.');
    expect(noChangeWords(width, { ...none, bears: false }, figure)).toBe('Outside width makes no difference.');
  });
});
