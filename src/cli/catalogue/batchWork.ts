import { stringify } from 'csv-stringify/sync';
import { coverDesign, designReport, type JobIssue, parseJobText, tableReport } from '../../core/index.ts';
import { type Cell, REPORT_COLUMNS, reportRow } from '../../output/catalogue/reportColumns.ts';
import {
  type Columns,
  columnsOf,
  inTableWords,
  parseRow,
  type RowHeader,
  rowDocument,
} from '../../output/catalogue/rowDocument.ts';
import type { StockCover } from '../../output/catalogue/stockCover.ts';
import { bookInCovers, matchBook, matchColumns, matchRow } from '../../output/catalogue/stockMatch.ts';
import type { Row } from './row.ts';

/** What is to be done with every row; plain data, so that it can be handed to another thread. */
export interface Task {
  /** Empty for a folder of jobs. */
  readonly header: RowHeader;
  /** Null to compute jobs, else the covers to try on books. */
  readonly covers: readonly StockCover[] | null;
  readonly maxGap: number | null;
  readonly to: 'csv' | 'jsonl';
  /** Unit that a job which names none is worked in; null for the default. */
  readonly units: 'mm' | 'in' | null;
  /** Between the cells of a table. */
  readonly separator: string;
  /** Whether the rows are only checked, and nothing is computed or written. */
  readonly isDry: boolean;
}

/** What became of a batch of rows. */
export interface BatchResult {
  /** For standard output, whole lines in the order of the rows, in UTF-8: bytes are handed over, where text is copied. */
  readonly output: Uint8Array<ArrayBuffer>;
  /** For standard error. */
  readonly complaints: readonly string[];
  /** Rows computed, and of these the ones that fail, or the books without a cover. */
  readonly done: number;
  readonly failing: number;
  /** Rows left out. */
  readonly bad: number;
}

/** The cells of a row of a table, or what becomes a line of JSON. */
type Answer = ({ readonly cells: readonly Cell[] } | { readonly record: object }) & { readonly fails: boolean };

/** No answer where the row was only checked. */
type Answered =
  | { readonly ok: true; readonly answer: Answer | null }
  | { readonly ok: false; readonly issues: readonly JobIssue[] };

/** The first row of a table of answers; nothing for JSON Lines. */
export const outputHeader = ({ to, covers, separator }: Task): string =>
  to === 'csv' ? table([['source', ...(covers === null ? REPORT_COLUMNS : matchColumns(covers))]], separator) : '';

/** Makes the function that turns batches of rows into output. */
export function batchWork(task: Task): (rows: readonly Row[]) => BatchResult {
  const columns = columnsOf(task.header);
  return (rows) => {
    const lines: string[] = [];
    const tableRows: Cell[][] = [];
    const complaints: string[] = [];
    let failing = 0;
    let bad = 0;
    for (const row of rows) {
      const answered = answerOf(task, columns, row);
      if (!answered.ok) {
        bad++;
        for (const { path, message } of answered.issues) complaints.push(`${row.source}: ${path}: ${message}`);
        continue;
      }
      if (answered.answer === null) continue;
      const { answer } = answered;
      if (answer.fails) failing++;
      if ('cells' in answer) tableRows.push([row.source, ...answer.cells]);
      else lines.push(`${JSON.stringify({ source: row.source, ...answer.record })}\n`);
    }
    const output = new TextEncoder().encode(task.to === 'csv' ? table(tableRows, task.separator) : lines.join(''));
    return { output, complaints, done: rows.length - bad, failing, bad };
  };
}

/** Names come from others: a text that a spreadsheet would run as a formula is marked as text. */
export const table = (rows: readonly (readonly Cell[])[], delimiter: string): string =>
  stringify(rows as Cell[][], { escape_formulas: true, delimiter });

function answerOf(task: Task, columns: Columns, row: Row): Answered {
  if ('issue' in row) return { ok: false, issues: [row.issue] };
  const { covers, maxGap, units } = task;
  if (covers !== null && 'cells' in row) {
    const book = rowDocument(columns, row.cells);
    const matched = task.isDry ? bookInCovers(book, covers) : matchBook(book, covers, maxGap);
    if (!matched.ok) return { ok: false, issues: inTableWords(matched.issues, columns, row.cells) };
    if (!('match' in matched)) return { ok: true, answer: null };
    const { match } = matched;
    const fails = match.best === null;
    return { ok: true, answer: task.to === 'csv' ? { cells: matchRow(match), fails } : { record: match, fails } };
  }
  const parsed = 'cells' in row ? parseRow(columns, row.cells, units) : parseJobText(row.text, units);
  if (!parsed.ok) return parsed;
  if (task.isDry) return { ok: true, answer: null };
  const design = coverDesign(parsed.job);
  if (task.to === 'csv') {
    const report = tableReport(design);
    return { ok: true, answer: { cells: reportRow(parsed.job.name, report), fails: report.verdict === 'fails' } };
  }
  const record = designReport(design);
  return { ok: true, answer: { record, fails: record.verdict === 'fails' } };
}
