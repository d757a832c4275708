import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { riseOf } from '../../../src/core/book/rise.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { learnFromCard } from '../../../src/core/mockup/learnFromCard.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw, lawCases } from '../../laws.ts';
import { card, choir, tide, trial, trueJob, wrapOf } from './trials.ts';

/** How many simulated trials a statement is counted over. */
const TRIALS = lawCases();

/** Uniform numbers in [0, 1) from a seed (mulberry32, from memory). */
function uniforms(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Standard normal numbers from a seed (Box and Muller 1958). */
function normals(seed: number): () => number {
  const uniform = uniforms(seed);
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** Recovers hidden errors of the measures from as many cards; errors of wrap and height, before and after, mm. */
function trials(document: Job, ruler: number, reading: number, seed: number) {
  const measured = { ...document.book.measured, error_mm: mm(ruler) };
  const readings = { ...document.mockup.readings, error_mm: mm(reading) };
  const job: Job = {
    ...document,
    book: { ...document.book, measured },
    mockup: { ...document.mockup, readings },
  };
  const uniform = uniforms(seed);
  const off = (limit: number): number => (2 * uniform() - 1) * limit;
  const isRounded = job.book.spine.shape === 'rounded';
  const found = { learned: 0, wraps: [] as number[], heights: [] as number[] };
  const before = { wrapsBefore: [] as number[], heightsBefore: [] as number[] };
  for (let i = 0; i < TRIALS; i++) {
    const errors = { width: off(ruler), thickness: off(ruler), rise: isRounded ? off(ruler) : 0, height: off(ruler) };
    const lesson = learnFromCard(job, card, trial(job, errors, [reading, reading, reading, reading].map(off)));
    const truth = trueJob(job, errors);
    if (lesson.status === 'learned') found.learned++;
    found.wraps.push(Math.abs(wrapOf(lesson.job) - wrapOf(truth)));
    found.heights.push(Math.abs(lesson.job.book.height_mm - truth.book.height_mm));
    before.wrapsBefore.push(Math.abs(wrapOf(job) - wrapOf(truth)));
    before.heightsBefore.push(Math.abs(errors.height));
  }
  return { ...found, ...before };
}

const share = (errors: readonly number[], limit: number): number =>
  errors.filter((error) => error <= limit).length / errors.length;

const meanSquare = (errors: readonly number[]): number =>
  errors.reduce((sum, error) => sum + error * error, 0) / errors.length;

describe('simulated trials with hidden measuring errors', () => {
  // Every measure off by up to the ruler's error, every gap read off by up to the error that the maker states for it, either
  // way and evenly. A wrap is the sum of two gaps, so its reading can be off by twice that error: at the usual 0.25 mm that
  // is the ruler's own 0.5 mm.
  test.each([
    ['tide ledger', 0.5, 0.25, tide, 71],
    ['choir book, rounded back', 0.5, 0.25, choir, 72],
    ['tide ledger', 1, 0.5, tide, 73],
    ['tide ledger', 0.5, 0.5, tide, 75],
    ['choir book, rounded back', 0.5, 0.5, choir, 76],
  ])(
    'of the %s, measured to %s mm and read to %s mm, recover wrap and height within the reading error in 95 of 100',
    (...row) => {
      const [, ruler, reading, job, seed] = row;
      const found = trials(job, ruler, reading, seed);
      expect(found.learned).toBeGreaterThanOrEqual(0.99 * TRIALS);
      if (reading < ruler) expect(share(found.wrapsBefore, ruler)).toBeLessThan(0.7);
      // One fore-edge depends on half the wrap, and shows as one gap.
      expect(share(found.wraps, 2 * reading)).toBeGreaterThanOrEqual(0.95);
      expect(share(found.heights, 2 * reading)).toBeGreaterThanOrEqual(0.95);
      // Without the trial the measures are within it less often.
      expect(share(found.wraps, 2 * reading)).toBeGreaterThan(share(found.wrapsBefore, 2 * reading) + 0.05);
      expect(meanSquare(found.wraps)).toBeLessThan(0.5 * meanSquare(found.wrapsBefore));
      // Two gaps read with the error of the height itself add little to it.
      if (reading < ruler) expect(meanSquare(found.heights)).toBeLessThan(0.5 * meanSquare(found.heightsBefore));
      else expect(meanSquare(found.heights)).toBeLessThan(meanSquare(found.heightsBefore));
    },
  );

  test('have the error that they state: the true value is within 1.96 of it in 95 of 100, to three standard deviations', () => {
    const draw = normals(73);
    let [wraps, heights] = [0, 0];
    for (let i = 0; i < TRIALS; i++) {
      const errors = { width: draw() / 2, thickness: draw() / 2, rise: draw() / 2, height: draw() / 2 };
      const noise = [draw(), draw(), draw(), draw()].map((x) => x * 0.25);
      const made = { ...card, neutral: card.neutral + 0.1 * draw(), bendRatio: card.bendRatio + 0.1 * draw() };
      const lesson = learnFromCard(choir, card, trial(choir, errors, noise, made));
      const truth = trueJob(choir, errors);
      if (Math.abs(lesson.wrap.after - wrapOf(truth)) <= 1.96 * lesson.wrap.errorAfter) wraps++;
      if (Math.abs(lesson.height.after - truth.book.height_mm) <= 1.96 * lesson.height.errorAfter) heights++;
    }
    // The count in n trials of chance p has the standard deviation sqrt(p (1 - p) n).
    const astray = 3 * Math.sqrt(0.95 * 0.05 * TRIALS);
    for (const count of [wraps, heights]) expect(Math.abs(count - 0.95 * TRIALS)).toBeLessThan(astray);
  });
});

test('contradictory readings are rare among trials with no slip: under 2 in 100', () => {
  let named = 0;
  const draw = normals(97);
  for (let i = 0; i < TRIALS; i++) {
    const errors = { width: draw() / 2, thickness: draw() / 2, rise: 0, height: draw() / 2 };
    const noise = [draw(), draw(), draw(), draw()].map((x) => x * 0.25);
    if (learnFromCard(tide, card, trial(tide, errors, noise)).status === 'contradiction') named++;
  }
  expect(named).toBeLessThan(TRIALS / 50);
});

test('a corrected job is always valid, and the corrections explain the readings better', () => {
  checkLaw(
    fc.property(
      jobDocument,
      fc.array(fc.double({ min: -0.5, max: 0.5, noNaN: true }), { minLength: 4, maxLength: 4 }),
      (document, off) => {
        const job = soundJob(document);
        const rise = riseOf(job.book) > 1 ? off[2]! : 0;
        const errors = { width: off[0]!, thickness: off[1]!, rise, height: off[3]! };
        const lesson = learnFromCard(job, card, trial(job, errors));
        fc.pre(lesson.status === 'learned');
        expect(parseJob(lesson.job).ok).toBe(true);
        const cost = (of: 'expected' | 'fitted'): number =>
          lesson.residuals.reduce((sum, residual) => sum + (residual.read - residual[of]) ** 2, 0);
        expect(cost('fitted')).toBeLessThanOrEqual(cost('expected') + 1e-9);
      },
    ),
    { cost: 2 },
  );
});
