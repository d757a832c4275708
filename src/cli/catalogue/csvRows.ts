import type { Readable } from 'node:stream';
import { type CsvError, parse } from 'csv-parse';
import { type JobIssue, jobIssue } from '../../core/job/jobIssue.ts';
import type { Row } from './row.ts';

/** Longest row read, in bytes; without a cap one unclosed quote would take the rest of the file into memory. */
const MAX_ROW_BYTES = 1_000_000;

/**
 * Reads a table (RFC 4180: commas, cells with commas, quotes or line breaks in quotes, quotes doubled) row by row.
 *
 * Empty rows are passed over, stray quotes are taken as text. A row of another length than the first, or whose quote is
 * never closed, comes as an issue in its place. Lines are counted from 1; a row that spans several is named by its first.
 */
export async function* csvRows(input: Readable): AsyncGenerator<Row> {
  const broken: { readonly line: number; readonly row: Row }[] = [];
  const lines = new LineCount();
  const parser = input.pipe(
    parse({
      bom: true,
      skip_empty_lines: true,
      skip_records_with_empty_values: true,
      skip_records_with_error: true,
      relax_quotes: true,
      max_record_size: MAX_ROW_BYTES,
      // The line travels as a first cell.
      on_record: (cells: string[], info) => [String(lines.firstOf(cells, info.lines)), ...cells],
      on_skip: (error) => {
        if (error === undefined) return undefined;
        const isWhole = Array.isArray(error.record);
        const line = isWhole ? lines.firstOf(error.record as string[], Number(error.lines)) : lines.last + 1;
        // A row that runs on is reported again with every chunk of the file.
        if (line !== broken.at(-1)?.line) broken.push({ line, row: { ...at(line), issue: rowIssue(error) } });
        return undefined;
      },
    }),
  );
  input.on('error', (error) => parser.destroy(error));
  for await (const [line, ...cells] of parser as AsyncIterable<string[]>) {
    while (broken.length > 0 && broken[0]!.line < Number(line)) yield broken.shift()!.row;
    yield { ...at(Number(line)), cells };
  }
  for (const { row } of broken) yield row;
}

const at = (line: number) => ({ source: `line ${line}` });

/** Tells where rows begin; the parser tells where they end, and counts a CR LF inside quotes as two lines. */
class LineCount {
  /** Line on which the latest whole row ends. */
  last = 0;
  #surplus = 0;

  firstOf(cells: readonly string[], end: number): number {
    let inside = 0;
    for (const cell of cells) {
      if (!/[\r\n]/.test(cell)) continue;
      inside += cell.split(/\r\n|\r|\n/).length - 1;
      this.#surplus += cell.split('\r\n').length - 1;
    }
    this.last = end - this.#surplus;
    return this.last - inside;
  }
}

function rowIssue(error: CsvError): JobIssue {
  if (Array.isArray(error.record))
    return jobIssue(
      'rule',
      '(row)',
      `${error.record.length} ${error.record.length === 1 ? 'cell' : 'cells'}`,
      'as many cells as the first row',
      'check the commas, and put a cell with commas inside into quotes',
    );
  return jobIssue(
    'unreadable',
    '(row)',
    'a quote that is not closed',
    'quotes in pairs',
    'close the quote; nothing after it could be read',
  );
}
