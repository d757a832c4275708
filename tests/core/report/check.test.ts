import { describe, expect, test } from 'vitest';
import { answered, isWanting, severity, stateOf, verdictWithin, worstVerdict } from '../../../src/core/report/check.ts';

describe('a length that may be off', () => {
  const band = { worst_mm: 1.5, spread_mm: 1, ruler_mm: 0.5 };

  test('fits beyond the whole band, fails beyond what the ruler may be off by, and is close between', () => {
    expect([1.6, 1.5, 1.4, 0, -0.5, -0.6].map((value) => verdictWithin(value, band))).toEqual([
      'fits',
      'fits',
      'tight',
      'tight',
      'tight',
      'fails',
    ]);
  });

  test('is off twice over where two edges share it', () => {
    expect([3, 2.9, -1, -1.1].map((value) => verdictWithin(value, band, 2))).toEqual([
      'fits',
      'tight',
      'tight',
      'fails',
    ]);
  });

  test('is not judged by the noise of a sum', () => {
    expect(verdictWithin(1.5 - 1e-10, band)).toBe('fits');
    expect(verdictWithin(-0.5 - 1e-10, band)).toBe('tight');
    expect(verdictWithin(1.5 - 1e-8, band)).toBe('tight');
    expect(verdictWithin(-0.5 - 1e-8, band)).toBe('fails');
  });
});

test('verdicts rank from a row that only informs to one that fails; not known is worse than loose', () => {
  const ranked = ['none', 'fits', 'tight', 'loose', 'unknown', 'fails'] as const;
  expect(ranked.toSorted((a, b) => severity(a) - severity(b))).toEqual(ranked);
  expect(new Set(ranked.map(severity)).size).toBe(6);
  expect(worstVerdict(['fits', 'loose', 'tight', 'none'])).toBe('loose');
  expect(worstVerdict(['none'])).toBe('fits');
  expect(worstVerdict([])).toBe('fits');
  expect(ranked.filter(isWanting)).toEqual(['tight', 'loose', 'fails']);
});

test('a row says its verdict in its own word where it fails, else in the usual one', () => {
  expect(stateOf('fails', 'too small')).toBe('too small');
  expect(stateOf('tight', 'too small')).toBe('close');
  const question = { id: 'width', title: 'Width', unit: 'mm', failing: 'too small' } as const;
  const unjudged = { value: 0, limit: 0, bound: null, remedy: '', change: [] };
  expect(answered(question, { verdict: 'none', message: 'Seen.' })).toEqual({
    id: 'width',
    title: 'Width',
    unit: 'mm',
    verdict: 'none',
    state: 'note',
    message: 'Seen.',
    ...unjudged,
  });
  expect(answered(question, { verdict: 'none', state: 'not checked', message: '' }).state).toBe('not checked');
  expect(answered(question, { verdict: 'fails', message: '', value: -2, bound: 'atLeast' })).toMatchObject({
    state: 'too small',
    value: -2,
    limit: 0,
    bound: 'atLeast',
  });
});
