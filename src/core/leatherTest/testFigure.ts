/** What one reading says of a leather. */
export interface TestFigure {
  readonly value: number;
  /** Standard uncertainty, 0 or more, in the unit of the value. */
  readonly u: number;
}
