import { expect, test } from 'vitest';
import { NEW_CARD, trialChange } from '../../../src/app/making/trial/trialChange.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { type JobDocument, patched, valueAt } from '../../../src/core/job/jobDocument.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { cardDesign } from '../../../src/core/mockup/cardDesign.ts';
import type { CardLesson } from '../../../src/core/mockup/cardLesson.ts';
import { learnFromCard } from '../../../src/core/mockup/learnFromCard.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';

function parsed(document: JobDocument): Job {
  const result = parseJob(document);
  if (!result.ok) throw new Error(result.issues[0]?.message);
  return result.job;
}

const lessonOf = (job: Job) => learnFromCard(job, job.mockup.card, job.mockup.readings);
const likeliestOf = (job: Job) => nth(lessonOf(job).explanations, 0);
const cardSize = (job: Job) => cardDesign(job, job.mockup.card).pieces.outside;

const TRIALS = EXAMPLE_JOBS.map(({ document }) =>
  patched(document, [
    { path: 'ease', value: { foreEdge_mm: 1, head_mm: 1, tail_mm: 1 } },
    { path: 'mockup.readings', value: { front_mm: 1, back_mm: 0.4, head_mm: 0.6, tail_mm: 0.6, error_mm: 0.3 } },
    { path: 'mockup.again', value: { height_mm: Number(valueAt(document, 'book.height_mm')) + 0.9 } },
  ]),
);

test('an explanation that is taken leaves nothing to learn, and the ruler is as good as before', () => {
  for (const document of TRIALS) {
    const before = parsed(document);
    for (const explained of lessonOf(before).explanations) {
      const after = parsed(patched(document, trialChange(before, explained)));
      expect(lessonOf(after).status).toBe('nothingRead');
      expect(after.mockup.readings.error_mm).toBe(0.3);
      expect(after.mockup.again).toBeUndefined();
      const { foreEdgeThickness_mm: foreEdge } = explained.job.book;
      expect(after.book).toEqual({ ...explained.job.book, foreEdgeThickness_mm: expect.closeTo(foreEdge, 9) });
    }
    expect(likeliestOf(before).change.length).toBeGreaterThan(0);
  }
});

test('the card keeps the size it was cut to, so that reading it again on the corrected book teaches little more', () => {
  for (const document of TRIALS) {
    const before = parsed(document);
    const corrected = patched(document, trialChange(before, likeliestOf(before)));
    const after = parsed(corrected);
    expect(cardSize(after)).toEqual(cardSize(before));
    const again = parsed(patched(corrected, [{ path: 'mockup.readings', value: before.mockup.readings }]));
    const more = ({ height }: CardLesson) => Math.abs(defined(height).after - defined(height).before);
    expect(more(lessonOf(again))).toBeLessThan(more(lessonOf(before)) / 2);
  }
});

test('a new card is sized from the measures as they then stand', () => {
  for (const document of TRIALS) {
    const before = parsed(document);
    const corrected = patched(document, trialChange(before, likeliestOf(before)));
    const renewed = parsed(patched(corrected, NEW_CARD));
    expect(cardSize(renewed).height).not.toBe(cardSize(before).height);
    expect(renewed.mockup.card).toEqual(before.mockup.card);
  }
});
