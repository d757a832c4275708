import { describe, expect, test } from 'vitest';
import {
  type Answers,
  emptyWords,
  entriesFor,
  picturedBook,
  refusalsOf,
  writtenJob,
} from '../../../src/app/form/newCoverAnswers.ts';
import { parseJob } from '../../../src/core/index.ts';

const NONE: Answers = { kind: 'hardback', spine: 'flat', texts: {}, units: 'mm' };
const FILLED: Answers = {
  ...NONE,
  texts: { 'book.width_mm': '150', 'book.height_mm': '220', 'book.thickness_mm': '31', 'leather.outside': '4-5 oz' },
};

describe('the answers of a new cover', () => {
  test('what has no default is needed, and nothing else', () => {
    expect(Object.keys(refusalsOf(NONE)).sort()).toEqual(
      ['book.height_mm', 'book.thickness_mm', 'book.width_mm', 'leather.outside'].sort(),
    );
    expect(refusalsOf(FILLED)).toEqual({});
  });

  test('an answer out of its range, or that cannot be read, is refused at its own entry', () => {
    const wrong = { ...FILLED.texts, 'book.width_mm': '2', 'leather.outside': 'thick' };
    expect(refusalsOf({ ...FILLED, texts: wrong })).toEqual({
      'book.width_mm': expect.stringContaining('too small'),
      'leather.outside': expect.stringContaining('oz'),
    });
  });

  test('an empty entry names the unit of a figure without one, or what holds where it is left empty', () => {
    const said = (answers: Answers) =>
      Object.fromEntries(entriesFor(answers).map((entry) => [entry.path, emptyWords(entry, answers)]));
    expect(said(NONE)).toEqual({
      'book.width_mm': 'mm',
      'book.height_mm': 'mm',
      'book.thickness_mm': 'mm',
      'book.boardThickness_mm': '2.5 mm, usual',
      'leather.outside': 'oz or mm',
    });
    expect(said({ ...NONE, units: 'in' })).toMatchObject({ 'book.width_mm': 'in' });
  });

  test('the rise is asked of a rounded spine only, and may be left out', () => {
    const paths = (answers: Answers) => entriesFor(answers).map(({ path }) => path);
    expect(paths(NONE)).not.toContain('book.spine.rise_mm');
    expect(paths({ ...NONE, spine: 'rounded' })).toContain('book.spine.rise_mm');
    expect(refusalsOf({ ...FILLED, spine: 'rounded' })).toEqual({});
    // A rise typed before the spine was called flat is forgotten.
    const { document } = writtenJob({ ...FILLED, texts: { ...FILLED.texts, 'book.spine.rise_mm': '9' } });
    expect(document.book).not.toHaveProperty('spine');
  });

  test('complete answers make a job of just these figures', () => {
    const { document, typed } = writtenJob(FILLED);
    const parsed = parseJob(document);
    expect(parsed.ok && parsed.job.book).toMatchObject({ width_mm: 150, height_mm: 220, thickness_mm: 31 });
    expect(typed['leather.outside']).toEqual({ text: '4-5 oz', unit: 'mm' });
  });

  test('the picture follows what is answered, and stands where that is no book', () => {
    expect(picturedBook({ ...NONE, texts: { 'book.height_mm': '300' } }).height_mm).toBe(300);
    expect(picturedBook({ ...NONE, texts: { 'book.height_mm': '2' } }).height_mm).toBe(240);
  });
});
