import { expect, test } from 'vitest';
import { designNote, fieldNote, findFieldNote } from '../../../src/core/job/fieldNote.ts';
import type { JobPath } from '../../../src/core/job/jobPath.ts';
import { JOB_PATHS, numberFields } from '../../../src/core/job/jobPaths.ts';

test('a field is found behind defaults, nulls and transforms, with its range', () => {
  expect(fieldNote('book.measured.error_mm')).toMatchObject({ unit: 'mm', min: 0 });
  expect(fieldNote('leather.lining.bendRatio')).toMatchObject({ unit: '' });
});

test('a path without a number field is a slip of the program and says which', () => {
  expect(() => fieldNote('book.girth_mm' as JobPath)).toThrow('book.girth_mm');
  expect(() => fieldNote('leather.outside')).toThrow('leather.outside');
});

test('a field of a design is found in whichever kind has it, with its range', () => {
  expect(designNote('x_mm')).toMatchObject({ unit: 'mm', min: -2000, max: 2000 });
  expect(designNote('inset_mm')).toMatchObject({ title: 'Inset', min: 0 });
  expect(designNote('repeat.rows')).toMatchObject({ unit: '', min: 1, max: 40 });
  expect(() => designNote('girth_mm')).toThrow('girth_mm');
});

test('a section lists every number field once, each as fieldNote finds it', () => {
  for (const section of ['book', 'leather', 'seam', 'pockets', 'ease', 'pattern'] as const) {
    const fields = numberFields(section);
    expect(fields.length).toBeGreaterThan(1);
    expect(new Set(fields.map(({ path }) => path)).size).toBe(fields.length);
    for (const { path, note } of fields) expect(fieldNote(path)).toEqual(note);
  }
  expect(numberFields('book').map(({ path }) => path)).toContain('book.spine.rise_mm');
  expect(numberFields('ease').map(({ path }) => path)).toEqual([
    'ease.foreEdge_mm',
    'ease.head_mm',
    'ease.tail_mm',
    'ease.share',
  ]);
});

test('every number field has help, which the schema does not carry', () => {
  const without = JOB_PATHS.filter((path) => {
    const note = findFieldNote(path);
    return note !== undefined && 'min' in note && note.description === '';
  });
  expect(without).toEqual([]);
  expect(designNote('repeat.rows').description).toBe('Copies one over the other.');
  expect(fieldNote('leather.lining.min_mm').description).toBe(fieldNote('leather.outside.min_mm').description);
});
