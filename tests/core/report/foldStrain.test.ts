import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitReport } from '../../../src/core/fitReport.ts';
import type { JobInput } from '../../../src/core/job/jobSchema.ts';
import { outerStrain } from '../../../src/core/leather/bend.ts';
import { BREAKING_STRAIN, DAMP_GAIN } from '../../../src/core/leather/breakingStrain.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';

type Outside = Partial<JobInput['leather']['outside']>;

const reportOf = (outside: Outside, book: Partial<JobInput['book']> = {}, leather: object = {}, rest: object = {}) =>
  fitReport(
    soundJob({
      format: 'coverwright-job',
      version: 1,
      book: { width_mm: 150, height_mm: 220, thickness_mm: 30, ...book },
      leather: { outside: { min_mm: 2, max_mm: 2, ...outside }, ...leather },
      ...rest,
    }),
  );

const rowOf = (...job: Parameters<typeof reportOf>) =>
  defined(reportOf(...job).checks.find(({ id }) => id === 'foldStrain'));

/** (1 - 0.5) / (0.2 + 0.5) = 0.714 at a sharp fold. */
const HALF = { neutral: 0.5, bendRatio: 0.2 };

describe('the stretch of the grain', () => {
  test('is (1 - K) / (r/t + K), r the edge radius of the book and its lining where that is wider than the fold', () => {
    expect(rowOf(HALF).value).toBeCloseTo(0.5 / 0.7, 12);
    expect(rowOf(HALF, { cornerRadius_mm: 2 }).value).toBeCloseTo(0.5 / (1 + 0.5), 12);
    // The heavy end of the range, which bends more sharply for its thickness.
    expect(rowOf({ ...HALF, min_mm: 1 }, { cornerRadius_mm: 2 }).value).toBeCloseTo(0.5 / (1 + 0.5), 12);
    expect(rowOf(HALF, {}, { lining: { min_mm: 1, max_mm: 1 } }).value).toBeCloseTo(0.5 / (0.5 + 0.5), 12);
  });

  test('of a sharp fold in the usual leather is 43.4 % at any thickness, skived or not', () => {
    for (const [thickness, foldThickness_mm] of [
      [1, null],
      [3, null],
      [3, 1],
    ] as const)
      expect(100 * rowOf({ min_mm: thickness, max_mm: thickness, foldThickness_mm }).value).toBeCloseTo(43.43, 2);
  });
});

describe('of leather that was tested', () => {
  test('fits up to its own limit and is close past it, never worse, with figures that agree', () => {
    const strained = (strainLimit: number) => rowOf({ ...HALF, strainLimit });
    expect(strained(0.71)).toMatchObject({ verdict: 'tight', state: 'close', bound: 'atMost', limit: 0.71 });
    expect(strained(0.71).message).toBe(
      'The grain side stretches 72 % at the pressed folds of the spine; 71 % is its limit.',
    );
    expect(strained(0.72)).toMatchObject({ verdict: 'fits', remedy: '', change: [] });
    expect(strained(0.72).message).toContain('stretches 71 %');
    expect(strained(0.05).verdict).toBe('tight');
    // (1 - 0.5) / (0.5 + 0.5) is the limit itself.
    expect(rowOf({ neutral: 0.5, bendRatio: 0.5, strainLimit: 0.5 })).toMatchObject({ value: 0.5, verdict: 'fits' });
  });
});

describe('of leather that was not tested', () => {
  test('is a note between what nearly all leathers bear and what none does, and does not decide the verdict', () => {
    expect(rowOf({})).toMatchObject({ verdict: 'none', state: 'not tested', bound: null, limit: 0, change: [] });
    expect(100 * rowOf({}).value).toBeCloseTo(43.43, 2);
    expect(rowOf({}).message).toBe(
      'The grain side stretches 43 % at the pressed folds of the spine. Leathers break between 15 % and 75 %; where this one cracks is not tested.',
    );
    expect(reportOf({}).verdict).toBe('fits');
  });

  test('says which limit a test would give, and fits with it', () => {
    const [, percent] = defined(/enter (\d+) % as the strain limit\.$/.exec(rowOf({}).remedy));
    expect(rowOf({ strainLimit: Number(percent) / 100 }).verdict).toBe('fits');
    expect(rowOf({ strainLimit: (Number(percent) - 1) / 100 }).verdict).toBe('tight');
  });

  test('fits where nearly every leather bears it, and is close where none does', () => {
    // (1 - 0.5) / (r/2 + 0.5) is 0.15 at r = 5.667.
    const round = (cornerRadius_mm: number) => rowOf(HALF, { cornerRadius_mm });
    expect(round(5.7)).toMatchObject({ verdict: 'fits', bound: 'atMost', limit: BREAKING_STRAIN.least, remedy: '' });
    expect(round(5.6)).toMatchObject({ verdict: 'none', bound: null });
    // (1 - 0.5) / (b + 0.5) is 0.75 at b = 1/6.
    const sharp = (bendRatio: number) => rowOf({ neutral: 0.5, bendRatio });
    expect(sharp(0.17)).toMatchObject({ verdict: 'none' });
    expect(sharp(0.16)).toMatchObject({ verdict: 'tight', bound: 'atMost', limit: BREAKING_STRAIN.most });
    expect(sharp(0.16).message).toMatch(/; no leather is expected to bear more than 75 %\.$/);
  });
});

