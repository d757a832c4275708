import type { Job } from '../job/jobSchema.ts';
import { parseJob } from '../job/parseJob.ts';
import { normalDistribution } from '../math/normal.ts';
import { printer } from '../units/printer.ts';
import type { Card } from './cardDesign.ts';
import type { CardLesson, Explained, Learned } from './cardLesson.ts';
import { type CardTrial, cardTrial } from './cardTrial.ts';
import { contradictions } from './contradictions.ts';
import { explain } from './explain.ts';
import { explanationsOf } from './explanations.ts';
import { furtherReadings } from './furtherReadings.ts';
import { lessonSentences } from './lessonSentences.ts';
import { type CardReadings, isTaken, openingReading, type Reading, readingsOf, type Taken } from './readings.ts';
import { priorOf, type Values, valueIn } from './unknowns.ts';
import { type Weighed, weigh } from './weigh.ts';

/** A lesson but for its sentences. */
type Told = Omit<CardLesson, 'sentences'>;

/** Error of the wrap or the height, mm, that a correction may leave: about a cut step. An assumption. */
const DECIDED_WITHIN = 0.5;

/** Chance of leaving more than that, up to which the measures are corrected. An assumption. */
const DECIDED_BELOW = 0.05;

/** Least chance of what is corrected in the book, 4 to 1. An assumption. */
const AGREED_FROM = 0.8;

/**
 * Estimates the book's true measures from a trial in card.
 *
 * Several explanations are weighed: measures that are right within their errors, a swollen spine, a slip of the ruler, gaps
 * read wrongly. Measures count as learned only where wrap and height, by all explanations together, are known to within
 * `DECIDED_WITHIN` in 95 of 100, and the measure to correct is 4 to 1; else the lesson is undecided and says which further reading would tell most.
 * @param card cut from the measures of `job`
 * @param readings what the card showed; a gap counts only together with its opposite edge
 * @returns the lesson; contradictory readings change nothing and are named
 */
export function learnFromCard(job: Job, card: Card, readings: CardReadings): CardLesson {
  const print = printer(job.work.units);
  const trial = cardTrial(job, card);
  const [usual] = explanationsOf(job, card, { wrap: false, height: false, strip: false });
  const typed = priorOf(usual.expectation);
  const all = readingsOf(job, trial, readings, typed.mean);
  const taken = all.filter(isTaken);
  const isRead = (what: Taken['of']): boolean => taken.some(({ of, from }) => of === what && from === 'card');
  const isAsked = { wrap: isRead('wrap'), height: isRead('height') };
  const nothing: Told = {
    status: 'nothingRead',
    explanations: [],
    unweighed: [],
    wrap: null,
    height: null,
    chanceOff: 0,
    further: [],
    change: [],
    job,
  };
  const told = (lesson: Told): CardLesson => ({ ...lesson, sentences: lessonSentences(job, lesson, print) });
  if (!isAsked.wrap && !isAsked.height) return told(nothing);

  const read = { ...isAsked, strip: job.book.measured.closedWrap_mm !== null };
  const explanations = explanationsOf(job, card, read);
  const { weighed, unweighed } = possible(trial, weigh(explanations, taken));
  const [likeliest] = weighed;
  if (likeliest === undefined) return told({ ...nothing, status: 'notConverged', unweighed });

  const explained = weighed.map((each) => explain(trial, typed, taken, each, job));
  const height = (values: Values): number => valueIn(values, 'height');
  const lengths = [...(isAsked.wrap ? [trial.bareWrap] : []), ...(isAsked.height ? [height] : [])] as const;
  const [first = height, ...others] = lengths;
  const wrap = byAll(explained, ({ wrap }) => wrap);
  const high = byAll(explained, ({ height }) => height);
  const chanceOff = Math.max(
    isAsked.wrap ? chanceOffOf(explained, ({ wrap }) => wrap) : 0,
    isAsked.height ? chanceOffOf(explained, ({ height }) => height) : 0,
  );
  const open = [...all.filter((reading) => !isTaken(reading)), ...openingAsked(trial, readings, typed.mean, likeliest)];
  const lesson: Told = {
    ...nothing,
    status: chanceOff <= DECIDED_BELOW && chanceAgreed(weighed) >= AGREED_FROM ? 'learned' : 'undecided',
    explanations: explained,
    unweighed,
    wrap: isAsked.wrap ? wrap : null,
    height: isAsked.height ? high : null,
    chanceOff,
    further: furtherReadings(
      weighed,
      open.filter(({ of }) => isAsked[of]),
      [first, ...others],
    ),
  };
  const [{ residuals, change, job: corrected }] = explained as [Explained, ...Explained[]];
  const faults = contradictions(residuals, readings, print);
  if (faults.length > 0) return { ...lesson, status: 'contradiction', further: [], sentences: faults };
  return told(lesson.status === 'learned' ? { ...lesson, change, job: corrected } : lesson);
}

/** The explanations for which a possible book was found, with chances that add up to 1, and the words of the others. */
function possible(trial: CardTrial, all: readonly Weighed[]): { weighed: Weighed[]; unweighed: string[] } {
  const isPossible = ({ result }: Weighed): boolean =>
    result.status === 'converged' && parseJob(trial.bookAs(result.mean)).ok;
  const found = all.filter(isPossible);
  const sum = found.reduce((total, { chance }) => total + chance, 0);
  return {
    weighed: found.map((each) => ({ ...each, chance: each.chance / sum })),
    unweighed: all.filter((each) => !found.includes(each)).map(({ explanation }) => explanation.words),
  };
}

/** A length by the likeliest explanation; its variance is the mean over all of sigma^2 + (difference)^2. */
function byAll(explained: readonly Explained[], of: (each: Explained) => Learned): Learned {
  const likeliest = of(explained[0]!);
  const variance = explained.reduce((sum, each) => {
    const { after, errorAfter } = of(each);
    return sum + each.chance * (errorAfter ** 2 + (after - likeliest.after) ** 2);
  }, 0);
  return { ...likeliest, errorAfter: Math.sqrt(variance) };
}

/** Chance, by all explanations, that a length is further than `DECIDED_WITHIN` from what the likeliest one gives. */
function chanceOffOf(explained: readonly Explained[], of: (each: Explained) => Learned): number {
  const taken = of(explained[0]!).after;
  return explained.reduce((sum, each) => {
    const { after, errorAfter } = of(each);
    const [low, high] = [-DECIDED_WITHIN, DECIDED_WITHIN].map((off) =>
      normalDistribution((taken + off - after) / errorAfter),
    );
    return sum + each.chance * (1 - (high! - low!));
  }, 0);
}

/** Chance that the fault is where the likeliest explanation puts it; all by which the book is as measured agree in that. */
const chanceAgreed = ([likeliest, ...others]: readonly Weighed[]): number =>
  others.reduce(
    (sum, { chance, explanation }) =>
      sum + (explanation.isBookAsTyped && likeliest!.explanation.isBookAsTyped ? chance : 0),
    likeliest!.chance,
  );

/** The opening as a further reading, where the card is said to stay open and should do so by the likeliest explanation. */
function openingAsked(trial: CardTrial, readings: CardReadings, usual: Values, { result }: Weighed): Reading[] {
  if (readings.closes !== false || readings.opening_deg !== null) return [];
  const angle = trial.staysOpen(result.mean);
  return angle === null || angle === 0 ? [] : [openingReading(trial, readings, usual, angle, null)];
}
