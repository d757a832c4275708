import { needsAt } from '../../../src/core/allowance/needs.ts';
import { riseOf } from '../../../src/core/book/rise.ts';
import { coverFit } from '../../../src/core/fold/coverFit.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { circularSegment } from '../../../src/core/math/circularSegment.ts';
import { cardDesign, cardJob } from '../../../src/core/mockup/cardDesign.ts';
import { explanationsOf } from '../../../src/core/mockup/explanations.ts';
import type { CardReadings } from '../../../src/core/mockup/readings.ts';
import { priorOf, type Values } from '../../../src/core/mockup/unknowns.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { soundJob } from '../../jobArbitrary.ts';

/** An example whose ease is typed, so that the card is cut the same whatever the doubts are. */
const example = (id: string): Job =>
  soundJob({
    ...EXAMPLE_JOBS.find((entry) => entry.id === id)!.document,
    ease: { foreEdge_mm: 1, head_mm: 1, tail_mm: 1 },
  });
export const tide = example('tide-ledger');
export const choir = example('choir-book');
export const { card } = tide.mockup;

/** The unknowns of a trial as typed, and as assumed of the card. */
export const typed = (job: Job, sheet = card): Values =>
  priorOf(explanationsOf(job, sheet, { wrap: true, height: true, strip: true })[0].expectation).mean;

export interface Errors {
  readonly width: number;
  readonly thickness: number;
  readonly rise: number;
  readonly height: number;
}
export const NONE: Errors = { width: 0, thickness: 0, rise: 0, height: 0 };

/** The job as it would be had the book been measured without error. */
export const trueJob = (job: Job, { width, thickness, rise, height }: Errors): Job => ({
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

/** What a card cut from the measures of `job` shows on the true book, each edge read with an error. */
export function trial(job: Job, errors: Errors, readingErrors = [0, 0, 0, 0], made = card): CardReadings {
  const book = cardJob(trueJob(job, errors), made);
  const fit = coverFit(book, cardDesign(job, card).pieces, needsAt(book, 'thick'));
  const [front, back, head, tail] = [fit.foreEdge.front, fit.foreEdge.back, fit.head, fit.tail].map((gap, i) =>
    mm(gap + readingErrors[i]!),
  );
  return { ...job.mockup.readings, front_mm: front!, back_mm: back!, head_mm: head!, tail_mm: tail! };
}

/** 2 W + P, by hand. */
export const wrapOf = ({ book }: Job): number =>
  2 * book.width_mm + circularSegment(book.thickness_mm, riseOf(book)).arc;
