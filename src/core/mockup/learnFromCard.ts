import { riseOf } from '../book/rise.ts';
import type { Job } from '../job/jobSchema.ts';
import { printer } from '../units/printer.ts';
import type { Card } from './cardDesign.ts';
import type { CardLesson, Learned } from './cardLesson.ts';
import { type CardReadings, type CardTrial, cardTrial, MEASURES, type MeasureName } from './cardTrial.ts';
import { contradictions } from './contradictions.ts';
import { type Estimate, estimate } from './estimate.ts';
import { lessonSentences } from './lessonSentences.ts';

/** Correlation above which two measures count as undecided. */
const UNDECIDED = 0.3;

/**
 * Estimates the book's true measures from a trial in card.
 *
 * Card is thin, so a difference from the model comes mostly from the book's measures; the card's folds take their share
 * by their own uncertainty.
 * @param card cut from the measures of `job`
 * @param readings what the card showed; a gap counts only together with its opposite edge
 * @returns the lesson; contradictory readings change nothing and are named
 */
export function learnFromCard(job: Job, card: Card, readings: CardReadings): CardLesson {
  const print = printer(job.work.units);
  const trial = cardTrial(job, card, readings);
  const { prior, observations } = trial;
  const result = estimate(prior, observations);
  const residuals = observations.map(({ name, of, from, value, predict }, i) => ({
    name,
    of,
    from,
    read: value,
    expected: predict(prior.mean),
    fitted: predict(result.mean),
    deviation: result.deviations[i]!,
  }));
  const faults = contradictions(residuals, readings, print);
  const status = statusOf(faults.length > 0, residuals, result);
  const corrected = status === 'learned' ? correctedJob(trial, result) : job;
  const names = MEASURES.filter((_, i) => prior.error[i]! > 0);
  const lesson = {
    status,
    measures: Object.fromEntries(names.map((name) => [name, learnedAt(trial, result, MEASURES.indexOf(name))])),
    wrap: learnedWrap(trial, result),
    height: learnedAt(trial, result, MEASURES.indexOf('height')),
    cardFolds: foldShare(trial, result),
    residuals,
    undecided: undecided(names, result),
    change: changesBetween(job, corrected),
    job: corrected,
    iterations: result.iterations,
    residual: result.residual,
  };
  return { ...lesson, sentences: faults.length > 0 ? faults : lessonSentences(job, lesson, print) };
}

function statusOf(
  isContradicted: boolean,
  residuals: CardLesson['residuals'],
  { status }: Estimate,
): CardLesson['status'] {
  if (isContradicted) return 'contradiction';
  if (!residuals.some(({ from }) => from === 'card')) return 'nothingRead';
  return status === 'converged' ? 'learned' : 'notConverged';
}

function learnedAt({ prior }: CardTrial, { mean, covariance }: Estimate, i: number): Learned {
  return {
    before: prior.mean[i]!,
    after: mean[i]!,
    errorBefore: prior.error[i]!,
    errorAfter: Math.sqrt(Math.max(0, covariance[i]![i]!)),
  };
}

/** The bare wrap; with its slopes a along the unknowns, its variance is a' P a. */
function learnedWrap({ prior, bareWrap }: CardTrial, { mean, covariance }: Estimate): Learned {
  const step = 0.01;
  const slopes = mean.map((x, i) => {
    if (prior.error[i] === 0) return 0;
    const moved = (sign: number): number => bareWrap(mean.map((other, k) => (k === i ? x + sign * step : other)));
    return (moved(1) - moved(-1)) / (2 * step);
  });
  const variance = slopes.reduce(
    (sum, a, i) => sum + slopes.reduce((part, b, k) => part + a * b * covariance[i]![k]!, 0),
    0,
  );
  return {
    before: bareWrap(prior.mean),
    after: bareWrap(mean),
    errorBefore: Math.hypot(...slopes.map((slope, i) => slope * prior.error[i]!)),
    errorAfter: Math.sqrt(Math.max(0, variance)),
  };
}

/** Change of the fore-edge gap due to the card's own folding, with the book as corrected. */
function foldShare({ prior, gaps }: CardTrial, { mean }: Estimate): number {
  const asAssumed = [...mean.slice(0, MEASURES.length), ...prior.mean.slice(MEASURES.length)];
  return gaps(mean).wrap - gaps(asAssumed).wrap;
}

function undecided(names: readonly MeasureName[], { covariance }: Estimate): MeasureName[] {
  const correlation = (a: MeasureName, b: MeasureName): number => {
    const [i, k] = [MEASURES.indexOf(a), MEASURES.indexOf(b)];
    return covariance[i]![k]! / Math.sqrt(covariance[i]![i]! * covariance[k]![k]!);
  };
  return names.filter((a) => names.some((b) => a !== b && Math.abs(correlation(a, b)) > UNDECIDED));
}

/** The job with changed measures rounded to 0.01 mm; unchanged ones stay as typed. */
function correctedJob({ prior, bookAs }: CardTrial, { mean }: Estimate): Job {
  return bookAs(
    mean.map((value, i) => {
      const before = prior.mean[i]!;
      return Math.abs(value - before) < 0.005 ? before : Math.round(value * 100) / 100;
    }),
  );
}

function changesBetween({ book: before }: Job, { book: after }: Job): CardLesson['change'] {
  const lengths = [
    ['book.width_mm', before.width_mm, after.width_mm],
    ['book.thickness_mm', before.thickness_mm, after.thickness_mm],
    ['book.foreEdgeThickness_mm', before.foreEdgeThickness_mm, after.foreEdgeThickness_mm],
    ['book.spine.rise_mm', riseOf(before), riseOf(after)],
    ['book.height_mm', before.height_mm, after.height_mm],
  ] as const;
  // The fore-edge thickness is corrected by a difference: this removes the floating-point noise.
  return lengths.flatMap(([path, from, to]) => (from === to ? [] : [{ path, value: Math.round(to * 1e6) / 1e6 }]));
}
