import { coverDesign } from '../fold/coverDesign.ts';
import type { Job } from '../job/jobSchema.ts';
import type { Printer } from '../units/printer.ts';
import type { CardLesson, Explained, Learned } from './cardLesson.ts';
import { likelihood } from './likelihood.ts';

const NOTHING_READ = 'Enter the gaps at both fore-edges, or at head and tail, or how far it stays open.';

const NOT_CONVERGED = 'No measures were found that explain these readings. Read the card again.';

/**
 * The result of a trial in sentences: the likeliest explanation, each length found, what stays undecided and what would
 * settle it, and the cut size in leather.
 * @param job the job before the trial
 */
export function lessonSentences(job: Job, lesson: Omit<CardLesson, 'sentences'>, print: Printer): string[] {
  if (lesson.status === 'nothingRead') return [NOTHING_READ];
  const [likeliest] = lesson.explanations;
  if (likeliest === undefined) return [NOT_CONVERGED];
  const { wrap, height, status } = lesson;
  return [
    `What fits best (${likelihood(likeliest.chance, print)}): ${likeliest.words}.`,
    ...(wrap === null ? [] : [found('The closed book is', 'round from fore-edge to fore-edge', wrap, print)]),
    ...(height === null ? [] : [found('The book is', 'high', height, print, print.exact)]),
    ...(wrap === null ? [] : sharing(likeliest, print)),
    ...(status === 'learned' ? [reissued(job, lesson.job, print)] : whatIsOpen(lesson, print)),
    ...unweighed(lesson),
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
  return `${what} ${figure(after)} ${way}, ${against}, give or take ${print.length(2 * errorAfter)}.`;
}

function sharing({ measures, shared, cardFolds }: Explained, print: Printer): string[] {
  const sentences: string[] = [];
  if (shared.length > 1) {
    const shares = shared.map(
      (name) => `${name} ${print.size(measures[name]!.before)} to ${print.exact(measures[name]!.after)}`,
    );
    sentences.push(
      `The card cannot say whether ${shared.join(' or ')} was off, so ${shared.length === 2 ? 'both' : 'all'} are corrected a little: ` +
        `${shares.join(', ')}. The cut size is the same either way.`,
    );
  }
  if (!isNothing(cardFolds, print))
    sentences.push(
      `${print.length(Math.abs(cardFolds))} of the gap is put down to how the card folds, not to the book.`,
    );
  return sentences;
}

function whatIsOpen({ further: [next], wrap }: Pick<CardLesson, 'further' | 'wrap'>, print: Printer): string[] {
  const open = 'That is not sure enough to cut by, so nothing is corrected unless you choose it below.';
  if (next === undefined) return [open];
  const known = wrap === null ? 'the height' : 'the length round the book';
  return [
    open,
    `The reading that would tell most: ${next.name}. With it, ${known} should be known, give or take ${print.length(2 * next.leaves)}.`,
  ];
}

const unweighed = ({ unweighed: words }: Pick<CardLesson, 'unweighed'>): string[] =>
  words.length === 0 ? [] : [`Not weighed, because no possible book was found for it: ${words.join('; ')}.`];

function reissued(job: Job, corrected: Job, print: Printer): string {
  const [was, now] = [coverDesign(job).pieces.outside, coverDesign(corrected).pieces.outside];
  const size = ({ width, height }: typeof was): string => `${print.size(width)} × ${print.size(height)}`;
  return size(was) === size(now)
    ? `In leather the outside stays ${size(now)}.`
    : `In leather the outside becomes ${size(now)}; it was ${size(was)}.`;
}
