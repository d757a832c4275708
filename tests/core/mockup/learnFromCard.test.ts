import { describe, expect, test, vi } from 'vitest';
import { needsAt } from '../../../src/core/allowance/needs.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { coverFit } from '../../../src/core/fold/coverFit.ts';
import { type JobDocument, patched } from '../../../src/core/job/jobDocument.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { cardDesign, cardJob } from '../../../src/core/mockup/cardDesign.ts';
import type { CardLesson, Explained } from '../../../src/core/mockup/cardLesson.ts';
import { cardTrial } from '../../../src/core/mockup/cardTrial.ts';
import { estimate } from '../../../src/core/mockup/estimate.ts';
import type { ExplanationId } from '../../../src/core/mockup/explanations.ts';
import { learnFromCard } from '../../../src/core/mockup/learnFromCard.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';
import { card, choir, NONE, tide, trial, trueJob, typed, wrapOf } from './trials.ts';

vi.mock('../../../src/core/mockup/estimate.ts', { spy: true });

describe('the card version of a pattern', () => {
  test('is sized for the card, by the same sums', () => {
    const { outside } = cardDesign(tide, card).pieces;
    // By hand: t 0.5, K 0.5, seat radius (0.5 + 0.5) 0.5; board 2.5 > 2 R, so the fore-edge seat is 2 R = 1.
    const { foreEdge_mm: ease } = coverDesign(tide).pieces.ease;
    const width = 2 * 165 + 28 + Math.PI * 0.25 + 2 * (6.35 + 1 + ease);
    const flat = 2 * 165 + 28 + 2 * 1 + 2 * (6.35 + 1 + ease);
    expect(outside.width).toBe(Math.ceil(Math.max(width, flat) / 0.5) * 0.5);
    expect(outside.width).toBeLessThan(coverDesign(tide).pieces.outside.width);
  });

  test('leaves the book and the sizes of the leather alone', () => {
    const made = cardJob({ ...tide, pattern: { ...tide.pattern, outsideWidth_mm: mm(400) } }, card);
    expect(made.book).toEqual(tide.book);
    expect(made.pattern.outsideWidth_mm).toBeNull();
    expect(cardDesign(tide, card).isCard).toBe(true);
    expect(made.leather.lining).toBeNull();
    const lined = { ...tide, leather: { ...tide.leather, lining: tide.leather.outside } };
    expect(cardJob(lined, card).leather.lining).toEqual(made.leather.outside);
    expect(made.leather.outside).toEqual({
      ...tide.leather.outside,
      min_mm: card.thickness_mm,
      max_mm: card.thickness_mm,
      neutral: card.neutral,
      bendRatio: card.bendRatio,
      foldThickness_mm: null,
    });
    expect(cardJob(tide, { ...card, cutWidth_mm: mm(390) }).pattern.outsideWidth_mm).toBe(390);
  });
});

const by = ({ explanations }: CardLesson, id: ExplanationId): Explained =>
  defined(explanations.find((each) => each.id === id));

/** The job with a paper strip put round the closed book. */
const withStrip = (job: Job, closedWrap: number): Job => ({
  ...job,
  book: { ...job.book, measured: { ...job.book.measured, closedWrap_mm: mm(closedWrap) } },
});

const { readings } = tide.mockup;
const NOT_AGAIN = { spine_mm: null, width_mm: null, rise_mm: null, height_mm: null };
const gapOf = (job: Job): number => cardTrial(job, card).spare(typed(job)).wrap;
const foreEdges = (wrap: number) => ({ ...readings, front_mm: mm(wrap), back_mm: mm(0) });

