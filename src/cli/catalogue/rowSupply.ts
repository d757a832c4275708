import type { JobIssue } from '../../core/index.ts';
import { BadInput } from '../badInput.ts';
import { unreadable } from '../readText.ts';
import type { Row } from './row.ts';

/** The rows of an input, up to its end, or to where it cannot be read on or the run is interrupted. */
export class RowSupply {
  /** What kept the input from being read on; null where nothing did. */
  fault: JobIssue | null = null;
  #rows: AsyncGenerator<Row, undefined>;
  #isWhole = false;

  /** @param rows may throw BadInput where nothing after a row can be read */
  constructor(rows: AsyncIterable<Row>, name: string, interrupt: AbortSignal) {
    this.#rows = this.#take(rows, name, interrupt);
  }

  /** Can be taken once. */
  get rows(): AsyncGenerator<Row, undefined> {
    return this.#rows;
  }

  /** Whether there may have been more rows than were given; of use once no more are. */
  get isCut(): boolean {
    return !this.#isWhole;
  }

  /** Leaves out the rows to come before `from`, counted from 0, and from `to` on. */
  takeOnly(from: number, to: number): void {
    this.#rows = this.#slice(this.#rows, from, to);
  }

  async *#take(rows: AsyncIterable<Row>, name: string, interrupt: AbortSignal): AsyncGenerator<Row, undefined> {
    try {
      for await (const row of rows) {
        if (interrupt.aborted) return;
        yield row;
      }
      // A stream that is destroyed in its last piece may end as if nothing were amiss.
      this.#isWhole = !interrupt.aborted;
    } catch (error) {
      if (interrupt.aborted) return;
      this.fault = error instanceof BadInput ? error.issues[0]! : unreadable(error, name);
    }
  }

  async *#slice(rows: AsyncIterable<Row>, from: number, to: number): AsyncGenerator<Row, undefined> {
    let index = 0;
    for await (const row of rows) {
      if (index >= to) {
        this.#isWhole = true;
        return;
      }
      if (index >= from) yield row;
      index++;
    }
  }
}
