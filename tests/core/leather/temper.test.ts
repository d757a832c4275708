import { describe, expect, test } from 'vitest';
import tideLedger from '../../../public/jobs/tide-ledger.json' with { type: 'json' };
import { fitReport } from '../../../src/core/fitReport.ts';
import { leatherPieceSchema } from '../../../src/core/job/leatherSchema.ts';
import { CARD, TEMPERS, temperOf } from '../../../src/core/leather/temper.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';

describe('temper words', () => {
  test('have numbers that a job accepts', () => {
    for (const { bendRatio, neutral, modulus_MPa } of [...TEMPERS, CARD])
      expect(leatherPieceSchema.safeParse({ min_mm: 1, max_mm: 2, bendRatio, neutral, modulus_MPa }).success).toBe(
        true,
      );
  });

  test('run from soft to firm: turns wider at a seam, neutral line further out, stiffer', () => {
    for (let i = 1; i < TEMPERS.length; i++) {
      expect(nth(TEMPERS, i).bendRatio).toBeGreaterThan(nth(TEMPERS, i - 1).bendRatio);
      expect(nth(TEMPERS, i).neutral).toBeGreaterThan(nth(TEMPERS, i - 1).neutral);
      expect(nth(TEMPERS, i).modulus_MPa).toBeGreaterThan(nth(TEMPERS, i - 1).modulus_MPa);
    }
  });

  test('medium is what a job is when it says nothing', () => {
    expect(temperOf(soundJob(tideLedger).leather.outside)?.name).toBe('medium');
  });

  test('are found again from their numbers, and other numbers have no word', () => {
    for (const temper of [...TEMPERS, CARD]) expect(temperOf(temper)).toBe(temper);
    expect(temperOf({ bendRatio: 0.3, neutral: 0.6 })).toBeNull();
  });

  test('alter the cover: the firmer the leather, the more it asks for at every edge', () => {
    const allowed = TEMPERS.map(({ bendRatio, neutral }) => {
      const outside = { ...tideLedger.leather.outside, bendRatio, neutral };
      return fitReport(soundJob({ ...tideLedger, leather: { outside }, pattern: { rounding_mm: 0 } })).allowances;
    });
    for (const edge of ['foreEdge', 'head', 'tail'] as const)
      for (let i = 1; i < allowed.length; i++)
        expect(nth(allowed, i)[edge].total_mm).toBeGreaterThan(nth(allowed, i - 1)[edge].total_mm);
  });
});
