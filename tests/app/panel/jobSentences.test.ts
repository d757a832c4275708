import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { bookSentence, cutSentence, leatherSentence, seamSentence } from '../../../src/app/panel/jobSentences.tsx';
import { coverDesign, EXAMPLE_JOBS, type Patch, parseJob, patched, printer } from '../../../src/core/index.ts';

const jobOf = (...patches: readonly Patch[]) => {
  const parsed = parseJob(patched(EXAMPLE_JOBS[1].document, patches));
  if (!parsed.ok) throw new Error('the job does not parse');
  return parsed.job;
};

const mm = printer('mm');
const text = (node: Parameters<typeof renderToStaticMarkup>[0]): string =>
  renderToStaticMarkup(node).replace(/<[^>]*>/g, '');

test('the book is its measures with their unit once, its boards and its spine', () => {
  expect(text(bookSentence(jobOf(), mm))).toBe('150 × 220 × 54 mm, boards 3 mm, spine rounded 9 mm');
  const flat = jobOf({ path: 'book.spine', value: { shape: 'flat' } }, { path: 'book.kind', value: 'paperback' });
  expect(text(bookSentence(flat, mm))).toBe('150 × 220 × 54 mm, paperback, covers 3 mm, spine flat');
});

test('a rise that was not measured is called an estimate', () => {
  const job = jobOf({ path: 'book.spine', value: { shape: 'rounded' } });
  expect(text(bookSentence(job, mm))).toMatch(/spine rounded [\d.]+ mm, estimated$/);
});

test('sizes of different units each keep their own', () => {
  const job = jobOf({ path: 'book.width_mm', value: 152.4 });
  expect(text(bookSentence(job, printer('in')))).toMatch(/^6 in × 220 mm × 54 mm/);
});

test('leather, seam and cut are said in the words of the fields', () => {
  const job = jobOf();
  expect(text(leatherSentence(job, mm))).toMatch(/^5-6 oz, medium/);
  expect(seamSentence(job, mm)).toBe('Stitched, 4 mm from the edge; pockets apart');
  expect(text(cutSentence(coverDesign(job), mm))).toMatch(/^[\d.]+ × [\d.]+ mm outside, pockets [\d.]+ mm deep$/);
});
