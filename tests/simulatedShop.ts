import type { CoverDesign } from '../src/core/fold/coverDesign.ts';
import type { Fit } from '../src/core/fold/coverFit.ts';
import { DOUBT_PATHS } from '../src/core/job/doubtSchema.ts';
import { type JobDocument, patched } from '../src/core/job/jobDocument.ts';
import type { Job } from '../src/core/job/jobSchema.ts';
import { MAKING_STATES, type MakingState } from '../src/core/job/makingSchema.ts';
import { coverLesson } from '../src/core/learning/coverLesson.ts';
import { cholesky } from '../src/core/math/cholesky.ts';
import { type Draws, normalDraw, randomDraws } from '../src/core/math/randomDraws.ts';
import { trialFits } from '../src/core/report/coverTrials.ts';
import type { CoverLesson } from '../src/core/stock/coverLessonSchema.ts';
import { HAND_DOUBTS } from '../src/core/stock/hand.ts';
import { knowLeather } from '../src/core/stock/knowLeather.ts';
import { knownPatches } from '../src/core/stock/knownPatches.ts';
import {
  bendWay,
  LEATHER_COUNT,
  PRIOR,
  UNKNOWNS,
  type Unknown,
  usualValues,
} from '../src/core/stock/leatherUnknowns.ts';
import type { Shop } from '../src/core/stock/shop.ts';
import { type StockLeather, stockLeatherSchema } from '../src/core/stock/stockSchema.ts';
import { mm } from '../src/core/units/mm.ts';
import { degreesFromRadians } from '../src/core/units/radians.ts';
import { defined } from './defined.ts';
import { soundJob } from './jobArbitrary.ts';
import { nth } from './nth.ts';

/** What is hidden from the maker: figures of a hide and of the hand; no bend ratio is below what a job may have. */
type Hidden = (unknown: Unknown) => number;

/** A shop of one maker: hides of one kind, and what is hidden of each. */
export interface SimulatedShop {
  readonly worked: MakingState;
  readonly hides: readonly { readonly leather: StockLeather; readonly hidden: Hidden }[];
}

const drawn = (covariance: readonly (readonly number[])[], draws: Draws): number[] => {
  const factor = defined(cholesky(covariance));
  const scores = covariance.map(() => normalDraw(draws));
  return factor.map((row) => row.reduce((sum, one, k) => sum + one * nth(scores, k), 0));
};

/** Draws what is hidden of a shop from the hierarchy that the knowledge is told by: kind, hides and hand. */
export function simulatedShop(seed: number, hides: number): SimulatedShop {
  const draws = randomDraws(seed);
  const worked = nth(MAKING_STATES, Math.floor(4 * draws()));
  const kind = drawn(PRIOR.kind, draws);
  const hand = PRIOR.hand.map((u) => u * normalDraw(draws));
  return {
    worked,
    hides: Array.from({ length: hides }, (_, n) => {
      const thickness = 1.2 + 1.4 * draws();
      const leather = stockLeatherSchema.parse({
        format: 'coverwright-leather',
        version: 1,
        name: `hide ${n}`,
        min_mm: thickness,
        max_mm: thickness,
        callipered_mm: [thickness],
      });
      const own = drawn(PRIOR.own, draws);
      const usual = usualValues(leather);
      const values = UNKNOWNS.map((_, i) =>
        i < LEATHER_COUNT ? nth(usual, i) + nth(kind, i) + nth(own, i) : nth(hand, i - LEATHER_COUNT),
      );
      return {
        leather,
        hidden: (unknown) =>
          Math.max(unknown.startsWith('bendRatio') ? 0.02 : -1, nth(values, UNKNOWNS.indexOf(unknown))),
      };
    }),
  };
}

/** A book of any useful size, and how its cover is made. */
export function drawnBook(draws: Draws, worked: MakingState): JobDocument {
  const between = (low: number, high: number): number => low + (high - low) * draws();
  const thickness = between(12, 60);
  const isRounded = draws() < 0.3;
  return {
    format: 'coverwright-job',
    version: 3,
    book: {
      width_mm: between(90, 240),
      height_mm: between(130, 330),
      thickness_mm: thickness,
      boardThickness_mm: between(1.5, 3),
      spine: isRounded ? { shape: 'rounded', rise_mm: between(0.05, 0.2) * thickness } : { shape: 'flat' },
    },
    leather: { outside: { min_mm: 2, max_mm: 2 } },
    pockets: { construction: draws() < 0.3 ? 'turned' : 'separate' },
    making: { state: worked, backbone: draws() < 0.2 ? 'across' : 'upright' },
    ease: {},
  };
}

