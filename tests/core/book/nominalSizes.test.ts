import { describe, expect, test } from 'vitest';
import { NOMINAL_SERIES, nominalBoard } from '../../../src/core/book/nominalSizes.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';

const series = (title: string) => defined(NOMINAL_SERIES.find((each) => each.title === title)).sizes;

describe('nominal sizes', () => {
  // ISO 216: each size is the one before it halved across its long side, rounded down to a millimetre.
  test.each(['ISO A', 'ISO B'])('of %s halve from one to the next', (title) => {
    const sizes = series(title);
    for (let i = 1; i < sizes.length; i++) {
      expect(nth(sizes, i).height_mm).toBe(nth(sizes, i - 1).width_mm);
      expect(nth(sizes, i).width_mm).toBe(Math.floor(nth(sizes, i - 1).height_mm / 2));
    }
  });

  test('of ISO A start from a sheet of one square metre in the ratio of 1 to the root of 2', () => {
    const a4 = defined(series('ISO A').find(({ name }) => name === 'A4'));
    expect((a4.width_mm * a4.height_mm * 16) / 1e6).toBeCloseTo(1, 2);
    expect(a4.height_mm / a4.width_mm).toBeCloseTo(Math.SQRT2, 2);
  });

  test('stand upright, each named once, and every list says where it comes from', () => {
    const all = NOMINAL_SERIES.flatMap(({ sizes }) => sizes);
    for (const { width_mm, height_mm } of all) expect(height_mm).toBeGreaterThan(width_mm);
    expect(new Set(all.map(({ name }) => name)).size).toBe(all.length);
    for (const { source } of NOMINAL_SERIES) expect(source).not.toBe('');
  });

  test('in inches are exact', () => {
    expect(series('Trims in inches').find(({ name }) => name === '8 1/2 × 11 in')).toMatchObject({
      width_mm: expect.closeTo(215.9, 9),
      height_mm: expect.closeTo(279.4, 9),
    });
  });

  test('become boards by one square at the fore-edge and one at each of head and tail', () => {
    const a5 = defined(series('ISO A').find(({ name }) => name === 'A5'));
    expect(nominalBoard(a5, 3)).toEqual({ width_mm: 151, height_mm: 216 });
    expect(nominalBoard(a5, 0)).toEqual({ width_mm: 148, height_mm: 210 });
  });
});
