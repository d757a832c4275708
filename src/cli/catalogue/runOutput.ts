import type { Reached, RunMark } from './runRecord.ts';

/** Where the output of a run goes. */
export interface RunOutput {
  /** Where this run goes on. */
  readonly start: RunMark;
  /** Whether an earlier run has done it all. */
  readonly isDone: boolean;
  /** Whether a run that ends here can be gone on with. */
  readonly isKept: boolean;
  /** What was said of bad rows before the start, in order. */
  earlierComplaints(): AsyncIterable<readonly string[]>;
  /**
   * Writes what became of some rows.
   * @param reached how far the run is with them
   * @throws WriteError
   */
  write(output: string | Uint8Array, complaints: readonly string[], reached: Reached): Promise<void>;
  /**
   * Ends the output.
   * @param isWhole whether there is no more to come
   * @throws WriteError
   */
  finish(reached: Reached, isWhole: boolean): Promise<void>;
  close(): Promise<void>;
}
