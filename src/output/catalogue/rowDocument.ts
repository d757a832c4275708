import { type JobDocument, patched } from '../../core/job/jobDocument.ts';
import { type JobIssue, jobIssue } from '../../core/job/jobIssue.ts';
import { JOB_MIGRATIONS } from '../../core/job/migrate.ts';
import { parseJob } from '../../core/job/parseJob.ts';

/** Where each cell of a row goes: the paths of a table's header, checked, in column order. */
export type RowHeader = readonly string[];

export type ReadHeader =
  | { readonly ok: true; readonly header: RowHeader }
  | { readonly ok: false; readonly issues: readonly JobIssue[] };

const COLUMN = /^[A-Za-z][A-Za-z0-9_ ]*(\.[A-Za-z][A-Za-z0-9_ ]*)*$/;
/** Columns whose cells stay texts even where they look like something else. */
const TEXTS = new Set(['name', 'rates.currency']);

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/**
 * Checks the header of a table of jobs: each column names the dotted path of a job field, as `book.width_mm`.
 * @param cells the first row
 * @returns the paths, or every column that is empty, named twice, inside another column, or no field of a job
 */
export function readHeader(cells: readonly string[]): ReadHeader {
  const names = cells.map((cell) => cell.trim());
  const issues = names.flatMap((name, i) => {
    if (!COLUMN.test(name))
      return [badColumn(name || `(column ${i + 1})`, name === '' ? 'no name' : 'a name that is no path')];
    if (names.indexOf(name) < i) return [badColumn(name, 'the same column twice')];
    if (names.some((other) => other.startsWith(`${name}.`))) return [badColumn(name, 'a column that holds others')];
    return [];
  });
  if (issues.length > 0) return { ok: false, issues };
  const unknown = unknownColumns(names);
  return unknown.length > 0 ? { ok: false, issues: unknown } : { ok: true, header: names };
}

/** A job that has the columns and nothing else: what the schema does not know of it, it names. */
function unknownColumns(header: RowHeader): JobIssue[] {
  const parsed = parseJob(
    rowDocument(
      header,
      header.map(() => '0'),
    ),
  );
  if (parsed.ok) return [];
  return parsed.issues.filter(
    ({ code, got, allowed }) => code === 'unknown_field' || (code === 'type' && [got, allowed].includes('an object')),
  );
}

/**
 * Makes a job document, still to be checked, of one row.
 *
 * An empty cell leaves its field out, so that the default applies; `null` lets the tool decide; `true`, `false` and what
 * reads as a number are such, except in the name. Format and current version are filled in where no column gives them.
 * @param cells as many as the header has, or fewer
 */
export function rowDocument(header: RowHeader, cells: readonly string[]): JobDocument {
  const filled = header.flatMap((path, i) => {
    const text = cells[i]?.trim() ?? '';
    return text === '' ? [] : [{ path, value: TEXTS.has(path) ? text : cellValue(text) }];
  });
  return patched({ format: 'coverwright-job', version: JOB_MIGRATIONS.length + 1 }, filled);
}

function cellValue(text: string): unknown {
  if (text === 'null') return null;
  if (text === 'true' || text === 'false') return text === 'true';
  return NUMBER.test(text) ? Number(text) : text;
}

const badColumn = (path: string, got: string): JobIssue =>
  jobIssue(
    'unknown_field',
    path,
    got,
    'dotted paths of job fields, each once, as in name,book.width_mm,leather.outside.min_mm',
    'name every column in the first row, with commas between them',
  );