describe('what helps', () => {
  test('is skiving where the book gives the fold its radius, at the figure that the model then finds', () => {
    const outside = { ...HALF, strainLimit: 0.4 };
    const { remedy, change } = rowOf(outside, { cornerRadius_mm: 1 });
    // r / t of 0.75 gives 0.4: 1 mm over 1.33, skived to 1.3, where it is 0.5 / (1 / 1.3 + 0.5) = 0.394.
    expect(remedy).toContain('Skived to 1.3 mm at the folds it stretches 39 %.');
    expect(change).toEqual([{ path: 'leather.outside.foldThickness_mm', value: 1.3 }]);
    expect(rowOf({ ...outside, foldThickness_mm: 1.3 }, { cornerRadius_mm: 1 })).toMatchObject({
      verdict: 'fits',
      value: 0.5 / (1 / 1.3 + 0.5),
    });
    expect(rowOf({ ...outside, foldThickness_mm: 1.4 }, { cornerRadius_mm: 1 }).verdict).toBe('tight');
  });

  test('is not skiving at a sharp fold, nor to less than a fold can be skived to', () => {
    expect(rowOf({ ...HALF, strainLimit: 0.4 })).toMatchObject({ change: [] });
    expect(rowOf({ ...HALF, strainLimit: 0.4 }).remedy).not.toContain('Skived');
    expect(rowOf({ ...HALF, strainLimit: 0.4 }, { cornerRadius_mm: 0.44 }).remedy).not.toContain('Skived');
    expect(rowOf({ ...HALF, strainLimit: 0.4 }, { cornerRadius_mm: 0.46 }).remedy).toContain('Skived to 0.6 mm');
  });

  test('is a bead that a book with edges as round would not need, while it is not as thick as the book', () => {
    const { remedy } = rowOf({ ...HALF, strainLimit: 0.4 });
    expect(remedy).toContain('Over a bead of 1.5 mm radius in each fold it stretches 40 %; the wrap grows with it.');
    expect(rowOf({ ...HALF, strainLimit: 0.4 }, { cornerRadius_mm: 1.5 }).verdict).toBe('fits');
    expect(rowOf({ ...HALF, strainLimit: 0.4 }, { cornerRadius_mm: 1.4 }).verdict).toBe('tight');
    const thin = { thickness_mm: 12, boardThickness_mm: 2 };
    expect(rowOf({ ...HALF, strainLimit: 0.15 }, thin).remedy).toContain('bead of 5.7 mm');
    expect(rowOf({ ...HALF, strainLimit: 0.14 }, thin).remedy).toBe(
      'Choose a leather that bears a sharper fold. Try an offcut first.',
    );
  });

  test('is in 64ths of an inch in a job worked in inches', () => {
    const inches = { work: { units: 'in' } };
    const outside = { ...HALF, strainLimit: 0.4 };
    // 1 mm over 0.75 is 1.33 mm: 3/64 in (1.19) holds it, 4/64 (1.59) does not.
    const { remedy, change } = rowOf(outside, { cornerRadius_mm: 1 }, {}, inches);
    expect(remedy).toContain('Skived to 3/64 in at the folds it stretches 37 %.');
    expect(change).toEqual([{ path: 'leather.outside.foldThickness_mm', value: (3 / 64) * 25.4 }]);
    // 0.75 of 2 mm: 4/64 in (1.59 mm) is the next step up.
    expect(remedy).toContain('Over a bead of 1/16 in radius');
  });

  test('is damping where the gain that is assumed of it reaches the stretch, never a sharper fold', () => {
    const gained = (strainLimit: number) => rowOf({ ...HALF, strainLimit }).remedy;
    expect(gained(0.58)).toContain('Folded damp (cased) it is taken to bear 72 %, an assumption.');
    expect(gained(0.57)).not.toContain('damp');
    expect(rowOf({ ...HALF, strainLimit: 0.58 * DAMP_GAIN }).verdict).toBe('fits');
  });

  test('does in the model what the row says of it, for any leather and edge', () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    let [skived, beaded] = [0, 0];
    checkLaw(
      fc.property(
        fc.record({
          thickness: between(0.8, 4),
          neutral: between(0.4, 0.8),
          bendRatio: between(0.02, 1),
          cornerRadius_mm: between(0, 8),
          share: between(0.5, 0.999),
        }),
        ({ thickness, neutral, bendRatio, cornerRadius_mm, share }) => {
          const outside = { min_mm: thickness, max_mm: thickness, neutral, bendRatio };
          const strainLimit = Math.max(0.05, share * rowOf(outside, { cornerRadius_mm }).value);
          const { change, remedy, verdict, value } = rowOf({ ...outside, strainLimit }, { cornerRadius_mm });
          expect(verdict).toBe(value > strainLimit ? 'tight' : 'fits');
          if (verdict === 'fits') return;
          for (const { value: foldThickness_mm } of change) {
            skived++;
            const mended = rowOf(
              { ...outside, strainLimit, foldThickness_mm: Number(foldThickness_mm) },
              { cornerRadius_mm },
            );
            expect(mended.verdict).toBe('fits');
            expect(remedy).toContain(`it stretches ${Math.floor(100 * mended.value)} %`);
          }
          const bead = /bead of ([\d.]+) mm/.exec(remedy);
          if (bead === null) return;
          beaded++;
          expect(outerStrain(Number(bead[1]), thickness, neutral)).toBeLessThanOrEqual(strainLimit + 1e-9);
        },
      ),
    );
    expect(skived).toBeGreaterThan(10);
    expect(beaded).toBeGreaterThan(50);
  });
});
