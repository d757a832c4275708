import { riseOf } from '../book/rise.ts';
import type { Job } from '../job/jobSchema.ts';
import type { Card } from './cardDesign.ts';
import { priorErrors, STATED } from './priorErrors.ts';
import type { Expectation, Unknown } from './unknowns.ts';

export type ExplanationId =
  | 'asMeasured'
  | 'swollenSpine'
  | 'otherRise'
  | 'widthSlip'
  | 'heightSlip'
  | 'otherStops'
  | 'otherFolds'
  | 'stripSlip';

/** One explanation of what a card shows: what it expects of the unknowns, and how often it is the true one. */
export interface Explanation {
  readonly id: ExplanationId;
  /** In a maker's words, to be read after "likely:". */
  readonly words: string;
  /** How often it is true, before the card was tried, for each time that all measures are right. */
  readonly odds: number;
  readonly expectation: Expectation;
  /** Whether by it the book is as measured, and only a reading or the card is otherwise. */
  readonly isBookAsTyped: boolean;
}

/** What the readings of a trial say something of. */
export interface Read {
  readonly wrap: boolean;
  readonly height: boolean;
  readonly strip: boolean;
}

/** Standard deviations of the card's neutral fraction and bend ratio, as it usually folds. Assumptions. */
const FOLD_ERROR = 0.1;

/**
 * What may be wrong, and how often. Assumptions all, in want of a count of real trials; lengths in mm.
 *
 * A spine swells with the thread in it, so about in proportion to its thickness. A back that is taken for flat is rounded
 * about half as much as is usual (`riseOf`: a third of a circle rises 0.29 T). A slip is a wrong line of the ruler.
 */
const ASSUMED = {
  swollenSpine: { odds: 0.1, swellOfThickness: 0.07, errorOfThickness: 0.05 },
  otherRise: { odds: 0.1, riseOfThickness: 0.145, errorOfThickness: 0.08 },
  slip: { odds: 0.05, error: 3 },
  otherStops: { odds: 0.1, error: 1 },
  otherFolds: { odds: 0.05, error: 0.3 },
} as const;

/**
 * The explanations that the readings can tell from each other or from the measures as typed, which come first.
 * @param read what the card and the strip said something of
 */
export function explanationsOf(job: Job, card: Card, read: Read): [Explanation, ...Explanation[]] {
  const { book } = job;
  const { thickness_mm: thickness } = book;
  const errors = priorErrors(job);
  const stop = job.mockup.readings.stop_mm / STATED;
  const usual: Expectation = {
    width: { mean: book.width_mm, error: errors.width },
    thickness: { mean: thickness, error: errors.thickness },
    rise: { mean: riseOf(book), error: errors.rise },
    height: { mean: book.height_mm, error: errors.height },
    swell: { mean: 0, error: 0 },
    neutral: { mean: card.neutral, error: FOLD_ERROR },
    bendRatio: { mean: card.bendRatio, error: FOLD_ERROR },
    foreEdgeStop: { mean: 0, error: stop },
    headTailStop: { mean: 0, error: stop },
    strip: { mean: 0, error: 0 },
  };
  const { swollenSpine, otherRise, slip, otherStops, otherFolds } = ASSUMED;
  const isFlat = book.spine.shape === 'flat';
  const wider = (error: number, ...names: readonly Unknown[]): Expectation => ({
    ...usual,
    ...Object.fromEntries(names.map((name) => [name, { ...usual[name], error: Math.max(error, usual[name].error) }])),
  });
  const others: (Explanation & { readonly isTold: boolean })[] = [
    {
      id: 'swollenSpine',
      isBookAsTyped: false,
      words: 'the spine is swollen, thicker than measured',
      odds: swollenSpine.odds,
      isTold: read.wrap,
      expectation: {
        ...usual,
        swell: {
          mean: swollenSpine.swellOfThickness * thickness,
          error: swollenSpine.errorOfThickness * thickness,
        },
      },
    },
    {
      id: 'otherRise',
      isBookAsTyped: false,
      words: isFlat ? 'the spine is rounded, though taken for flat' : 'the spine is rounder or flatter than measured',
      odds: otherRise.odds,
      // An estimate of the rise doubts it already.
      isTold: read.wrap && (isFlat || book.spine.rise_mm !== null),
      expectation: {
        ...usual,
        rise: {
          mean: isFlat ? otherRise.riseOfThickness * thickness : riseOf(book),
          error: Math.max(otherRise.errorOfThickness * thickness, errors.rise),
        },
      },
    },
    {
      id: 'widthSlip',
      isBookAsTyped: false,
      words: 'the width was measured wrongly',
      odds: slip.odds,
      isTold: read.wrap,
      expectation: wider(slip.error, 'width'),
    },
    {
      id: 'heightSlip',
      isBookAsTyped: false,
      words: 'the height was measured wrongly',
      odds: slip.odds,
      isTold: read.height,
      expectation: wider(slip.error, 'height'),
    },
    {
      id: 'otherStops',
      isBookAsTyped: true,
      words: 'the gaps were read wrongly: the board edges stop elsewhere in the card',
      odds: otherStops.odds,
      isTold: true,
      expectation: wider(otherStops.error, 'foreEdgeStop', 'headTailStop'),
    },
    {
      id: 'otherFolds',
      isBookAsTyped: true,
      words: 'the card folds otherwise than assumed',
      odds: otherFolds.odds,
      isTold: true,
      expectation: wider(otherFolds.error, 'neutral', 'bendRatio'),
    },
    {
      id: 'stripSlip',
      isBookAsTyped: true,
      words: 'the paper strip round the book was measured wrongly',
      odds: slip.odds,
      isTold: read.strip,
      expectation: wider(slip.error, 'strip'),
    },
  ];
  return [
    {
      id: 'asMeasured',
      words: 'all measures are right as typed',
      odds: 1,
      isBookAsTyped: true,
      expectation: usual,
    },
    ...others.filter(({ isTold }) => isTold),
  ];
}
