import { createHash } from 'node:crypto';
import { batches } from './inOrder.ts';
import type { Row } from './row.ts';
import type { RowSupply } from './rowSupply.ts';
import { notToGoOn } from './runRecord.ts';

/** How many rows were read, and what they were. */
export interface RowsRead {
  readonly rows: number;
  /** Hash of all of them. */
  readonly sha256: string;
  /** Where the last one came from; empty before the first. */
  readonly last: string;
}

/** Rows with how far the input was read when the last of them was. */
export interface Batch {
  readonly rows: readonly Row[];
  readonly read: RowsRead;
}

/** Counts the rows of an input as they are read. */
export class RowTally {
  #rows = 0;
  #last = '';
  readonly #hash = createHash('sha256');

  /** @param header what the columns of a table stand for */
  constructor(header: readonly string[]) {
    this.#hash.update(JSON.stringify(header));
  }

  get rows(): number {
    return this.#rows;
  }

  get read(): RowsRead {
    return { rows: this.#rows, last: this.#last, sha256: this.#hash.copy().digest('hex') };
  }

  /** Gives rows in batches, each with how far the input was read by then. */
  async *batches(rows: AsyncIterable<Row>, size: number): AsyncGenerator<Batch> {
    for await (const batch of batches(rows, size)) {
      for (const row of batch) this.#take(row);
      yield { rows: batch, read: this.read };
    }
  }

  /**
   * Passes over the rows that an earlier run is done with, and gives those after them.
   * @throws BadInput where they are not those of that run
   */
  async *after(before: RowsRead, supply: RowSupply): AsyncGenerator<Row, undefined> {
    let passing = before.rows;
    for await (const row of supply.rows) {
      if (passing === 0) {
        yield row;
        continue;
      }
      this.#take(row);
      if (--passing === 0 && this.read.sha256 !== before.sha256) throw notToGoOn(`other rows up to ${row.source}`);
    }
    if (passing > 0 && !supply.isCut) throw notToGoOn(`fewer rows than were done, ${before.rows}`);
  }

  #take(row: Row): void {
    this.#rows++;
    this.#last = row.source;
    this.#hash.update(JSON.stringify(row));
  }
}
