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

/** A reading of the trial and its expected value, mm. */
export interface ReadingResidual {
  readonly name: string;
  readonly of: 'wrap' | 'height';
  readonly from: 'card' | 'tape';
  readonly read: number;
  /** Predicted from the measures before the trial; `fitted` from the corrected ones. */
  readonly expected: number;
  readonly fitted: number;
  /** Difference from what the prior and all other readings predict, over its standard deviation. */
  readonly deviation: number;
}

/** Result of a trial in card. */
export interface CardLesson {
  /** `contradiction`: some readings cannot all be right, and nothing is corrected. `nothingRead`: no reading to use. */
  readonly status: 'learned' | 'contradiction' | 'nothingRead' | 'notConverged';
  readonly measures: Readonly<Partial<Record<MeasureName, Learned>>>;
  /** Wrap of the bare book, 2 W + P: the gaps at the fore-edges depend on it. */
  readonly wrap: Learned;
  /** Height of the book: the gaps at head and tail depend on it. */
  readonly height: Learned;
  /** Part of the fore-edge gap due to the card's folds and seats, not to the book, mm. */
  readonly cardFolds: number;
  readonly residuals: readonly ReadingResidual[];
  /** Measures that the readings cannot tell apart: their errors decide how the correction is shared. */
  readonly undecided: readonly MeasureName[];
  /** Corrections of the job's measures; empty unless learned. */
  readonly change: readonly Patch<number>[];
  /** The job with these corrections. */
  readonly job: Job;
  readonly iterations: number;
  readonly residual: number;
  readonly sentences: readonly string[];
}
