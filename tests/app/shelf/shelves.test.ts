import { expect, test } from 'vitest';
import type { ShelfJob } from '../../../src/app/shelf/shelfSchema.ts';
import { shelvesOf } from '../../../src/app/shelf/shelves.ts';

const job = (name: string, day: string): ShelfJob => ({
  id: name,
  revision: 1,
  name,
  document: {},
  savedAt: Date.parse(`${day}T12:00:00Z`),
  removedAt: null,
});

const JOBS = [job('Psalter', '2026-03-09'), job('almanac', '2026-03-02'), job('Atlas', '2026-01-30')];

const titles = (order: 'made' | 'name', count = 10) =>
  shelvesOf(JOBS, order, count).map(({ title, jobs }) => [title, ...jobs.map(({ name }) => name)]);

test('the last made stand first, a shelf for each month', () => {
  expect(titles('made')).toEqual([
    ['March 2026', 'Psalter', 'almanac'],
    ['January 2026', 'Atlas'],
  ]);
});

test('by name, a shelf for each first letter, whether it is a capital or not', () => {
  expect(titles('name')).toEqual([
    ['A', 'almanac', 'Atlas'],
    ['P', 'Psalter'],
  ]);
});

test('no more stand there than are shown', () => {
  expect(titles('name', 1)).toEqual([['A', 'almanac']]);
});
