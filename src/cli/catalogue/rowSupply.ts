import type { JobIssue } from '../../core/index.ts';
import { unreadable } from '../readText.ts';
import type { Row } from './row.ts';

/** The rows of an input, up to its end, or to where it cannot be read on or the run is interrupted. */
export class RowSupply {
  /** What kept the input from being read on; null where nothing did. */
  fault: JobIssue | null = null;
  /** Can be taken once. */
  readonly rows: AsyncGenerator<Row, undefined>;

  constructor(rows: AsyncIterable<Row>, name: string, interrupt: AbortSignal) {
    this.rows = this.#take(rows, name, interrupt);
  }

  async *#take(rows: AsyncIterable<Row>, name: string, interrupt: AbortSignal): AsyncGenerator<Row, undefined> {
    try {
      for await (const row of rows) {
        if (interrupt.aborted) return;
        yield row;
      }
    } catch (error) {
      if (!interrupt.aborted) this.fault = unreadable(error, name);
    }
  }
}
