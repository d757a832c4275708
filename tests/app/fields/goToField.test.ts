import { expect, test } from 'vitest';
import { fieldPlace } from '../../../src/app/fields/goToField.ts';
import { JOB_PATHS } from '../../../src/core/index.ts';

/** Parts of the job that no field on the page writes. */
const WRITTEN_BY_FILE = ['format', 'version', 'correlations'];

test('every part of the job has a place on the page, or is written in the file alone', () => {
  const parts = new Set(JOB_PATHS.map((path) => path.split('.')[0] ?? ''));
  const without = [...parts].filter((part) => fieldPlace(part) === undefined);
  expect(without).toEqual(WRITTEN_BY_FILE);
});

test('a field of the cover is in a card, one of the workbench in a part', () => {
  expect(fieldPlace('book.width_mm')).toEqual({ place: 'cover', card: 'book' });
  expect(fieldPlace('mockup.readings.front_mm')).toEqual({ place: 'workbench', part: 'trial' });
});
