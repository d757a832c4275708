import type { Patch } from '../job/jobDocument.ts';
import type { Job } from '../job/jobSchema.ts';
import type { MeasureName } from './cardTrial.ts';

/** A length before and after the trial, each with its standard deviation, mm. */
export interface Learned {
  readonly before: number;
  readonly after: number;
  readonly errorBefore: number;
  readonly errorAfter: number;
}

/** One reading of the trial beside what was expected of it. */
export interface ReadingResidual {
  readonly name: string;
  readonly of: 'wrap' | 'height';
  readonly from: 'card' | 'tape';
  readonly read: number;
  /** What it should have been by the measures as they stood, and by the corrected ones. */
  readonly expected: number;
  readonly fitted: number;
  /** Distance from what all else says of it, in standard deviations of that difference. */
  readonly deviation: number;
}

/** What a trial in card taught. */
export interface CardLesson {
  /** `contradiction`: some readings cannot all be right, and nothing is corrected. `nothingRead`: no reading to use. */
  readonly status: 'learned' | 'contradiction' | 'nothingRead' | 'notConverged';
  readonly measures: Readonly<Partial<Record<MeasureName, Learned>>>;
  /** Wrap of the bare book, 2 W + P, which is what the fore-edges see. */
  readonly wrap: Learned;
  /** Height of the book, which is what head and tail see. */
  readonly height: Learned;
  /** Gap at the fore-edges put down to the card's own folds and seats, not to the book; mm. */
  readonly cardFolds: number;
  readonly residuals: readonly ReadingResidual[];
  /** Measures that the readings leave undecided between them: their correction is shared by their errors. */
  readonly undecided: readonly MeasureName[];
  /** Corrections of the job's measures; empty unless learned. */
  readonly change: readonly Patch<number>[];
  /** The job with these corrections, to be issued again for leather. */
  readonly job: Job;
  readonly iterations: number;
  readonly residual: number;
  readonly sentences: readonly string[];
}
