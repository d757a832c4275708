import { describe, expect, test } from 'vitest';
import type { ReadingResidual } from '../../../src/core/mockup/cardLesson.ts';
import { contradictions } from '../../../src/core/mockup/contradictions.ts';
import type { CardReadings } from '../../../src/core/mockup/readings.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { printer } from '../../../src/core/units/printer.ts';
import { tide } from './trials.ts';

const readings = { ...tide.mockup.readings, error_mm: mm(0.25) };

/** Front and back gap add up to this. */
const found = (spare: number, rest: Partial<CardReadings> = {}): string[] =>
  contradictions([], { ...readings, front_mm: mm(0), back_mm: mm(spare), ...rest }, printer('mm'));

/** Three standard deviations of two gaps, each read to 0.25 mm, which is two of them. */
const SURE = (3 * Math.SQRT2 * 0.25) / 2;

describe('a card said to close', () => {
  test('contradicts an overrun beyond doubt', () => {
    expect(found(-0.54, { closes: true })).toEqual([
      'The card is said to close, but overruns 0.5 mm at the fore-edges. Read both again.',
    ]);
    expect(found(-SURE, { closes: true })).toEqual([]);
    expect(found(2, { closes: true })).toEqual([]);
    expect(found(-0.6, { front_mm: mm(-0.6), closes: true })[0]).toContain('overruns 1.2 mm');
  });

  test('contradicts nothing where it is left open, or where one fore-edge was not read', () => {
    expect(found(-2)).toEqual([]);
    expect(found(-2, { closes: false })).toEqual([]);
    expect(found(-2, { closes: true, front_mm: null })).toEqual([]);
    expect(found(0, { closes: true, front_mm: mm(-2), back_mm: null })).toEqual([]);
  });
});

describe('a card said not to close', () => {
  const open = 'The card is said not to close, but shows 0.5 mm of gap at the fore-edges. Read both again.';

  test('contradicts a gap beyond doubt, given in words or as an angle', () => {
    expect(found(0.54, { closes: false })).toEqual([open]);
    expect(found(0.54, { opening_deg: 5 })).toEqual([open]);
    expect(found(SURE, { closes: false })).toEqual([]);
    expect(found(-2, { opening_deg: 5 })).toEqual([]);
  });

  test('contradicts nothing where it is left open', () => {
    expect(found(2)).toEqual([]);
    expect(found(2, { opening_deg: 0 })).toEqual([]);
    expect(found(2, { closes: false, front_mm: null })).toEqual([]);
  });
});

describe('a reading far from all others', () => {
  const residual: ReadingResidual = {
    name: 'half round',
    of: 'wrap',
    from: 'tape',
    read: 360,
    expected: 356.6,
    fitted: 358,
    deviation: 3.24,
  };
  const far = (change: Partial<ReadingResidual>) =>
    contradictions([{ ...residual, ...change }], readings, printer('mm'));

  test('is named with its distance', () => {
    expect(far({})).toEqual([
      'The half round and all other measures differ by 3.4 mm, 3.2 times what their errors explain. ' +
        'Measure the book again and read the card again.',
    ]);
    expect(far({ name: 'gap at head and tail', of: 'height', read: 350, deviation: -4 })).toEqual([
      'The gap at head and tail and all other measures differ by 6.6 mm, 4.0 times what their errors explain. ' +
        'Measure the book again and read the card again.',
    ]);
  });

  test('is beyond three standard deviations either way', () => {
    expect([-3.01, -3, 0, 3, 3.01].map((deviation) => far({ deviation }).length)).toEqual([1, 0, 0, 0, 1]);
  });
});
