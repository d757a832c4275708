import type { Patch } from '../job/jobDocument.ts';
import type { Job } from '../job/jobSchema.ts';
import type { ExplanationId } from './explanations.ts';
import type { FurtherReading } from './furtherReadings.ts';
import type { Taken } from './readings.ts';

/** A length before and after the trial, each with its standard deviation, mm. */
export interface Learned {
  readonly before: number;
  readonly after: number;
  readonly errorBefore: number;
  readonly errorAfter: number;
}

/** Measures that a trial may correct. */
export const MEASURES = ['width', 'thickness', 'rise', 'height'] as const;

export type MeasureName = (typeof MEASURES)[number];

/** A reading of the trial and its expected value, mm. */
export interface ReadingResidual extends Pick<Taken, 'name' | 'of' | 'from'> {
  readonly read: number;
  /** Predicted from the measures before the trial; `fitted` from the corrected ones. */
  readonly expected: number;
  readonly fitted: number;
  /** Difference from what the prior and all other readings predict, over its standard deviation. */
  readonly deviation: number;
}

/** What the measures are if one explanation is true. */
export interface Explained {
  readonly id: ExplanationId;
  /** In a maker's words, to be read after "likely:". */
  readonly words: string;
  /** How likely it is, 0 to 1, if the odds assumed are right. */
  readonly chance: number;
  readonly measures: Readonly<Partial<Record<MeasureName, Learned>>>;
  /** Wrap of the bare book, 2 W + P: the gaps at the fore-edges depend on it. */
  readonly wrap: Learned;
  /** Height of the book: the gaps at head and tail depend on it. */
  readonly height: Learned;
  /** Part of the fore-edge gap due to the card's folds and seats, not to the book, mm. */
  readonly cardFolds: number;
  readonly residuals: readonly ReadingResidual[];
  /** Measures that the readings cannot tell apart: their errors decide how the correction is shared. */
  readonly shared: readonly MeasureName[];
  /** Corrections of the job's measures; empty where they stand. */
  readonly change: readonly Patch<number | string>[];
  /** The job with these corrections, and the outside that it is cut to in leather, mm. */
  readonly job: Job;
  readonly cut: { readonly width: number; readonly height: number };
  readonly iterations: number;
  readonly residual: number;
}

/** Result of a trial in card. */
export interface CardLesson {
  /**
   * `learned`: what was read, and where the fault is, is known well enough to correct by. `undecided`: it is not, and nothing is corrected unless the
   * maker chooses an explanation. `contradiction`: some readings cannot all be right by any explanation. `nothingRead`: no
   * reading to use. `notConverged`: no measures were found that explain the readings.
   */
  readonly status: 'learned' | 'undecided' | 'contradiction' | 'nothingRead' | 'notConverged';
  /** Likeliest first; their chances add up to 1. Empty unless learned, undecided or contradicted. */
  readonly explanations: readonly Explained[];
  /** Explanations that could not be weighed, in words: no possible book was found for them. */
  readonly unweighed: readonly string[];
  /** Wrap and height by the likeliest explanation, with the standard deviation from there by all of them. */
  readonly wrap: Learned | null;
  readonly height: Learned | null;
  /** Chance, by all explanations, that the worse known of the lengths read is off by more than 0.5 mm. */
  readonly chanceOff: number;
  /** Readings not taken yet, the most telling first. */
  readonly further: readonly FurtherReading[];
  /** Corrections of the likeliest explanation; empty unless learned. */
  readonly change: Explained['change'];
  /** The job with these corrections. */
  readonly job: Job;
  readonly sentences: readonly string[];
}
