import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { riseOf } from '../../../src/core/book/rise.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { learnFromCard } from '../../../src/core/mockup/learnFromCard.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { defined } from '../../defined.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw, lawCases } from '../../laws.ts';
import { drawnBook, explanationsFor, learn, normals, readAlso, simulate, wrongWrap } from './simulatedBooks.ts';
import { card, choir, tide, trial } from './trials.ts';

/** How many simulated trials a statement is counted over. */
const TRIALS = lawCases(2);

const STRIP = 'book.measured.closedWrap_mm';

const withErrors = (job: Job, ruler: number, reading: number): Job => ({
  ...job,
  book: { ...job.book, measured: { ...job.book.measured, error_mm: mm(ruler) } },
  mockup: { ...job.mockup, readings: { ...job.mockup.readings, error_mm: mm(reading) } },
});

/** Root of the mean square. */
const typical = (errors: readonly number[]): number =>
  Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / errors.length);

describe('simulated trials in which all measures are right within their errors', () => {
  test.each([
    ['tide ledger', 0.5, 0.25, tide, 71],
    ['choir book, rounded back', 0.5, 0.25, choir, 72],
    ['tide ledger', 1, 0.5, tide, 73],
  ])('of the %s, measured to %s mm and read to %s mm, teach more of the wrap with each reading', (...row) => {
    const [, ruler, reading, book, seed] = row;
    const job = withErrors(book, ruler, reading);
    const draw = normals(seed);
    const [usual] = explanationsFor(job);
    const wrong = { typed: [] as number[], card: [] as number[], strip: [] as number[] };
    for (let i = 0; i < TRIALS; i++) {
      const simulated = simulate(job, drawnBook(usual, draw), draw);
      const before = simulated.trial.bareWrap(drawnBook(usual, () => 0));
      wrong.typed.push(before - simulated.trial.bareWrap(simulated.truth));
      wrong.card.push(wrongWrap(simulated, learn(simulated)));
      const taped = readAlso(simulated, STRIP, draw);
      wrong.strip.push(wrongWrap(taped, learn(taped)));
    }
    const [typed, cardOnly, strip] = [typical(wrong.typed), typical(wrong.card), typical(wrong.strip)];
    expect(cardOnly).toBeLessThan(0.9 * typed);
    expect(strip).toBeLessThan(0.8 * cardOnly);
  });
});

test('the doubt stated is that of the trials: drawn from all explanations, the wrap is off by it, root mean square', () => {
  const draw = normals(79);
  const explanations = explanationsFor(tide);
  const odds = explanations.reduce((sum, each) => sum + each.odds, 0);
  const [off, stated] = [[] as number[], [] as number[]];
  for (const each of explanations)
    for (let i = 0; i < (2 * TRIALS * each.odds) / odds; i++) {
      const simulated = simulate(tide, drawnBook(each, draw), draw);
      const lesson = learn(simulated);
      if (lesson.wrap === null) continue;
      off.push(wrongWrap(simulated, lesson));
      stated.push(lesson.wrap.errorAfter);
    }
  // The root mean square of n normal errors varies by 1 / sqrt(2 n) of itself; a mixture has longer tails: twice that.
  expect(Math.abs(typical(off) / typical(stated) - 1)).toBeLessThan((3 * 2) / Math.sqrt(2 * off.length));
});

test('a corrected job is always valid by each explanation, and corrections within the errors explain the readings better', () => {
  checkLaw(
    fc.property(
      jobDocument,
      fc.array(fc.double({ min: -0.5, max: 0.5, noNaN: true }), { minLength: 4, maxLength: 4 }),
      (document, off) => {
        const job = soundJob(document);
        const rise = riseOf(job.book) > 1 ? off[2]! : 0;
        const errors = { width: off[0]!, thickness: off[1]!, rise, height: off[3]! };
        const { explanations } = learnFromCard(job, card, trial(job, errors));
        expect(explanations.length).toBeGreaterThan(0);
        for (const { job: corrected } of explanations) expect(parseJob(corrected).ok).toBe(true);
        const { residuals } = defined(explanations.find(({ id }) => id === 'asMeasured'));
        const cost = (of: 'expected' | 'fitted'): number =>
          residuals.reduce((sum, residual) => sum + (residual.read - residual[of]) ** 2, 0);
        expect(cost('fitted')).toBeLessThanOrEqual(cost('expected') + 1e-9);
      },
    ),
    { cost: 10 },
  );
});
