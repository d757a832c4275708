import { describe, expect, test } from 'vitest';
import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { coverLesson } from '../../../src/core/learning/coverLesson.ts';
import { coverLessonSchema } from '../../../src/core/stock/coverLessonSchema.ts';
import type { Unknown } from '../../../src/core/stock/leatherUnknowns.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { degreesFromRadians } from '../../../src/core/units/radians.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';

const read = { front_mm: 1.2, back_mm: 0.9, head_mm: 0.5, tail_mm: 0.7, cracked: true, day: '2026-11-20' };

const jobWith = (changes: object): Job =>
  soundJob({
    format: 'coverwright-job',
    version: 3,
    book: { width_mm: 130, height_mm: 190, thickness_mm: 24 },
    leather: { outside: { min_mm: 2, max_mm: 2 } },
    pattern: { outsideWidth_mm: 330, outsideHeight_mm: 220 },
    pockets: { depth_mm: 60 },
    outcome: read,
    ...changes,
  });

const lessonOf = (design: CoverDesign) => defined(coverLesson(design, { job: 'a', name: 'a' }));

/** The job with one unknown of the wrap's ways a little more. */
function moved(job: Job, unknown: Unknown, by: number): Job {
  const { making, leather } = job;
  const [figure, ...rest] = unknown.split('.');
  if (figure === 'hand') return { ...job, making: { ...making, hand: { ...making.hand, [`${rest[0]}_mm`]: mm(by) } } };
  if (figure === 'change') {
    const change = { [rest[1] === 'along' ? 'changeAlong' : 'changeAcross']: -0.01 + by };
    // A turn is marked on the cut leather.
    const depth_mm = mm((60 * (0.99 + by)) / 0.99);
    return { ...job, making: { ...making, ...change }, pockets: { ...job.pockets, depth_mm } };
  }
  const outside = { ...leather.outside, [figure as 'neutral']: leather.outside[figure as 'neutral'] + by };
  return { ...job, leather: { ...leather, outside, pocket: outside } };
}

describe('what a finished cover tells', () => {
  test('hangs on leather and hand as the model does', () => {
    for (const construction of ['separate', 'turned'] as const)
      for (const backbone of ['upright', 'across'] as const) {
        const job = jobWith({ making: { state: 'cased', backbone }, pockets: { construction, depth_mm: 60 } });
        const { evidence } = lessonOf(coverDesign(job));
        for (const { of, slopes, expected_mm: expected } of evidence)
          for (const [unknown, slope] of Object.entries(slopes) as [Unknown, number][]) {
            const step = unknown.startsWith('change') ? 1e-4 : 0.01;
            const { spare } = coverDesign(moved(job, unknown, step)).fitDoubt;
            const rise = ((of === 'wrap' ? spare.closed : spare.height).mean - expected) / step;
            expect(slope / rise, `${construction} ${backbone} ${of} ${unknown}`).toBeCloseTo(1, 1);
          }
        const width = evidence.map(({ slopes }) => Object.keys(slopes).filter((each) => each.startsWith('change')));
        const [ofWrap, ofHeight] = backbone === 'upright' ? ['across', 'along'] : ['along', 'across'];
        expect(width).toEqual([[`change.cased.${ofWrap}`], [`change.cased.${ofHeight}`]]);
      }
  });

  test('is the gaps at both edges together, and of the grain what it bore', () => {
    const { evidence, cracked, strain, day } = lessonOf(coverDesign(jobWith({})));
    expect(evidence.map((each) => each.read_mm)).toEqual([2.1, 1.2]);
    expect(cracked).toBe(true);
    expect(strain).toBeCloseTo((1 - 2 / Math.PI) / (0.2 + 2 / Math.PI), 6);
    expect(day).toBe('2026-11-20');
  });

  test('is the overrun that holds the book open, where no gap can be read', () => {
    const spare = coverDesign(jobWith({})).fits.nominal.closedSlack;
    const tight = jobWith({ pattern: { outsideWidth_mm: 330 - spare - 1, outsideHeight_mm: 220 } });
    const { staysOpen, closedSlack } = coverDesign(tight).fits.nominal;
    const opening_deg = degreesFromRadians(defined(staysOpen));
    expect(opening_deg).toBeGreaterThan(10);
    const { evidence } = lessonOf(
      coverDesign({ ...tight, outcome: { ...tight.outcome, front_mm: null, closes: false, opening_deg } }),
    );
    const wrap = defined(evidence.find(({ of }) => of === 'wrap'));
    expect(wrap.read_mm).toBeCloseTo(closedSlack, 6);
    expect(wrap.expected_mm).toBeCloseTo(closedSlack, 6);
  });

  test('is the same text once it was kept and read again', () => {
    const lesson = lessonOf(coverDesign(jobWith({ pockets: { construction: 'turned', depth_mm: 60 } })));
    expect(JSON.stringify(coverLessonSchema.parse(lesson))).toBe(JSON.stringify(lesson));
  });

  test('says nothing of the wrap where closing and gaps contradict each other', () => {
    for (const outcome of [
      { front_mm: 2, back_mm: 2, closes: false },
      { front_mm: -2, back_mm: -2, closes: true },
    ]) {
      const { evidence } = lessonOf(coverDesign(jobWith({ outcome: { ...read, ...outcome } })));
      expect(evidence.map(({ of }) => of)).toEqual(['height']);
      const [agreed] = lessonOf(
        coverDesign(jobWith({ outcome: { ...read, ...outcome, closes: !outcome.closes } })),
      ).evidence;
      expect(agreed?.of).toBe('wrap');
    }
  });

  test('is nothing where nothing was read', () => {
    expect(coverLesson(coverDesign(jobWith({ outcome: {} })), { job: 'a', name: 'a' })).toBeNull();
  });
});