describe('learnFromCard', () => {
  test('finds the measures right where the card fits as expected, and corrects nothing', () => {
    for (const job of [tide, withStrip(tide, 358)]) {
      const lesson = learnFromCard(job, card, trial(job, NONE));
      const [likeliest] = lesson.explanations;
      expect(defined(likeliest)).toMatchObject({ id: 'asMeasured', change: [], job });
      expect(lesson).toMatchObject({ change: [], job });
    }
  });

  test('does not call the wrap known from a card alone, whose stops cannot be seen; a strip round the book settles it', () => {
    const read = trial(tide, NONE);
    const alone = learnFromCard(tide, card, read);
    expect(alone.status).toBe('undecided');
    expect(nth(alone.further, 0)).toMatchObject({ path: 'book.measured.closedWrap_mm' });
    const settled = learnFromCard(withStrip(tide, 358), card, read);
    expect(settled.status).toBe('learned');
    expect(settled.chanceOff).toBeLessThanOrEqual(0.05);
    // What was expected of the strip, against what it left.
    expect(nth(alone.further, 0).leaves / defined(settled.wrap).errorAfter).toBeCloseTo(1, 0);
  });

  test('weighs measures, folds and stops by their variances, by hand', () => {
    // Wrap only: slopes -2 (width), -1 (thickness), -pi t (K), -4 t (b), t = 0.5, and 2 (stop). Read 2 mm tighter than expected.
    const gap = gapOf(tide);
    const lesson = learnFromCard(tide, card, foreEdges(gap - 2));
    const found = by(lesson, 'asMeasured');
    const book = (2 * 0.25) ** 2 + 0.3 ** 2;
    const folds = (Math.PI * 0.5 * 0.1) ** 2 + (4 * 0.5 * 0.1) ** 2;
    const stops = (2 * 0.25) ** 2;
    const read = 2 * 0.125 ** 2;
    const all = book + folds + stops + read;
    expect(found.wrap).toEqual({
      before: 358,
      after: expect.closeTo(358 + (2 * book) / all, 5),
      errorBefore: expect.closeTo(Math.sqrt(book), 6),
      errorAfter: expect.closeTo(Math.sqrt(book - book ** 2 / all), 5),
    });
    expect(found.cardFolds).toBeCloseTo((-2 * folds) / all, 5);
    expect(found.measures).toEqual({
      width: {
        before: 165,
        after: expect.closeTo(165 + (2 * 2 * 0.0625) / all, 5),
        errorBefore: expect.closeTo(0.25, 9),
        errorAfter: expect.closeTo(Math.sqrt(0.0625 - (2 * 0.0625) ** 2 / all), 5),
      },
      thickness: {
        before: 28,
        after: expect.closeTo(28 + (2 * 0.09) / all, 5),
        errorBefore: expect.closeTo(0.3, 9),
        errorAfter: expect.closeTo(Math.sqrt(0.09 - 0.09 ** 2 / all), 5),
      },
      height: { before: 240, after: 240, errorBefore: expect.closeTo(0.25, 9), errorAfter: expect.closeTo(0.25, 9) },
    });
    expect(found.height).toEqual(found.measures.height);
    expect(found.residuals).toEqual([
      {
        name: 'gap at the fore-edges',
        of: 'wrap',
        from: 'card',
        read: expect.closeTo(gap - 2, 9),
        expected: gap,
        fitted: expect.closeTo(gap - 2 + (2 * read) / all, 5),
        deviation: expect.closeTo(-2 / Math.sqrt(all), 5),
      },
    ]);
    // Corrections are whole hundredths; a sharp book keeps its fore-edge as thick as its spine.
    const [wide, thick] = [165 + 0.25 / all, 28 + 0.18 / all].map((value) => Math.round(value * 100) / 100);
    expect(found.change).toEqual([
      { path: 'book.width_mm', value: wide },
      { path: 'book.thickness_mm', value: thick },
      { path: 'book.foreEdgeThickness_mm', value: thick },
    ]);
    expect(found.cut).toMatchObject(sizeOf(found.job));
    expect(found.iterations).toBeLessThanOrEqual(3);
    expect(found.residual).toBeLessThan(1e-7);
    // A swollen spine instead: mean 0.07 T = 1.96, variance (0.05 T)^2 = 1.96; its odds by Bayes against the measures as typed.
    const swollen = by(lesson, 'swollenSpine');
    const density = (off: number, variance: number): number =>
      Math.exp(-(off ** 2) / variance / 2) / Math.sqrt(variance);
    const odds = (0.1 * density(2 - 1.96, all + 1.96)) / density(2, all);
    expect(swollen.chance / found.chance / odds).toBeCloseTo(1, 1);
    expect(swollen.change.map(({ path }) => path)).toContain('book.thickness_mm');
    expect(swollen.job.book.thickness_mm - swollen.job.book.foreEdgeThickness_mm).toBeGreaterThan(1.5);
  });

  test('gives the wrap by the likeliest explanation, with the doubt of them all', () => {
    const lesson = learnFromCard(tide, card, foreEdges(gapOf(tide) - 3));
    const [likeliest] = lesson.explanations;
    const wrap = defined(lesson.wrap);
    expect(wrap.after).toBe(defined(likeliest).wrap.after);
    expect(lesson.explanations.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 9);
    const square = lesson.explanations.reduce(
      (sum, { chance, wrap: { after, errorAfter } }) => sum + chance * (errorAfter ** 2 + (after - wrap.after) ** 2),
      0,
    );
    expect(wrap.errorAfter).toBeCloseTo(Math.sqrt(square), 9);
    expect(wrap.errorAfter).toBeGreaterThan(defined(likeliest).wrap.errorAfter);
  });

  test('is learned up to a chance of 5 in 100 of leaving more than 0.5 mm', () => {
    const lessons = [0, 0.2, 0.4, 0.6, 0.8, 1].map((off) =>
      learnFromCard(withStrip(tide, 358 + off), card, trial(tide, NONE)),
    );
    expect(new Set(lessons.map(({ status }) => status))).toEqual(new Set(['learned', 'undecided']));
    for (const { status, chanceOff } of lessons) expect(status).toBe(chanceOff <= 0.05 ? 'learned' : 'undecided');
  });

  test('is undecided where the wrap is known and where the fault is, is not 4 to 1', () => {
    // 2 mm more round, by card and by strip: a swollen spine, or a rounded one that was taken for flat.
    const read = trial(tide, { ...NONE, width: 1 });
    const lesson = learnFromCard(withStrip(tide, 360), card, read);
    expect(lesson.chanceOff).toBeLessThan(0.05);
    expect(lesson.explanations.slice(0, 2).map(({ id }) => id)).toEqual(['swollenSpine', 'otherRise']);
    expect(nth(lesson.explanations, 0).chance).toBeLessThan(0.8);
    expect(lesson).toMatchObject({ status: 'undecided', change: [], job: withStrip(tide, 360) });
    expect(
      lesson.further
        .slice(0, 2)
        .map(({ path }) => path)
        .toSorted(),
    ).toEqual(['mockup.again.rise_mm', 'mockup.again.spine_mm']);
  });

  test('counts explanations together by which the book is as measured', () => {
    // The card 2 mm tight, the strip as typed: the stops, or the folds of the card.
    const lesson = learnFromCard(withStrip(tide, 358), card, foreEdges(gapOf(tide) - 1.5));
    expect(nth(lesson.explanations, 0).chance).toBeLessThan(0.8);
    expect(lesson.status).toBe('learned');
    expect(defined(lesson.wrap).after).toBeCloseTo(358, 0);
  });

  test('keeps a measure that changes by less than 0.005 mm as it was typed', () => {
    const gap = gapOf(tide);
    const changed = (off: number) => by(learnFromCard(tide, card, foreEdges(gap - off)), 'asMeasured').change;
    // Width takes 2 x 0.0625 / (0.3125 + 0.25 + 0.03125 + 0.0647) = 0.19 of what the gap is off, thickness 0.095.
    expect(changed(0.026)).toEqual([]);
    expect(changed(-0.028)).toEqual([{ path: 'book.width_mm', value: 164.99 }]);
    expect(changed(0.028)).toEqual([{ path: 'book.width_mm', value: 165.01 }]);
    // A width that is no whole hundredth is not rounded where it does not change.
    const inches = { ...tide, book: { ...tide.book, width_mm: mm(165.101) } };
    expect(by(learnFromCard(inches, card, trial(inches, NONE)), 'asMeasured').change).toEqual([]);
  });

  test('names the measures of the wrap that the readings cannot tell apart, and never the height', () => {
    const strip = withStrip(choir, wrapOf(choir));
    const { shared } = by(learnFromCard(strip, card, trial(choir, NONE)), 'asMeasured');
    expect(shared).toContain('width');
    expect(shared).not.toContain('height');
    // A strip does not tell the measures of the wrap apart; without a card there is nothing to learn.
    const taped = withStrip(tide, 358.5);
    expect(learnFromCard(taped, card, readings)).toMatchObject({ status: 'nothingRead', change: [], job: taped });
    const high = learnFromCard(tide, card, { ...readings, head_mm: mm(1), tail_mm: mm(1) });
    expect(by(high, 'asMeasured').shared).toEqual([]);
  });

  test('gives each change as a patch that makes the corrected job', () => {
    const errors = { width: 0.4, thickness: -0.3, rise: 0.4, height: 0.5 };
    for (const job of [choir, tide]) {
      const read = trial(job, job === choir ? errors : { ...errors, width: 1.5, rise: 0 });
      const { explanations } = learnFromCard(job, card, read);
      for (const { change, job: corrected, cut } of explanations) {
        const parsed = parseJob(patched(job as unknown as JobDocument, change));
        expect(parsed.ok && parsed.job.book.spine).toEqual(corrected.book.spine);
        expect(parsed.ok && sizeOf(parsed.job)).toEqual(cut);
      }
      const rise = explanations.find(({ id }) => id === 'otherRise');
      expect(defined(rise).change.map(({ path }) => path)).toEqual(
        expect.arrayContaining(job === choir ? ['book.spine.rise_mm'] : ['book.spine.shape', 'book.spine.rise_mm']),
      );
      expect(explanations.find(({ id }) => id === 'asMeasured')?.change.map(({ path }) => path)).not.toContain(
        'book.spine.shape',
      );
    }
  });

  test('corrects by the likeliest explanation where it is sure', () => {
    const strip = withStrip(tide, 361);
    const read = trial(tide, { ...NONE, width: 1.5 });
    const again = { ...NOT_AGAIN, spine_mm: mm(31) };
    const lesson = learnFromCard({ ...strip, mockup: { ...strip.mockup, again } }, card, read);
    const [likeliest] = lesson.explanations;
    expect(lesson).toMatchObject({ status: 'learned', change: defined(likeliest).change, job: defined(likeliest).job });
    expect(defined(likeliest)).toMatchObject({ id: 'swollenSpine' });
    expect(defined(likeliest).chance).toBeGreaterThan(0.95);
    expect(lesson.job.book.thickness_mm).toBeCloseTo(31, 0);
    expect(lesson.sentences.at(-1)).toMatch(/In leather the outside becomes .* it was /);
  });

  test('leaves the height alone where only the fore-edges were read, and the other way round', () => {
    const read = trial(tide, { ...NONE, width: 0.5, height: 0.8 });
    const wrapOnly = learnFromCard(tide, card, { ...read, head_mm: null, tail_mm: null });
    expect(wrapOnly.height).toBeNull();
    for (const { change } of wrapOnly.explanations)
      expect(change.some(({ path }) => path.includes('height'))).toBe(false);
    expect(wrapOnly.further.map(({ path }) => path)).not.toContain('mockup.again.height_mm');
    const heightOnly = learnFromCard(tide, card, { ...read, front_mm: null, back_mm: null });
    expect(heightOnly.wrap).toBeNull();
    for (const { change } of heightOnly.explanations)
      expect(['', 'book.height_mm']).toContain(change.map(({ path }) => path).join());
    expect(heightOnly.further.map(({ path }) => path)).toEqual(['mockup.again.height_mm']);
    expect(defined(heightOnly.height).after).toBeGreaterThan(240.1);
  });

  test('asks for the height again where it looks like a slip, and believes it', () => {
    const read = trial(tide, { ...NONE, height: 3 });
    const lesson = learnFromCard(tide, card, read);
    expect(nth(lesson.explanations, 0).id).toBe('heightSlip');
    expect(lesson.status).toBe('undecided');
    const again = { ...NOT_AGAIN, height_mm: mm(243) };
    const sure = learnFromCard({ ...tide, mockup: { ...tide.mockup, again } }, card, { ...read, front_mm: null });
    expect(sure.status).toBe('learned');
    expect(sure.job.book.height_mm).toBeCloseTo(243, 0);
  });

  test('learns from the angle at which a card holds the book open, and asks for it', () => {
    // Card short by the book's extra 2 mm: the opening at which it just reaches, by the fold model.
    const errors = { ...NONE, width: 0.9, thickness: 0.5 };
    const short = { ...tide, ease: { ...tide.ease, foreEdge_mm: mm(0) }, book: { ...tide.book, jointDip_mm: mm(0) } };
    const book = cardJob(trueJob(short, errors), card);
    const fit = coverFit(book, cardDesign(short, card).pieces, needsAt(book, 'thick'));
    expect(fit.closes).toBe(false);
    // The folds of thin card cannot take up 2 mm: the book does not go in at all, so the overrun is read.
    expect(fit.staysOpen).toBeNull();
    const thick = { ...card, thickness_mm: mm(2), neutral: 0.6 };
    const inThick = cardJob(trueJob(short, errors), thick);
    const held = coverFit(inThick, cardDesign(short, thick).pieces, needsAt(inThick, 'thick'));
    const opening = (defined(held.staysOpen) * 180) / Math.PI;
    expect(opening).toBeGreaterThan(0);
    const read = { ...short.mockup.readings, closes: false, opening_deg: opening, error_deg: 1 };
    const found = by(learnFromCard(short, thick, read), 'swollenSpine');
    expect(found.wrap.after - found.wrap.before).toBeGreaterThan(1.5);
    expect(found.wrap.after - found.wrap.before).toBeLessThan(2.6);
    const paths = (job: Job, change: Partial<typeof read>, sheet = thick) =>
      learnFromCard(job, sheet, { ...trial(short, errors, undefined, thick), closes: false, ...change }).further.map(
        ({ path }) => path,
      );
    const tight = { front_mm: mm(-1), back_mm: mm(-1) };
    expect(paths(short, tight)).toContain('mockup.readings.opening_deg');
    expect(paths(short, { ...tight, opening_deg: opening })).not.toContain('mockup.readings.opening_deg');
    expect(paths(short, { ...tight, closes: null as never })).not.toContain('mockup.readings.opening_deg');
    expect(paths(short, { front_mm: mm(3), back_mm: mm(3) })).not.toContain('mockup.readings.opening_deg');
  });

  test('asks for readings when there are none to use', () => {
    expect(learnFromCard(tide, card, readings).status).toBe('nothingRead');
    // One edge alone depends on where the book sits, not on the wrap.
    const one = learnFromCard(tide, card, { ...readings, front_mm: mm(3) });
    expect(one).toMatchObject({ status: 'nothingRead', explanations: [], wrap: null, height: null, further: [] });
    expect(one.sentences[0]).toContain('both fore-edges');
  });

  test('weighs no explanation whose estimate has not converged, and says which; with none left it changes nothing', () => {
    const read = trial(tide, { ...NONE, width: 1 });
    const settled = learnFromCard(tide, card, read);
    expect(settled.unweighed).toEqual([]);
    const found = vi.mocked(estimate).mock.results.at(-1)!.value;
    vi.mocked(estimate).mockReturnValueOnce({ ...found, status: 'notConverged' });
    const without = learnFromCard(tide, card, read);
    expect(without.unweighed).toEqual(['all measures are right as typed']);
    expect(without.explanations.map(({ id }) => id)).not.toContain('asMeasured');
    expect(without.explanations.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 9);
    vi.mocked(estimate).mockReturnValue({ ...found, status: 'notConverged' });
    expect(learnFromCard(tide, card, read)).toMatchObject({ status: 'notConverged', change: [], job: tide });
    vi.mocked(estimate).mockReset();
  });

  test('weighs no explanation by which the book would be impossible', () => {
    const narrow = { ...tide, book: { ...tide.book, width_mm: mm(31), foreEdgeThickness_mm: mm(28) } };
    const lesson = learnFromCard(narrow, card, foreEdges(gapOf(narrow) + 6));
    expect(lesson.unweighed).toContain('the width was measured wrongly');
  });

  test('takes a measure given as exact as exact', () => {
    const exact = { ...tide, book: { ...tide.book, measured: { ...tide.book.measured, error_mm: mm(0) } } };
    const lesson = by(learnFromCard(exact, card, trial(exact, { ...NONE, width: 0.1 })), 'asMeasured');
    expect(lesson.change).toEqual([]);
    expect(lesson.measures).toEqual({});
    expect(lesson.cardFolds).toBeLessThan(0);
  });
});

