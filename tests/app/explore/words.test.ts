import { describe, expect, test } from 'vitest';
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
