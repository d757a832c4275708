import { expect, test } from 'vitest';
import { restRange, type Strip } from '../../../src/app/stage/film/restRange.ts';

const strip = (leastOpening_deg: number | null, mostOpening_deg: number | null): Strip =>
  ({ rest: { creased: { opening_deg: 30, leastOpening_deg, mostOpening_deg } } }) as Strip;

test('a cover creased as the job has it rests where the springy model says, and an end that was not found is shut or flat', () => {
  expect(restRange(strip(18, 90))).toEqual({ opening: Math.PI / 6, least: Math.PI / 10, most: Math.PI / 2 });
  expect(restRange(strip(null, null))).toEqual({ opening: Math.PI / 6, least: 0, most: Math.PI });
});

test('where no rest was found, or none is solved yet, there is none', () => {
  expect(restRange(undefined)).toBeUndefined();
  expect(restRange({ rest: { creased: null } } as Strip)).toBeUndefined();
});
