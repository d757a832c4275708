import { expect, test } from 'vitest';
import { mainLines } from '../../../src/app/panel/mainLines.ts';
import type { BudgetLine } from '../../../src/core/report/doubtSchema.ts';

const line = (words: string, share: number): BudgetLine => ({
  path: words,
  words,
  u: 0.25,
  sensitivity: -2,
  share,
  from: 'measured',
  with: 'ruler A',
});

test('the smallest lines of a budget are shown as one, and left out where they print as nothing', () => {
  const all = mainLines([line('width', 0.6), line('cut', 0.37), line('board', 0.018), line('give', 0.012)]);
  expect(all.map(({ words }) => words)).toEqual(['width', 'cut', 'all else']);
  expect(all[2]).toMatchObject({ u: null, share: expect.closeTo(0.03, 12) });
  expect(mainLines([line('width', 0.997), line('give', 0.003)]).map(({ words }) => words)).toEqual(['width']);
  expect(mainLines([])).toEqual([]);
});