/** The job of a book once it has taken what is known of the leather. */
export function jobIn(book: JobDocument, leather: StockLeather, shop: Shop, worked: MakingState): Job {
  const knowledge = knowLeather(leather, shop, { worked });
  const taken = { id: leather.name, revision: 1, leather };
  return soundJob(patched(book, knownPatches('outside', taken, knowledge, shop.hand, soundJob(book))));
}

/** The job with what is hidden of leather and hand in place of what is known, as its bends in one dimension see it; chance alone is left in doubt. */
function hiddenJob(job: Job, hidden: Hidden, of: 'wrap' | 'height', isExact: boolean): Job {
  const way = bendWay(of, job.making.backbone);
  const { state } = job.making;
  const outside = { ...job.leather.outside, neutral: hidden(`neutral.${way}`), bendRatio: hidden(`bendRatio.${way}`) };
  const exact = Object.fromEntries(DOUBT_PATHS.map((path) => [path, { u: 0 }]));
  return {
    ...job,
    leather: { ...job.leather, outside, pocket: outside },
    making: {
      ...job.making,
      changeAlong: hidden(`change.${state}.along`),
      changeAcross: hidden(`change.${state}.across`),
      hand: { margin_mm: mm(hidden('hand.margin')), cutting_mm: mm(hidden('hand.cutting')) },
    },
    book: isExact ? { ...job.book, measured: { ...job.book.measured, error_mm: mm(0) } } : job.book,
    correlations: [],
    doubts: isExact
      ? exact
      : {
          'leather.outside.neutral': { u: 0 },
          'leather.outside.bendRatio': { u: 0 },
          'making.changeAlong': { u: 0 },
          'making.changeAcross': { u: 0 },
          'seam.edgeMargin_mm': { u: HAND_DOUBTS.margin.chance },
          'pattern.outsideWidth_mm': { u: HAND_DOUBTS.cutting.chance },
          'pattern.outsideHeight_mm': { u: HAND_DOUBTS.cutting.chance },
        },
  };
}

function hiddenFit(design: CoverDesign, hidden: Hidden, of: 'wrap' | 'height', isExact: boolean, seed: number): Fit {
  return nth(trialFits({ ...design, job: hiddenJob(design.job, hidden, of, isExact) }, { draws: 1, seed }), 0);
}

/**
 * The systematic part of how far a cover comes out from what its job foretold, mm of spare wrap: the book as it was measured, no chance
 * in cutting and no error in reading, so that only what is not known of leather and hand is left.
 */
export const systematicError = (design: CoverDesign, hidden: Hidden): number =>
  hiddenFit(design, hidden, 'wrap', true, 1).closedSlack - design.fitDoubt.spare.closed.mean;

/**
 * A cover made to a job on a book that is not quite what was measured, and read: what it tells.
 * @param blunder added to one of the dimensions read, mm; 0 for none
 */
export function madeCover(
  design: CoverDesign,
  hidden: Hidden,
  draws: Draws,
  name: string,
  blunder: number,
): CoverLesson {
  const seed = Math.floor(2 ** 31 * draws());
  const wrap = hiddenFit(design, hidden, 'wrap', false, seed);
  const height = hiddenFit(design, hidden, 'height', false, seed);
  const { error_mm: error } = design.job.outcome;
  const isWrapWrong = draws() < 0.5;
  const gap = (value: number): number => value + (error / 2) * normalDraw(draws);
  const closed = wrap.closedSlack + (isWrapWrong ? blunder : 0);
  const ends = wrap.staysOpen === null || blunder !== 0 ? 0 : degreesFromRadians(wrap.staysOpen);
  // What does not close by far is told by how far it stays open.
  const isOpen = ends > 20;
  const both = height.head + height.tail + (isWrapWrong ? 0 : blunder);
  const outcome = {
    ...design.job.outcome,
    front_mm: isOpen ? null : mm(gap(closed / 2)),
    back_mm: isOpen ? null : mm(gap(closed / 2)),
    head_mm: mm(gap(both / 2)),
    tail_mm: mm(gap(both / 2)),
    closes: isOpen ? false : null,
    opening_deg: isOpen ? Math.max(0.1, Math.min(180, ends + 3 * normalDraw(draws))) : null,
  };
  return defined(coverLesson({ ...design, job: { ...design.job, outcome } }, { job: name, name }));
}

/** A shop with one more cover of a leather. */
export function withCover(leathers: readonly StockLeather[], at: number, lesson: CoverLesson): StockLeather[] {
  return leathers.map((leather, i) => (i === at ? { ...leather, covers: [...leather.covers, lesson] } : leather));
}
