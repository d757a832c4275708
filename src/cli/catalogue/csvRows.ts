import type { Readable } from 'node:stream';
import { jobIssue } from '../../core/index.ts';
import { BadInput } from '../badInput.ts';
import { decodeText, TEXT_ALLOWED, TEXT_REMEDY } from '../decodeText.ts';
import type { Row } from './row.ts';
import { DamagedText, utf8Chunks } from './utf8Chunks.ts';

/** Longest row kept, in bytes; without a cap one unclosed quote would take the rest of the file into memory. */
const MAX_ROW_BYTES = 1_000_000;

/**
 * Reads a table (RFC 4180: cells with separators, quotes or line breaks in quotes, quotes doubled) row by row, in UTF-8, or in
 * UTF-16 with its mark. What stands between the cells of the first row, a comma, a semicolon or a tab, separates all cells.
 *
 * Empty rows are passed over, stray quotes are taken as text. A row of another length than the first, too large, not in
 * UTF-8, or whose quote is never closed, comes as an issue in its place, and the rows after it are read: after a quote that is
 * never closed those of the lines after it. Lines are counted from 1; a row that spans several is named by its first.
 * @throws BadInput where a quote that is never closed has more after it than is kept, or UTF-16 breaks off: nothing after that
 *   row can be read
 */
export async function* csvRows(input: Readable): AsyncGenerator<Row> {
  const reader = new RowReader();
  try {
    for await (const chunk of utf8Chunks(input)) yield* reader.read(chunk);
    yield* reader.end();
  } catch (error) {
    if (!(error instanceof DamagedText)) throw error;
    throw reader.broken(`${error.message} that breaks off or is damaged`, TEXT_ALLOWED, 'save the table again');
  }
}

/** What tells cells and rows apart; a run of other characters is one token. In UTF-8 none of these is part of another character. */
const TOKEN = /["\r\n,;\t]|[^"\r\n,;\t]+/g;

/** Where in a cell the reader is: before it, in its bare text, in quotes, or behind a quote that may close them. */
type Place = 'start' | 'bare' | 'quoted' | 'closing';

class RowReader {
  /** Null until the first row tells. */
  #separator: string | null = null;
  /** Cells of the first row, to which the others must be equal. */
  #width: number | null = null;
  #line = 1;
  #firstLine = 1;
  #afterReturn = false;
  #place: Place = 'start';
  /** Bytes, one a character. */
  #cell = '';
  #cells: string[] = [];
  #cellBytes = 0;
  #rowBytes = 0;
  #tooLarge: 'cell' | 'row' | null = null;

