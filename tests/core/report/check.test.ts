import { describe, expect, test } from 'vitest';
import {
  answered,
  chanceWords,
  isWanting,
  judged,
  severity,
  stateOf,
  worstVerdict,
} from '../../../src/core/report/check.ts';

describe('a length in doubt', () => {
  const at = (mean: number, u = 1) => judged({ mean, u }, 1.645);

  test('fits from the wished chance on, fails where it is more likely negative than not, and is close between', () => {
    expect([1.7, 1.645, 1.6, 0, -0.1].map((mean) => at(mean).verdict)).toEqual([
      'fits',
      'fits',
      'tight',
      'tight',
      'fails',
    ]);
    expect(at(3, 2).limit).toBeCloseTo(3.29, 9);
  });

  test('without doubt fits or fails, and is not judged by the noise of a sum', () => {
    expect([0, -1e-10, -1e-8].map((mean) => at(mean, 0).verdict)).toEqual(['fits', 'fits', 'fails']);
    expect(at(1.645 - 1e-10).verdict).toBe('fits');
    expect(at(1.645 - 1e-8).verdict).toBe('tight');
  });
});

test('a chance is said rounded down, and never as certain', () => {
  expect([0.004, 0.0100001, 0.9499, 0.95, 0.9951, 1].map(chanceWords)).toEqual([
    'fewer than 1 of 100',
    '1 of 100',
    '94 of 100',
    '95 of 100',
    '99 of 100',
    'over 99 of 100',
  ]);
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
  const unjudged = { value: 0, limit: 0, bound: null, remedy: '', change: [], origin: 'quick model' };
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
