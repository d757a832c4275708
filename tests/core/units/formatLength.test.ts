import { describe, expect, test } from 'vitest';
import { formatLength, type LengthFormat } from '../../../src/core/units/formatLength.ts';
import { MM_PER_INCH, mm } from '../../../src/core/units/mm.ts';
import type { Rounding } from '../../../src/core/units/rounding.ts';

const inches = (inch: number, round: Rounding, denominator: LengthFormat['denominator'] = 16) =>
  formatLength(mm(inch * MM_PER_INCH), { unit: 'in', denominator, decimals: 1, round });
const millimetres = (value: number, round: Rounding, decimals = 1) =>
  formatLength(mm(value), { unit: 'mm', denominator: 16, decimals, round });

describe('formatLength', () => {
  test('a fraction is printed reduced, a whole number without one', () => {
    expect(inches(8.5, 'up')).toBe('8 1/2 in');
    expect(inches(0.375, 'up')).toBe('3/8 in');
    expect(inches(9, 'up')).toBe('9 in');
    expect(inches(0, 'up')).toBe('0 in');
    expect(inches(17 / 64, 'up', 64)).toBe('17/64 in');
  });

  test('up, down and nearest go the stated way', () => {
    expect(['up', 'nearest', 'down'].map((round) => inches(8.52, round as Rounding))).toEqual([
      '8 9/16 in',
      '8 1/2 in',
      '8 1/2 in',
    ]);
    expect(inches(8.55, 'nearest')).toBe('8 9/16 in');
    expect(['up', 'nearest', 'down'].map((round) => millimetres(4.76, round as Rounding))).toEqual([
      '4.8 mm',
      '4.8 mm',
      '4.7 mm',
    ]);
  });

  test('a sum carried past a step by floating-point noise is still printed on it', () => {
    // In floating point 0.1 + 0.2 is over 0.3, and 34 times 6.35 is not 215.9.
    expect(millimetres(0.1 + 0.2, 'up')).toBe('0.3 mm');
    expect(millimetres(0.3 - 1e-12, 'down')).toBe('0.3 mm');
    const sum = Array.from({ length: 34 }, () => 6.35).reduce((total, part) => total + part, 0);
    expect(formatLength(mm(sum), { unit: 'in', denominator: 64, decimals: 1, round: 'up' })).toBe('8 1/2 in');
    for (let steps = 0; steps <= 64 * 24; steps++) {
      expect(inches(steps / 64, 'up', 64)).toBe(inches(steps / 64, 'down', 64));
    }
  });

  test('a length truly past a step is not taken for noise', () => {
    expect(inches(8.5 + 1e-6, 'up')).toBe('8 9/16 in');
    expect(millimetres(215.9 + 1e-5, 'up')).toBe('216.0 mm');
  });

  test('millimetres show every digit asked for', () => {
    expect(millimetres(216, 'up')).toBe('216.0 mm');
    expect(millimetres(216, 'up', 0)).toBe('216 mm');
    expect(millimetres(1.984375, 'up', 2)).toBe('1.99 mm');
  });

  test('an overrun keeps its sign and rounding down makes it larger; a tiny one is not minus zero', () => {
    expect(inches(-1.03, 'down')).toBe('−1 1/16 in');
    expect(millimetres(-0.51, 'down')).toBe('−0.6 mm');
    expect(millimetres(-1e-9, 'up')).toBe('0.0 mm');
    expect(millimetres(-0.04, 'nearest')).toBe('0.0 mm');
  });

  test('a value that is no number is an error, never print', () => {
    expect(() => millimetres(Number.NaN, 'up')).toThrow(RangeError);
    expect(() => inches(Number.POSITIVE_INFINITY, 'nearest')).toThrow(/allowed: a finite number/);
  });
});
