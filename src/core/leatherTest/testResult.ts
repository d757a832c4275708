/** What the readings of one test say of one figure of a leather. */
export interface TestResult {
  readonly value: number;
  /** Standard uncertainty. */
  readonly u: number;
  /** Readings that were pooled. */
  readonly count: number;
  /** Readings, by their places in the list, that contradict the others: not counted, to be read again. */
  readonly again: readonly number[];
}
