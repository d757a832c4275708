import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { cutStep } from '../../../src/core/job/workSchema.ts';
import { patternDrawing } from '../../../src/core/pattern/patternDrawing.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';
import { constructedJob } from '../../property/constructionArbitrary.ts';

const job = {
  format: 'coverwright-job',
  version: 1,
  book: { width_mm: 165, height_mm: 240, thickness_mm: 28 },
  leather: { outside: { min_mm: 1.6, max_mm: 2 } },
};

describe('the unit that a job is worked in', () => {
  test('is the millimetre where the job says nothing, and sizes are then rounded as the pattern says', () => {
    expect(soundJob(job).work).toEqual({ units: 'mm', cutStep_mm: null });
    expect(cutStep(soundJob({ ...job, pattern: { rounding_mm: 2 } }))).toBe(2);
    expect(cutStep(soundJob({ ...job, work: { cutStep_mm: 1 } }))).toBe(1);
  });

  test.each([
    [null, 1.5875],
    [1.588, 1.5875],
    [1.5875, 1.5875],
    [0.794, 0.79375],
  ])('may be the inch: a written step of %s mm is taken as exactly %f mm', (cutStep_mm, step) => {
    const worked = soundJob({ ...job, work: { units: 'in', cutStep_mm }, pattern: { rounding_mm: 2 } });
    expect(cutStep(worked)).toBe(step);
    expect(soundJob(JSON.parse(JSON.stringify(worked)))).toEqual(worked);
  });

  test.each([1.6, 3.175, 0.5, 0])('refuses a step of %f mm in an inch job and says what is allowed', (cutStep_mm) => {
    const parsed = parseJob({ ...job, work: { units: 'in', cutStep_mm } });
    expect(parsed).toMatchObject({
      ok: false,
      issues: [
        {
          code: 'rule',
          path: 'work.cutStep_mm',
          got: String(cutStep_mm),
          allowed: '1.5875 (1/16 in) or 0.79375 (1/32 in) in a job worked in inches',
          remedy: 'choose one of the two, or null for 1/16 in',
        },
      ],
    });
  });

  test.each([{ units: 'cm' }, { units: 'in', step: 1 }, 'in'])('refuses what is no unit: %j', (work) => {
    const parsed = parseJob({ ...job, work });
    expect(!parsed.ok && parsed.issues.every(({ path }) => path.startsWith('work'))).toBe(true);
  });

  test('puts every size that the tool decides on the cut step', () => {
    checkLaw(
      fc.property(constructedJob, fc.constantFrom(null, 1.5875, 0.79375), (document, cutStep_mm) => {
        const construction = { ...document.construction, ribbon: {} };
        const design = coverDesign(soundJob({ ...document, construction, work: { units: 'in', cutStep_mm } }));
        const { outside, pocket, lining, pocketDepth } = design.pieces;
        const drawing = patternDrawing(design);
        const decided = [
          pocketDepth,
          ...[outside, pocket, lining].flatMap((piece) => (piece === null ? [] : [piece.width, piece.height])),
          ...drawing.pieces.filter(({ id }) => id === 'strap' || id === 'penLoop').map(({ width }) => width),
          ...drawing.lengths.map(({ sum }) => sum.total),
        ];
        const step = cutStep_mm ?? 1.5875;
        for (const size of decided) expect(Math.abs(size / step - Math.round(size / step)) * step).toBeLessThan(1e-6);
      }),
    );
  });
});
