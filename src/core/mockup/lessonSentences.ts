import { coverDesign } from '../fold/coverDesign.ts';
import type { Job } from '../job/jobSchema.ts';
import type { Printer } from '../units/printer.ts';
import type { CardLesson, Learned } from './cardLesson.ts';

const NOTHING_READ = 'Enter the gaps at both fore-edges, or at head and tail, or how far it stays open.';

const NOT_CONVERGED = 'No measures were found that explain these readings. Read the card again.';

/**
 * The result of a trial in sentences: each length found, what stays undecided, and the cut size in leather.
 * @param job the job before the trial
 */
export function lessonSentences(job: Job, lesson: Omit<CardLesson, 'sentences'>, print: Printer): string[] {
  if (lesson.status === 'nothingRead') return [NOTHING_READ];
  if (lesson.status !== 'learned') return [NOT_CONVERGED];
  const isRead = (what: 'wrap' | 'height'): boolean =>
    lesson.residuals.some(({ of, from }) => of === what && from === 'card');
  return [
    ...(isRead('wrap') ? wrapSentences(lesson, print) : []),
    ...(isRead('height') ? [found('The book is', 'high', lesson.height, print, print.size)] : []),
    reissued(job, lesson.job, print),
  ];
}

const isNothing = (value: number, { length }: Printer): boolean => length(Math.abs(value)) === length(0);

function found(
  what: string,
  way: string,
  { before, after, errorAfter }: Learned,
  print: Printer,
  figure = print.length,
): string {
  const more = after - before;
  const against = isNothing(more, print)
    ? 'as measured'
    : `${print.length(Math.abs(more))} ${more > 0 ? 'more' : 'less'} than measured`;
  return `${what} ${figure(after)} ${way}, ${against}, give or take ${print.length(errorAfter)}.`;
}

function wrapSentences(
  { wrap, measures, undecided, cardFolds }: Omit<CardLesson, 'sentences'>,
  print: Printer,
): string[] {
  const sentences = [found('The closed book is', 'round from fore-edge to fore-edge', wrap, print)];
  if (undecided.length > 1) {
    const shares = undecided.map(
      (name) => `${name} ${print.size(measures[name]!.before)} to ${print.size(measures[name]!.after)}`,
    );
    sentences.push(
      `The card cannot say whether ${undecided.join(' or ')} was off, so ${undecided.length === 2 ? 'both' : 'all'} are corrected a little: ` +
        `${shares.join(', ')}. The cut size is the same either way.`,
    );
  }
  if (!isNothing(cardFolds, print))
    sentences.push(
      `${print.length(Math.abs(cardFolds))} of the gap is put down to how the card folds, not to the book.`,
    );
  return sentences;
}

function reissued(job: Job, corrected: Job, print: Printer): string {
  const [was, now] = [coverDesign(job).pieces.outside, coverDesign(corrected).pieces.outside];
  const size = ({ width, height }: typeof was): string => `${print.size(width)} x ${print.size(height)}`;
  return size(was) === size(now)
    ? `In leather the outside stays ${size(now)}.`
    : `In leather the outside becomes ${size(now)}; it was ${size(was)}.`;
}
