import { DOUBTS } from '../doubt/doubtOf.ts';
import type { Job } from '../job/jobSchema.ts';
import { MAKING_STATES } from '../job/makingSchema.ts';
import { TEMPERS, type Temper } from '../leather/temper.ts';
import { usualChange } from '../leather/usualChange.ts';
import { WAYS, type Way } from '../leatherTest/testSchema.ts';
import { HAND_DOUBTS } from './hand.ts';

type Figure = 'neutral' | 'bendRatio' | `change.${(typeof MAKING_STATES)[number]}`;

/** What tests and covers teach of a leather: K, bend ratio, and for each way of making the change of size; along and across the backbone. */
export type LeatherUnknown = `${Figure}.${Way}`;

/** What covers teach of the maker's hand. */
type HandUnknown = 'hand.margin' | 'hand.cutting';

export type Unknown = LeatherUnknown | HandUnknown;

const FIGURES: readonly Figure[] = [
  'neutral',
  'bendRatio',
  ...MAKING_STATES.map((state) => `change.${state}` as const),
];

const OF_LEATHER = FIGURES.flatMap((figure) => WAYS.map((way): LeatherUnknown => `${figure}.${way}`));

/** The unknowns of a leather, then those of the hand: the order of every vector here. */
export const UNKNOWNS: readonly [Unknown, ...Unknown[]] = [
  'neutral.along',
  ...OF_LEATHER.slice(1),
  'hand.margin',
  'hand.cutting',
];

/** Number of unknowns of a leather. */
export const LEATHER_COUNT = OF_LEATHER.length;

/** Correlation of one figure along and across the backbone, and of the change of size by two ways of wetting. Assumptions. */
const BETWEEN_WAYS = 0.5;
const BETWEEN_WETTINGS = 0.7;

/**
 * Share of the variance of a figure that leathers of one kind have in common; the rest is each leather's own. Assumption: half. With it
 * the first test of a kind tells of the next leather of it about half of what it tells of its own.
 */
const OF_THE_KIND = 1 / 2;

/** Temper of a leather in numbers. */
export function temperNamed(name: Temper['name']): Temper {
  const found = TEMPERS.find((temper) => temper.name === name);
  if (found === undefined) throw new RangeError(`No temper is named ${name}.`);
  return found;
}

/** Doubts are the same for every temper. */
const MEDIUM = temperNamed('medium');

/** Value and standard uncertainty of a figure of leather of one temper; a finish is part of the working, of which nothing is known apart. */
function usualOf(figure: Figure, { neutral, bendRatio }: Temper): { readonly mean: number; readonly u: number } {
  if (figure === 'neutral') return { mean: neutral, u: DOUBTS.neutral };
  if (figure === 'bendRatio') return { mean: bendRatio, u: DOUBTS.bendRatio };
  const state = MAKING_STATES.find((one) => figure === `change.${one}`)!;
  return usualChange({ state, dressing: 'nothing' });
}

function correlation(a: Figure, b: Figure): number {
  if (a === b) return 1;
  const isWet = (figure: Figure): boolean => figure.startsWith('change.') && figure !== 'change.dry';
  return isWet(a) && isWet(b) ? BETWEEN_WETTINGS : 0;
}

/** Covariance of the figures of one leather as they are usual: of its kind and its own together. */
const usualCovariance = FIGURES.flatMap((a) =>
  WAYS.map((way) =>
    FIGURES.flatMap((b) =>
      WAYS.map(
        (other) => correlation(a, b) * (way === other ? 1 : BETWEEN_WAYS) * usualOf(a, MEDIUM).u * usualOf(b, MEDIUM).u,
      ),
    ),
  ),
);

const scaled = (share: number): number[][] => usualCovariance.map((row) => row.map((one) => share * one));

/**
 * What is usual: figure = value by the temper + what the kind has more + what the leather has more. Both parts are normal about 0 with
 * these covariances, which add up to the doubts that a job has without any test (`DOUBTS`). The hand is about 0.
 */
export const PRIOR = {
  kind: scaled(OF_THE_KIND),
  own: scaled(1 - OF_THE_KIND),
  hand: [HAND_DOUBTS.margin.stays, HAND_DOUBTS.cutting.stays],
} as const;

/** What is usual for a leather, and 0 for the hand, in the order of `UNKNOWNS`. */
export function usualValues({ temper }: { readonly temper: Temper['name'] }): readonly number[] {
  const named = temperNamed(temper);
  return [...FIGURES.flatMap((figure) => WAYS.map(() => usualOf(figure, named).mean)), 0, 0];
}

/**
 * Which way of the hide bends in a dimension of the cover: folds that decide the wrap run along the height, those at head and tail along
 * the width, and leather bends across its fold.
 */
export const bendWay = (of: 'wrap' | 'height', backbone: Job['making']['backbone']): Way =>
  (of === 'wrap') === (backbone === 'upright') ? 'across' : 'along';
