import { type JobDocument, patched } from '../../../src/core/job/jobDocument.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { normalQuantile } from '../../../src/core/math/normal.ts';
import { randomDraws } from '../../../src/core/math/randomDraws.ts';
import type { CardLesson } from '../../../src/core/mockup/cardLesson.ts';
import { type CardTrial, cardTrial } from '../../../src/core/mockup/cardTrial.ts';
import { type Explanation, explanationsOf } from '../../../src/core/mockup/explanations.ts';
import { learnFromCard } from '../../../src/core/mockup/learnFromCard.ts';
import { type Reading, readingsOf } from '../../../src/core/mockup/readings.ts';
import { priorOf, UNKNOWNS, type Unknown, type Values } from '../../../src/core/mockup/unknowns.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';

/** A normal draw. */
export type Draw = () => number;

/** Normal draws from a seed. */
export function normals(seed: number): Draw {
  const draws = randomDraws(seed);
  // A draw of exactly 0 would be infinitely far.
  return () => normalQuantile(Math.max(2 ** -33, draws()));
}

/** A book and its card as they are, drawn from what an explanation expects, with slips added. */
export function drawnBook(
  { expectation }: Explanation,
  draw: Draw,
  slips: Partial<Record<Unknown, number>> = {},
): Values {
  const { mean, error } = priorOf(expectation);
  return UNKNOWNS.map((name, i) => mean[i]! + error[i]! * draw() + (slips[name] ?? 0));
}

/** A trial of a simulated book. */
export interface SimulatedTrial {
  readonly job: Job;
  readonly truth: Values;
  readonly trial: CardTrial;
}

export const learn = ({ job }: SimulatedTrial): CardLesson => learnFromCard(job, job.mockup.card, job.mockup.readings);

export const explanationsFor = (job: Job, strip = false): [Explanation, ...Explanation[]] =>
  explanationsOf(job, job.mockup.card, { wrap: true, height: true, strip });

const withValues = (job: Job, patches: Parameters<typeof patched>[1]): Job =>
  soundJob(patched(job as unknown as JobDocument, patches));

/** The card on that book, all four edges read, each with its own error. */
export function simulate(job: Job, truth: Values, draw: Draw): SimulatedTrial {
  const trial = cardTrial(job, job.mockup.card);
  const { wrap, height } = trial.gaps(truth);
  const error = job.mockup.readings.error_mm / 2;
  const read = (gaps: number): number => gaps / 2 + error * draw();
  const patches = (['front_mm', 'back_mm', 'head_mm', 'tail_mm'] as const).map((edge) => ({
    path: `mockup.readings.${edge}` as const,
    value: read(edge === 'front_mm' || edge === 'back_mm' ? wrap : height),
  }));
  return { job: withValues(job, patches), truth, trial };
}

/** The same trial with one more reading, taken of the true book. */
export function readAlso({ job, truth, trial }: SimulatedTrial, path: Reading['path'], draw: Draw): SimulatedTrial {
  const all = readingsOf(job, trial, job.mockup.readings, truth);
  const { predict, error } = defined(all.find((reading) => reading.path === path));
  return { job: withValues(job, [{ path, value: Math.max(0, predict(truth) + error * draw()) }]), truth, trial };
}

/** Error of the wrap by the likeliest explanation, mm. */
export const wrongWrap = ({ trial, truth }: SimulatedTrial, { explanations: [likeliest] }: CardLesson): number =>
  Math.abs(defined(likeliest).wrap.after - trial.bareWrap(truth));
