import { describe, expect, test, vi } from 'vitest';
import { needsAt } from '../../../src/core/allowance/needs.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { coverFit } from '../../../src/core/fold/coverFit.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { cardDesign, cardJob } from '../../../src/core/mockup/cardDesign.ts';
import { cardTrial } from '../../../src/core/mockup/cardTrial.ts';
import { estimate } from '../../../src/core/mockup/estimate.ts';
import { learnFromCard } from '../../../src/core/mockup/learnFromCard.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { defined } from '../../defined.ts';
import { card, choir, NONE, tide, trial, trueJob } from './trials.ts';

vi.mock('../../../src/core/mockup/estimate.ts', { spy: true });

describe('the card version of a pattern', () => {
  test('is sized for the card, by the same sums', () => {
    const { outside } = cardDesign(tide, card).pieces;
    // By hand: t 0.5, K 0.5, seat radius (0.5 + 0.5) 0.5; board 2.5 > 2 R, so the fore-edge seat is 2 R = 1.
    const width = 2 * 165 + 28 + Math.PI * 0.25 + 2 * (6.35 + 1 + 1);
    const flat = 2 * 165 + 28 + 2 * 1 + 2 * (6.35 + 1 + 1);
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

describe('learnFromCard', () => {
  test('changes nothing when the card fits as expected', () => {
    const lesson = learnFromCard(tide, card, trial(tide, NONE));
    expect(lesson.status).toBe('learned');
    expect(lesson.change).toEqual([]);
    expect(lesson.job).toEqual(tide);
  });

  test('shares what one reading of the wrap says between width and thickness, by hand', () => {
    // A book 2 mm longer round: slopes -2 (width) and -1 (thickness), prior variance 0.25 each.
    const lesson = learnFromCard(tide, card, trial(tide, { ...NONE, width: 1 }));
    const { width, thickness, height } = lesson.measures;
    expect((width!.after - 165) / (thickness!.after - 28)).toBeCloseTo(2, 2);
    // The seats of the card are common to all edges, so the height moves a little with them.
    expect(Math.abs(height!.after - 240)).toBeLessThan(0.05);
    // Gain: 1.25 over 1.25 + reading 0.125 + folds: 2 seats of 2 R (slope 2 t = 1 each) and pi t of K, at 0.1 each.
    const folds = (2 * 2 * 0.5 * 0.1) ** 2 + (Math.PI * 0.5 * 0.1) ** 2;
    expect(lesson.wrap.after - lesson.wrap.before).toBeCloseTo((2 * 1.25) / (1.25 + 0.125 + folds), 2);
    expect(lesson.undecided).toEqual(['width', 'thickness']);
    expect(lesson.sentences.join(' ')).toContain('cannot say whether width or thickness was off');
    expect(lesson.sentences.join(' ')).toMatch(/In leather the outside becomes .* it was /);
  });

  test('weighs measures against folds by their variances, by hand', () => {
    // Wrap only: slopes -2 (width), -1 (thickness), -pi t (K) and -4 t (b), t = 0.5. Card read 2 mm tighter than expected.
    const gap = cardTrial(tide, card, tide.mockup.readings).gaps([165, 28, 0, 240, 0.5, 0.5]).wrap;
    const lesson = learnFromCard(tide, card, { ...tide.mockup.readings, front_mm: mm(gap - 2), back_mm: mm(0) });
    const book = (2 * 0.5) ** 2 + 0.5 ** 2;
    const folds = (Math.PI * 0.5 * 0.1) ** 2 + (4 * 0.5 * 0.1) ** 2;
    const all = book + folds + 2 * 0.25 ** 2;
    expect(lesson.wrap).toEqual({
      before: 358,
      after: expect.closeTo(358 + (2 * book) / all, 5),
      errorBefore: expect.closeTo(Math.sqrt(book), 6),
      errorAfter: expect.closeTo(Math.sqrt(book - book ** 2 / all), 5),
    });
    expect(lesson.cardFolds).toBeCloseTo((-2 * folds) / all, 5);
    expect(lesson.measures).toEqual({
      width: {
        before: 165,
        after: expect.closeTo(165 + (2 * 2 * 0.25) / all, 5),
        errorBefore: 0.5,
        errorAfter: expect.closeTo(Math.sqrt(0.25 - 0.25 / all), 5),
      },
      thickness: {
        before: 28,
        after: expect.closeTo(28 + (2 * 0.25) / all, 5),
        errorBefore: 0.5,
        errorAfter: expect.closeTo(Math.sqrt(0.25 - 0.0625 / all), 5),
      },
      height: { before: 240, after: 240, errorBefore: 0.5, errorAfter: 0.5 },
    });
    expect(lesson.height).toEqual(lesson.measures.height);
    expect(lesson.residuals).toEqual([
      {
        name: 'gap at the fore-edges',
        of: 'wrap',
        from: 'card',
        read: expect.closeTo(gap - 2, 9),
        expected: gap,
        fitted: expect.closeTo(gap - 2 + (2 * 2 * 0.25 ** 2) / all, 5),
        deviation: expect.closeTo(-2 / Math.sqrt(all), 5),
      },
    ]);
    // Corrections are whole hundredths; a sharp book keeps its fore-edge as thick as its spine.
    const [wide, thick] = [165 + 1 / all, 28 + 0.5 / all].map((value) => Math.round(value * 100) / 100);
    expect(lesson.change).toEqual([
      { path: 'book.width_mm', value: wide },
      { path: 'book.thickness_mm', value: thick },
      { path: 'book.foreEdgeThickness_mm', value: thick },
    ]);
    expect(lesson.iterations).toBeLessThanOrEqual(3);
    expect(lesson.residual).toBeLessThan(1e-7);
  });

  test('keeps a measure that changes by less than 0.005 mm as it was typed', () => {
    const gap = cardTrial(tide, card, tide.mockup.readings).gaps([165, 28, 0, 240, 0.5, 0.5]).wrap;
    // Width takes 0.347 of what the gap is off, thickness 0.174 (see above).
    const changed = (off: number) =>
      learnFromCard(tide, card, { ...tide.mockup.readings, front_mm: mm(gap - off), back_mm: mm(0) }).change;
    expect(changed(0.014)).toEqual([]);
    expect(changed(-0.015)).toEqual([{ path: 'book.width_mm', value: 164.99 }]);
    expect(changed(0.015)).toEqual([{ path: 'book.width_mm', value: 165.01 }]);
    // A width that is no whole hundredth is not rounded where it does not change.
    const inches = { ...tide, book: { ...tide.book, width_mm: mm(165.101) } };
    expect(learnFromCard(inches, card, trial(inches, NONE)).change).toEqual([]);
  });

  test('calls the measures of the wrap undecided, which the readings cannot tell apart, and never the height', () => {
    const lesson = learnFromCard(choir, card, trial(choir, NONE));
    expect(lesson.undecided).toContain('width');
    expect(lesson.undecided).not.toContain('height');
    // A tape does not tell the measures of the wrap apart; without a card there is nothing to learn.
    const taped = { ...tide, book: { ...tide.book, measured: { ...tide.book.measured, closedWrap_mm: mm(358.5) } } };
    const alone = learnFromCard(taped, card, tide.mockup.readings);
    expect(alone).toMatchObject({ status: 'nothingRead', change: [], job: taped });
    expect(learnFromCard(tide, card, { ...tide.mockup.readings, head_mm: mm(1), tail_mm: mm(1) }).undecided).toEqual(
      [],
    );
  });

  test('gives the change as a patch that makes the corrected job', () => {
    const lesson = learnFromCard(
      choir,
      choir.mockup.card,
      trial(choir, { width: 0.4, thickness: -0.3, rise: 0.4, height: 0.5 }),
    );
    expect(lesson.change.map(({ path }) => path)).toContain('book.spine.rise_mm');
    const document = structuredClone(choir) as unknown as Record<string, Record<string, unknown>>;
    for (const { path, value } of lesson.change) {
      const keys = path.split('.');
      const last = defined(keys.pop());
      const holder = keys.reduce<Record<string, unknown>>((at, key) => at[key] as Record<string, unknown>, document);
      expect(holder).toHaveProperty(last);
      holder[last] = value;
    }
    const parsed = parseJob(document);
    expect(parsed.ok && coverDesign(parsed.job).pieces.outside.width).toBe(
      coverDesign(lesson.job).pieces.outside.width,
    );
  });

  test('leaves the height alone where only the fore-edges were read, and the other way round', () => {
    const read = trial(tide, { ...NONE, width: 0.5, height: 0.8 });
    const wrapOnly = learnFromCard(tide, card, { ...read, head_mm: null, tail_mm: null });
    expect(wrapOnly.change.some(({ path }) => path.includes('height'))).toBe(false);
    const heightOnly = learnFromCard(tide, card, { ...read, front_mm: null, back_mm: null });
    expect(heightOnly.change.map(({ path }) => path)).toEqual(['book.height_mm']);
    expect(heightOnly.height.after).toBeGreaterThan(240.5);
  });

  test('learns from the angle at which a card holds the book open', () => {
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
    expect(held.staysOpen).toBeGreaterThan(0);
    const opening = (defined(held.staysOpen) * 180) / Math.PI;
    const lesson = learnFromCard(short, thick, {
      ...short.mockup.readings,
      closes: false,
      opening_deg: opening,
      error_deg: 1,
    });
    expect(lesson.status).toBe('learned');
    expect(lesson.wrap.after - lesson.wrap.before).toBeGreaterThan(1.5);
    expect(lesson.wrap.after - lesson.wrap.before).toBeLessThan(2.4);
  });

  test('asks for readings when there are none to use', () => {
    const { readings } = tide.mockup;
    expect(learnFromCard(tide, card, readings).status).toBe('nothingRead');
    // One edge alone depends on where the book sits, not on the wrap.
    const one = learnFromCard(tide, card, { ...readings, front_mm: mm(3) });
    expect(one.status).toBe('nothingRead');
    expect(one.sentences[0]).toContain('both fore-edges');
  });

  test('changes nothing where the estimate has not converged', () => {
    const readings = trial(tide, { ...NONE, width: 1 });
    const settled = learnFromCard(tide, card, readings);
    expect(settled.change.length).toBeGreaterThan(0);
    const found = vi.mocked(estimate).mock.results.at(-1)!.value;
    vi.mocked(estimate).mockReturnValueOnce({ ...found, status: 'notConverged' });
    expect(learnFromCard(tide, card, readings)).toMatchObject({ status: 'notConverged', change: [], job: tide });
  });

  test('takes a measure given as exact as exact', () => {
    const exact = { ...tide, book: { ...tide.book, measured: { ...tide.book.measured, error_mm: mm(0) } } };
    const lesson = learnFromCard(exact, card, trial(exact, { ...NONE, width: 0.1 }));
    expect(lesson.change).toEqual([]);
    expect(lesson.cardFolds).toBeLessThan(0);
  });
});

describe('contradictory readings', () => {
  test('are named and change nothing: more than the errors explain', () => {
    const lesson = learnFromCard(tide, card, trial(tide, { ...NONE, width: 3 }));
    expect(lesson.status).toBe('contradiction');
    expect(lesson.change).toEqual([]);
    expect(lesson.job).toBe(tide);
    expect(lesson.sentences.join(' ')).toContain('gap at the fore-edges');
  });

  test('are named: a tape that contradicts the card', () => {
    const measured = { ...tide.book.measured, closedWrap_mm: mm(358 + 3.6) };
    const job = { ...tide, book: { ...tide.book, measured } };
    const lesson = learnFromCard(job, card, trial(job, { ...NONE, width: -0.6 }));
    expect(lesson.status).toBe('contradiction');
    expect(lesson.sentences.some((sentence) => sentence.includes('closed wrap'))).toBe(true);
  });

  test('are named: a card said to close that overruns, or not to close with room to spare', () => {
    const overrun = { ...tide.mockup.readings, closes: true, front_mm: mm(-1), back_mm: mm(-1) };
    expect(learnFromCard(tide, card, overrun).sentences.join()).toContain('said to close, but overruns');
    const spare = { ...tide.mockup.readings, closes: false, front_mm: mm(1.2), back_mm: mm(1.2) };
    expect(learnFromCard(tide, card, spare).sentences.join()).toContain('said not to close');
  });
});
