import type { TestFigure } from './testFigure.ts';

/** What all readings of one test together say of one figure of a leather. */
export interface TestResult extends TestFigure {
  /** Readings that were pooled. */
  readonly count: number;
  /**
   * Readings, by their places in the list of the test, that contradict the others: to be read again, and taken out if they were wrong.
   * Until then they count, and u says how little is known.
   */
  readonly again: readonly number[];
  /** Standard deviation from strip to strip beyond what the errors of reading explain, 0 or more, in the unit of the value. */
  readonly scatter: number;
}
