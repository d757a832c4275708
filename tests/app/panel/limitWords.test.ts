import { describe, expect, test } from 'vitest';
import { limitWords } from '../../../src/app/panel/limitWords.ts';
import type { Check } from '../../../src/core/report/reportSchema.ts';
import { printer } from '../../../src/core/units/printer.ts';

const words = (verdict: Check['verdict'], value: number, bound: Check['bound'], limit: number, unit: Check['unit']) =>
  limitWords({ id: 'head', verdict, value, bound, limit, unit }, printer('mm'));

describe('a limit is named with the side that is asked for', () => {
  test.each([
    ['fits', 2.18, 'atLeast', 0, 'mm', '2.1 mm', 'at least 0 mm'],
    ['fails', -3.41, 'atLeast', 0, 'mm', '−3.5 mm', 'at least 0 mm'],
    ['fits', 31.2, 'atMost', 90, 'deg', '31°', 'at most 90°'],
    ['fails', 90.2, 'atMost', 90, 'deg', '91°', 'at most 90°'],
    ['loose', 4.02, 'atMost', 4, 'mm', 'over 4.0 mm', 'at most 4 mm'],
    ['loose', 23.38, 'atMost', 4, 'mm', '23.3 mm', 'at most 4 mm'],
    ['fails', -6.04, 'within', 2, 'mm', '−6.04 mm', 'within ±2 mm'],
    ['fits', 0.3, 'atMost', 0.45, '', '30 %', 'at most 45 %'],
  ] as const)('%s %d %s %d %s', (verdict, value, bound, limit, unit, found, asked) => {
    expect(words(verdict, value, bound, limit, unit)).toEqual({ value: found, limit: asked });
  });

  test('a number past a limit that fails nothing is no contradiction: its limit is only better', () => {
    expect(words('tight', -0.4, 'atLeast', 0, 'mm')?.limit).toBe('better at least 0 mm');
    expect(words('tight', 0.5, 'atMost', 0.45, '')?.limit).toBe('better at most 45 %');
    expect(words('fails', 46, 'atMost', 30, 'deg')?.limit).toBe('at most 30°');
  });

  test('what was not measured shows no number, while a gap of nothing does', () => {
    expect(words('fits', 0, null, 0, 'mm')).toBeNull();
    expect(words('tight', 0, 'atLeast', 0, 'mm')?.value).toBe('0.0 mm');
  });

  test('a setting of the job reads as in its field', () => {
    const margin = {
      id: 'seamMargin',
      verdict: 'fits',
      value: 4,
      bound: 'atLeast',
      limit: 1.984375,
      unit: 'mm',
    } as const;
    expect(limitWords(margin, printer('in'))).toEqual({ value: '4 mm', limit: 'at least 5/64 in' });
  });
});

test('a limit that no ruler in inches shows is rounded away from the figure that keeps or breaks it', () => {
  const inches = printer('in');
  const row = { id: 'head', unit: 'mm', bound: 'atLeast', limit: 1.03 } as const;
  expect(limitWords({ ...row, verdict: 'fits', value: 1.18 }, inches)).toEqual({
    value: '1/32 in',
    limit: 'at least 1/32 in',
  });
  expect(limitWords({ ...row, verdict: 'tight', value: 0.9 }, inches)).toEqual({
    value: '1/32 in',
    limit: 'better at least 3/64 in',
  });
});

test('a chance is never printed larger than it is', () => {
  const row = { id: 'together', unit: '', bound: 'atLeast', limit: 0.95 } as const;
  expect(limitWords({ ...row, verdict: 'tight', value: 0.789 }, printer('mm'))?.value).toBe('78 %');
});