  *read(chunk: Buffer): Generator<Row> {
    for (const [token] of chunk.toString('latin1').matchAll(TOKEN)) {
      const isPair = this.#afterReturn && token === '\n';
      this.#afterReturn = token === '\r';
      if (this.#place === 'quoted') {
        if (token === '"') this.#place = 'closing';
        else this.#add(token);
        if (token === '\r' || (token === '\n' && !isPair)) this.#line++;
      } else if (token === '\r' || token === '\n') {
        if (!isPair) {
          yield* this.#endRow();
          this.#firstLine = ++this.#line;
        }
      } else if (this.#isSeparator(token)) this.#endCell();
      else if (token === '"' && this.#place === 'start') this.#place = 'quoted';
      else if (token === '"' && this.#place === 'closing') {
        this.#add(token);
        this.#place = 'quoted';
      } else {
        // Text behind a closed quote: the quotes were text as well.
        if (this.#place === 'closing') this.#cell = `"${this.#cell}"`;
        this.#place = 'bare';
        this.#add(token);
      }
    }
  }

  *end(): Generator<Row> {
    if (this.#place !== 'quoted') {
      yield* this.#endRow();
      return;
    }
    const [got, allowed] = ['a quote that is not closed', 'quotes in pairs'];
    if (this.#tooLarge !== null)
      throw this.broken(got, allowed, `close the quote; nothing from there to line ${this.#line} could be read`);
    yield this.refused(got, allowed, 'close the quote');
    // All quotes after it stand in pairs, so this cannot happen again.
    const [, ...rest] = this.#cell.replaceAll('"', '""').split(/\r\n|\r|\n/);
    this.#line -= rest.length;
    this.#cells = [];
    this.#rowBytes = 0;
    this.#cell = '';
    this.#cellBytes = 0;
    this.#place = 'start';
    for (const line of rest) {
      this.#firstLine = ++this.#line;
      yield* this.read(Buffer.from(line, 'latin1'));
      yield* this.#endRow();
    }
  }

  refused(got: string, allowed: string, remedy: string): Row {
    return { source: `line ${this.#firstLine}`, issue: jobIssue('unreadable', '(row)', got, allowed, remedy) };
  }

  /** A row after which nothing can be read. */
  broken(got: string, allowed: string, remedy: string): BadInput {
    const path = `line ${this.#firstLine}: (row)`;
    return new BadInput([jobIssue('unreadable', path, got, allowed, remedy)]);
  }

  #isSeparator(token: string): boolean {
    if (token !== ',' && token !== ';' && token !== '\t') return false;
    this.#separator ??= token;
    return token === this.#separator;
  }

  #add(text: string): void {
    this.#count(text.length);
    if (this.#tooLarge === null) this.#cell += text;
  }

  #count(bytes: number): void {
    this.#cellBytes += bytes;
    this.#rowBytes += bytes;
    if (this.#cellBytes > MAX_ROW_BYTES) this.#tooLarge = 'cell';
    else if (this.#rowBytes > MAX_ROW_BYTES) this.#tooLarge ??= 'row';
    if (this.#tooLarge !== null) this.#cells = [];
  }

  #endCell(): void {
    this.#count(1);
    if (this.#tooLarge === null) this.#cells.push(this.#cell);
    this.#cell = '';
    this.#cellBytes = 0;
    this.#place = 'start';
  }

  *#endRow(): Generator<Row> {
    this.#endCell();
    const cells = this.#cells;
    const tooLarge = this.#tooLarge;
    this.#cells = [];
    this.#rowBytes = 0;
    this.#tooLarge = null;
    if (tooLarge !== null) {
      const got = `a ${tooLarge} larger than ${MAX_ROW_BYTES.toLocaleString('en')} bytes`;
      yield this.refused(got, 'rows of a few hundred', 'look for a quote that is not closed');
      return;
    }
    if (cells.every((cell) => cell.trim() === '')) return;
    this.#separator ??= ',';
    this.#width ??= cells.length;
    yield this.#row(cells);
  }

  #row(bytes: readonly string[]): Row {
    if (bytes.length !== this.#width) {
      const got = `${bytes.length} ${bytes.length === 1 ? 'cell' : 'cells'}`;
      const mark = MARK_NAMES[this.#separator!];
      const remedy = `check the ${mark}s, and put a cell with a ${mark} inside into quotes`;
      return this.refused(got, `as many cells as the first row, ${this.#width}`, remedy);
    }
    const cells: string[] = [];
    for (const cell of bytes) {
      if (PLAIN.test(cell)) {
        cells.push(cell);
        continue;
      }
      const decoded = decodeText(Buffer.from(cell, 'latin1'), { encoding: 'utf-8', bytes: [] });
      if (!decoded.ok) return this.refused(`${decoded.got}, in cell ${cells.length + 1}`, TEXT_ALLOWED, TEXT_REMEDY);
      cells.push(decoded.text);
    }
    return { source: `line ${this.#firstLine}`, cells };
  }
}

const MARK_NAMES: Readonly<Record<string, string>> = { ',': 'comma', ';': 'semicolon', '\t': 'tab' };

/** Bytes that are the same text in UTF-8. */
const PLAIN = /^[\t\r\n -~]*$/;
