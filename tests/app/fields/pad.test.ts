import { describe, expect, test } from 'vitest';
import { keyedText, padKeys } from '../../../src/app/fields/pad.ts';

describe('the keys that a number pad lacks', () => {
  test('a length in inches has every eighth, and what writes any other fraction; in millimetres none is lacking', () => {
    expect(padKeys('book.width_mm', 'in')).toEqual(expect.arrayContaining(['1/8', '3/8', '7/8', '/', ' ']));
    expect(padKeys('book.width_mm', 'mm')).toEqual([]);
  });

  test('a weight has its units and the bar of a range, in either unit', () => {
    for (const unit of ['mm', 'in'] as const)
      expect(padKeys('leather.outside', unit)).toEqual(expect.arrayContaining(['-', ' oz', ' mm']));
  });

  test('only a figure that may be negative has a minus', () => {
    expect(padKeys('making.changeAlong', 'mm')).toEqual(['-']);
    expect(padKeys('book.foldBack_deg', 'mm')).toEqual([]);
  });

  test('a fraction is parted from a whole number, and from nothing else', () => {
    expect(keyedText('3/8', '5')).toBe(' 3/8');
    expect(keyedText('3/8', '5 ')).toBe('3/8');
    expect(keyedText('3/8', '')).toBe('3/8');
    expect(keyedText('/', '3')).toBe('/');
  });
});