const sizeOf = (job: Job) => {
  const { width, height } = coverDesign(job).pieces.outside;
  return { width, height };
};

describe('contradictory readings', () => {
  test('are named and change nothing: more than any explanation allows', () => {
    const lesson = learnFromCard(tide, card, trial(tide, { ...NONE, width: 14 }));
    expect(lesson).toMatchObject({ status: 'contradiction', change: [], job: tide, further: [] });
    expect(lesson.sentences.join(' ')).toContain('gap at the fore-edges');
  });

  test('are explained where a slip explains them: a width 3 mm off is no contradiction', () => {
    const lesson = learnFromCard(tide, card, trial(tide, { ...NONE, width: 3 }));
    expect(lesson.status).toBe('undecided');
    expect(lesson.explanations.slice(0, 2).map(({ id }) => id)).toContain('widthSlip');
  });

  test('are explained as a slip of the strip, or of the gaps, where the strip contradicts the card', () => {
    const job = withStrip(tide, 358 + 6);
    const lesson = learnFromCard(job, card, trial(job, NONE));
    expect(nth(lesson.explanations, 0).id).toBe('stripSlip');
    expect(by(lesson, 'stripSlip').wrap.after).toBeCloseTo(358, 0);
  });

  test('are named: a card said to close that overruns, or not to close with room to spare', () => {
    const overrun = { ...readings, closes: true, front_mm: mm(-1), back_mm: mm(-1) };
    expect(learnFromCard(tide, card, overrun).sentences.join()).toContain('said to close, but overruns');
    const spare = { ...readings, closes: false, front_mm: mm(1.2), back_mm: mm(1.2) };
    expect(learnFromCard(tide, card, spare).sentences.join()).toContain('said not to close');
  });
});
