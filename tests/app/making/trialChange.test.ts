import { expect, test } from 'vitest';
import { NEW_CARD, trialChange } from '../../../src/app/making/trial/trialChange.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { type JobDocument, patched } from '../../../src/core/job/jobDocument.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { cardDesign } from '../../../src/core/mockup/cardDesign.ts';
import { learnFromCard } from '../../../src/core/mockup/learnFromCard.ts';

function parsed(document: JobDocument): Job {
  const result = parseJob(document);
  if (!result.ok) throw new Error(result.issues[0]?.message);
  return result.job;
}

const lessonOf = (job: Job) => learnFromCard(job, job.mockup.card, job.mockup.readings);
const cardSize = (job: Job) => cardDesign(job, job.mockup.card).pieces.outside;

const TRIALS = EXAMPLE_JOBS.map(({ document }) =>
  patched(document, [
    { path: 'mockup.readings', value: { front_mm: 1, back_mm: 0.4, head_mm: 0.6, tail_mm: 0.6, error_mm: 0.3 } },
  ]),
);

test('a lesson that is applied leaves nothing to learn, and the ruler is as good as before', () => {
  for (const document of TRIALS) {
    const before = parsed(document);
    const lesson = lessonOf(before);
    expect(lesson.status).toBe('learned');
    expect(lesson.change.length).toBeGreaterThan(0);
    const after = parsed(patched(document, trialChange(before, lesson)));
    expect(lessonOf(after).status).toBe('nothingRead');
    expect(after.mockup.readings.error_mm).toBe(0.3);
    const { foreEdgeThickness_mm: foreEdge } = lesson.job.book;
    expect(after.book).toEqual({ ...lesson.job.book, foreEdgeThickness_mm: expect.closeTo(foreEdge, 9) });
  }
});

test('the card keeps the size it was cut to, so that reading it again on the corrected book teaches little more', () => {
  for (const document of TRIALS) {
    const before = parsed(document);
    const lesson = lessonOf(before);
    const corrected = patched(document, trialChange(before, lesson));
    const after = parsed(corrected);
    expect(cardSize(after)).toEqual(cardSize(before));
    const again = lessonOf(parsed(patched(corrected, [{ path: 'mockup.readings', value: before.mockup.readings }])));
    const first = Math.abs(lesson.height.after - lesson.height.before);
    expect(Math.abs(again.height.after - again.height.before)).toBeLessThan(first / 2);
  }
});

test('a new card is sized from the measures as they then stand', () => {
  for (const document of TRIALS) {
    const before = parsed(document);
    const corrected = patched(document, trialChange(before, lessonOf(before)));
    const renewed = parsed(patched(corrected, NEW_CARD));
    expect(cardSize(renewed).height).not.toBe(cardSize(before).height);
    expect(renewed.mockup.card).toEqual(before.mockup.card);
  }
});
