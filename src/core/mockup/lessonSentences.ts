import { coverDesign } from '../fold/coverDesign.ts';
import type { Job } from '../job/jobSchema.ts';
import type { CardLesson, Learned } from './cardLesson.ts';

const NOTHING_READ = 'Enter the gaps at both fore-edges, or at head and tail, or how far it stays open.';

const NOT_CONVERGED = 'No measures were found that explain these readings. Read the card again.';

/**
 * What a trial taught, in sentences: each length found, what stays undecided, and what becomes of the leather.
 * @param job the job before the trial
 * @param length prints a length, mm
 */
export function lessonSentences(
  job: Job,
  lesson: Omit<CardLesson, 'sentences'>,
  length: (value: number) => string,
): string[] {
  if (lesson.status === 'nothingRead') return [NOTHING_READ];
  if (lesson.status !== 'learned') return [NOT_CONVERGED];
  const isRead = (what: 'wrap' | 'height'): boolean =>
    lesson.residuals.some(({ of, from }) => of === what && from === 'card');
  return [
    ...(isRead('wrap') ? wrapSentences(lesson, length) : []),
    ...(isRead('height') ? [found('The book is', 'high', lesson.height, length)] : []),
    reissued(job, lesson.job, length),
  ];
}

const isNothing = (value: number, length: (value: number) => string): boolean => length(Math.abs(value)) === length(0);

function found(
  what: string,
  way: string,
  { before, after, errorAfter }: Learned,
  length: (value: number) => string,
): string {
  const more = after - before;
  const against = isNothing(more, length)
    ? 'as measured'
    : `${length(Math.abs(more))} ${more > 0 ? 'more' : 'less'} than measured`;
  return `${what} ${length(after)} ${way}, ${against}, give or take ${length(errorAfter)}.`;
}

function wrapSentences(
  { wrap, measures, undecided, cardFolds }: Omit<CardLesson, 'sentences'>,
  length: (value: number) => string,
): string[] {
  const sentences = [found('The closed book is', 'round from fore-edge to fore-edge', wrap, length)];
  if (undecided.length > 1) {
    const shares = undecided.map(
      (name) => `${name} ${length(measures[name]!.before)} to ${length(measures[name]!.after)}`,
    );
    sentences.push(
      `The card cannot say whether ${undecided.join(' or ')} was off, so ${undecided.length === 2 ? 'both' : 'all'} are corrected a little: ` +
        `${shares.join(', ')}. The cut size is the same either way.`,
    );
  }
  if (!isNothing(cardFolds, length))
    sentences.push(`${length(Math.abs(cardFolds))} of the gap is put down to how the card folds, not to the book.`);
  return sentences;
}

function reissued(job: Job, corrected: Job, length: (value: number) => string): string {
  const [was, now] = [coverDesign(job).pieces.outside, coverDesign(corrected).pieces.outside];
  const size = ({ width, height }: typeof was): string => `${length(width)} x ${length(height)}`;
  return size(was) === size(now)
    ? `In leather the outside stays ${size(now)}.`
    : `In leather the outside becomes ${size(now)}; it was ${size(was)}.`;
}
