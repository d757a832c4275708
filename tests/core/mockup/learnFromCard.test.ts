import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { needsAt } from '../../../src/core/allowance/needs.ts';
import { riseOf } from '../../../src/core/book/rise.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { coverFit } from '../../../src/core/fold/coverFit.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { circularSegment } from '../../../src/core/math/circularSegment.ts';
import { cardDesign, cardJob } from '../../../src/core/mockup/cardDesign.ts';
import type { CardReadings } from '../../../src/core/mockup/cardTrial.ts';
import { learnFromCard } from '../../../src/core/mockup/learnFromCard.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { defined } from '../../defined.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw, lawCases } from '../../laws.ts';
import { nth } from '../../nth.ts';

const example = (id: string): Job => soundJob(defined(EXAMPLE_JOBS.find((entry) => entry.id === id)).document);
const tide = example('tide-ledger');
const choir = example('choir-book');
const { card } = tide.mockup;

/** How many simulated trials a statement is counted over. */
const TRIALS = lawCases();

interface Errors {
  readonly width: number;
  readonly thickness: number;
  readonly rise: number;
  readonly height: number;
}
const NONE: Errors = { width: 0, thickness: 0, rise: 0, height: 0 };

/** The job as it would be had the book been measured without error. */
const trueJob = (job: Job, { width, thickness, rise, height }: Errors): Job => ({
  ...job,
  book: {
    ...job.book,
    width_mm: mm(job.book.width_mm + width),
    thickness_mm: mm(job.book.thickness_mm + thickness),
    foreEdgeThickness_mm: mm(job.book.foreEdgeThickness_mm + thickness),
    spine: { ...job.book.spine, rise_mm: mm(riseOf(job.book) + rise) },
    height_mm: mm(job.book.height_mm + height),
  },
});

/** What a card cut from the measures of `job` shows on the book as it is, each edge read with an error. */
function trial(job: Job, errors: Errors, readingErrors = [0, 0, 0, 0], made = card): CardReadings {
  const book = cardJob(trueJob(job, errors), made);
  const fit = coverFit(book, cardDesign(job, card).pieces, needsAt(book, 'thick'));
  const [front, back, head, tail] = [fit.foreEdge.front, fit.foreEdge.back, fit.head, fit.tail].map((gap, i) =>
    mm(gap + nth(readingErrors, i)),
  );
  return { ...job.mockup.readings, front_mm: front!, back_mm: back!, head_mm: head!, tail_mm: tail! };
}

/** 2 W + P, by hand. */
const wrapOf = ({ book }: Job): number => 2 * book.width_mm + circularSegment(book.thickness_mm, riseOf(book)).arc;

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
    // Card short by the book's extra 2 mm: where it just reaches, by the fold model.
    const errors = { ...NONE, width: 0.9, thickness: 0.5 };
    const short = { ...tide, ease: { ...tide.ease, foreEdge_mm: mm(0) }, book: { ...tide.book, jointDip_mm: mm(0) } };
    const book = cardJob(trueJob(short, errors), card);
    const fit = coverFit(book, cardDesign(short, card).pieces, needsAt(book, 'thick'));
    expect(fit.closes).toBe(false);
    // Thin card turns too little to take up 2 mm: the book does not go in at all, so overrun is what can be read.
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
    // One edge alone says where the book sits, not how long the wrap is.
    const one = learnFromCard(tide, card, { ...readings, front_mm: mm(3) });
    expect(one.status).toBe('nothingRead');
    expect(one.sentences[0]).toContain('both fore-edges');
  });

  test('takes a measure said to be exact as exact', () => {
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

  test('are named: a tape that says otherwise than the card', () => {
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

  test('are rare among trials with no slip: under 2 in 100', () => {
    let named = 0;
    const draw = normals(97);
    for (let i = 0; i < TRIALS; i++) {
      const errors = { width: draw() / 2, thickness: draw() / 2, rise: 0, height: draw() / 2 };
      const noise = [draw(), draw(), draw(), draw()].map((x) => x * 0.25);
      if (learnFromCard(tide, card, trial(tide, errors, noise)).status === 'contradiction') named++;
    }
    expect(named).toBeLessThan(TRIALS / 50);
  });
});

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
    'of the %s, measured to %s mm and read to %s mm, recover what each edge sees within the reading error in 95 of 100',
    (...row) => {
      const [, ruler, reading, job, seed] = row;
      const found = trials(job, ruler, reading, seed);
      expect(found.learned).toBeGreaterThanOrEqual(0.99 * TRIALS);
      if (reading < ruler) expect(share(found.wrapsBefore, ruler)).toBeLessThan(0.7);
      // Half of the wrap is what one fore-edge sees, and one gap tells of it.
      expect(share(found.wraps, 2 * reading)).toBeGreaterThanOrEqual(0.95);
      expect(share(found.heights, 2 * reading)).toBeGreaterThanOrEqual(0.95);
      // And that was worth doing: the measures alone are within it less often.
      expect(share(found.wraps, 2 * reading)).toBeGreaterThan(share(found.wrapsBefore, 2 * reading) + 0.05);
      expect(meanSquare(found.wraps)).toBeLessThan(0.5 * meanSquare(found.wrapsBefore));
      // Two gaps read as ill as the height itself was measured say little more of it.
      if (reading < ruler) expect(meanSquare(found.heights)).toBeLessThan(0.5 * meanSquare(found.heightsBefore));
      else expect(meanSquare(found.heights)).toBeLessThan(meanSquare(found.heightsBefore));
    },
  );

  test('have the error that they state: the truth lies within 1.96 of it in 95 of 100, to three standard deviations', () => {
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
    // The count of n trials that a chance p gives strays by sqrt(p (1 - p) n).
    const astray = 3 * Math.sqrt(0.95 * 0.05 * TRIALS);
    for (const count of [wraps, heights]) expect(Math.abs(count - 0.95 * TRIALS)).toBeLessThan(astray);
  });
});

test('a corrected job is always a sound one, and the corrections explain the readings better', () => {
  checkLaw(
    fc.property(
      jobDocument,
      fc.array(fc.double({ min: -0.5, max: 0.5, noNaN: true }), { minLength: 4, maxLength: 4 }),
      (document, off) => {
        const job = soundJob(document);
        const rise = riseOf(job.book) > 1 ? nth(off, 2) : 0;
        const errors = { width: nth(off, 0), thickness: nth(off, 1), rise, height: nth(off, 3) };
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
