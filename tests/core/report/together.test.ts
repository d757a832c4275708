import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chanceOf } from '../../../src/core/doubt/spare.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { patched } from '../../../src/core/job/jobDocument.ts';
import { together } from '../../../src/core/report/checks/together.ts';
import { defined } from '../../defined.ts';
import { doubtedDocument } from '../../doubtJob.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';
import { contextOf, designOf, doubtful } from './madeUp.ts';

const open = designOf({ version: 2 });
const of = (lengths: Parameters<typeof doubtful>[1], design = open) =>
  together(contextOf(design, doubtful(design, lengths)));

/** Phi(1), Phi(2): tables of the normal distribution. */
const [PHI1, PHI2] = [0.8413447, 0.9772499];
test('all edges at once are no surer than any of them', () => {
  checkLaw(
    fc.property(doubtedDocument, fc.integer({ min: 0, max: 8 }), (document, head) => {
      const { fitDoubt, job } = coverDesign(soundJob({ ...document, ease: { head_mm: head / 2 } }));
      const { gaps, chances } = fitDoubt;
      for (const edge of ['head', 'tail'] as const) {
        const { mean, u, room } = gaps[edge];
        expect(chances.fits()).toBeLessThanOrEqual(chanceOf({ mean: room, u }) + 1e-9);
        expect(chances.fits()).toBeLessThanOrEqual(chanceOf({ mean: job.loosest[`${edge}_mm`] - mean, u }) + 1e-9);
      }
    }),
  );
});

/** A length that is right whatever happens. */
const SURE = [2, 1e-3] as const;

describe('all edges at once', () => {
  test('hold in the product of the chances of independent lengths', () => {
    const found = of({ closed: [1, 1], flat: [2, 1], height: SURE });
    // Closed: over 0 and under 8 (Phi(7) = 1).
    expect(found.value).toBeCloseTo(PHI1 * PHI2, 6);
    expect(found).toMatchObject({ verdict: 'tight', limit: 0.95, bound: 'atLeast' });
    expect(found.message).toBe(
      'It closes, lies open, goes in at head and tail and is nowhere too loose in 82 of 100; 95 of 100 are wished. This holds if the doubts assumed are right.',
    );
    // Height: over 0 and under 2 x 4 mm.
    expect(of({ closed: SURE, flat: SURE, height: [4, 4] }).value).toBeCloseTo(2 * PHI1 - 1, 6);
  });

  test('fit from the wished share on', () => {
    const at = (mean: number) => of({ closed: [mean, 1], flat: SURE, height: SURE });
    expect(at(1.6449).verdict).toBe('fits');
    expect(at(1.6448).verdict).toBe('tight');
    expect(at(1.6449)).not.toHaveProperty('remedy');
  });

  test('fail where the cover goes on in fewer than half of the cases', () => {
    expect(of({ closed: [0.001, 1], flat: SURE, height: SURE }).verdict).toBe('tight');
    expect(of({ closed: [-0.001, 1], flat: SURE, height: SURE }).verdict).toBe('fails');
    // Each row by itself holds in 69 of 100, all of them in 33.
    expect(of({ closed: [0.5, 1], flat: [0.5, 1], height: [0.5, 1] }).verdict).toBe('fails');
  });

  test('are loose where some edge is looser than wished in more than half of the cases', () => {
    expect(of({ closed: [8.001, 1], flat: SURE, height: SURE }).verdict).toBe('loose');
    expect(of({ closed: [7.999, 1], flat: SURE, height: SURE }).verdict).toBe('tight');
    expect(of({ closed: SURE, flat: SURE, height: [8.1, 1] }).verdict).toBe('loose');
    // The head takes 2 x 1.5 mm more than the tail: it is at 4 mm at a height of 5.
    expect(of({ closed: SURE, flat: SURE, height: [5.1, 1], lean: 1.5 }).verdict).toBe('loose');
    expect(of({ closed: SURE, flat: SURE, height: [5.1, 1] }).verdict).not.toBe('loose');
  });
});

const cased = {
  format: 'coverwright-job' as const,
  version: 2 as const,
  book: { width_mm: 165, height_mm: 240, thickness_mm: 28, boardThickness_mm: 2.5 },
  leather: { outside: { min_mm: 1.5875, max_mm: 1.984375 } },
  seam: { method: 'lacing' as const },
  making: { state: 'cased' },
};
const rowOf = (document: object) => together(contextOf(coverDesign(soundJob(document))));

describe('where no size reaches the wished share', () => {
  test('the row says so and names the tests after which one does', () => {
    const { verdict, value, remedy } = rowOf(cased);
    expect(verdict).toBe('tight');
    expect(value).toBeLessThan(0.95);
    expect(remedy).toMatch(/^No size reaches 95 of 100\. This would: a shrink test (along|across)/);
    // Following it: a test that finds the usual change.
    const tested = patched(cased, [
      { path: 'making.changeAlong', value: -0.01 },
      { path: 'making.changeAcross', value: -0.01 },
    ]);
    expect(rowOf(tested).verdict).toBe('fits');
  });

  test('each test named is enough by itself, and no other', () => {
    const design = coverDesign(soundJob(cased));
    const named = defined(/This would: (.*)\.$/.exec(rowOf(cased).remedy ?? '')?.[1]).split('; or ');
    for (const { path, words } of design.fitDoubt.next()) {
      if (path !== 'making.changeAlong' && path !== 'making.changeAcross') continue;
      const reached = rowOf(patched(cased, [{ path, value: -0.01 }])).verdict === 'fits';
      expect(named.includes(words), words).toBe(reached);
    }
  });

  test('without such a test it asks for looser gaps or a narrower range of leather', () => {
    const { remedy } = rowOf({ ...cased, loosest: { foreEdge_mm: 0.2, head_mm: 0.2, tail_mm: 0.2 } });
    expect(remedy).toBe('No size reaches 95 of 100. Allow looser gaps, or choose leather of a narrower weight range.');
  });

  test('nothing is said of a size or an ease that the maker gave', () => {
    for (const given of [
      { pattern: { outsideWidth_mm: 400 } },
      { pattern: { outsideHeight_mm: 260 } },
      { ease: { foreEdge_mm: 1 } },
      { ease: { tail_mm: 1 } },
    ]) {
      const found = rowOf({ ...cased, ...given });
      expect(found.verdict).not.toBe('fits');
      expect(found.remedy).toBe('');
    }
  });
});
