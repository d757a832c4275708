import {
  fieldNote,
  isColour,
  isJobPath,
  isLeather,
  isRecord,
  JOB_MIGRATIONS,
  JOB_PATHS,
  type JobDocument,
  type JobIssue,
  type JobPath,
  jobIssue,
  jobSchema,
  keysOf,
  numberFields,
  type ParsedJob,
  type Patch,
  parseJob,
  type Reading,
  readField,
  workedIn,
} from '../../core/index.ts';

/** The checked paths of a table's header, in column order. */
export type RowHeader = readonly JobPath[];

export type ReadHeader =
  | { readonly ok: true; readonly header: RowHeader }
  | { readonly ok: false; readonly issues: readonly JobIssue[] };

const COLUMN = /^[A-Za-z][A-Za-z0-9_ ]*(\.[A-Za-z][A-Za-z0-9_ ]*)*$/;
/** Columns whose cells are always text. */
const TEXTS: ReadonlySet<JobPath> = new Set(['name', 'rates.maker', 'rates.currency']);

/** Columns whose cells are several whole numbers. */
const LISTS: ReadonlySet<JobPath> = new Set(['seam.iron.teeth']);

/** Columns whose cells are read like typed fields of the page. */
const NUMBERS = new Set(
  (Object.keys(jobSchema.shape) as (keyof typeof jobSchema.shape)[])
    .flatMap((section) => numberFields(section))
    .map(({ path }) => path),
);

const LIST = /^\d+([\s,;]+\d+)*$/;

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/**
 * Checks the header of a table of jobs: each column names the dotted path of a job field, as `book.width_mm`.
 * @param cells the first row
 * @returns the paths, or an issue for every column that is empty, named twice, inside another column, or no field of a
 *   job
 */
export function readHeader(cells: readonly string[]): ReadHeader {
  const names = cells.map((cell) => cell.trim());
  const issues = names.flatMap((name, i) => {
    if (!COLUMN.test(name))
      return [badColumn(name || `(column ${i + 1})`, name === '' ? 'no name' : 'a name that is no path')];
    if (!isJobPath(name)) return [badColumn(name, 'a field that a job does not have')];
    if (isPart(name)) return [badColumn(name, 'a part of the job, not one field')];
    if (names.indexOf(name) < i) return [badColumn(name, 'the same column twice')];
    if (names.some((other) => isInside(other, name))) return [badColumn(name, 'a column that holds others')];
    return [];
  });
  return names.every(isJobPath) && issues.length === 0 ? { ok: true, header: names } : { ok: false, issues };
}

/** Whether a column fills a part of what another fills; a leather's own column fills the two ends of its range. */
const isInside = (path: string, outer: string): boolean =>
  isJobPath(outer) && isLeather(outer)
    ? [`${outer}.min_mm`, `${outer}.max_mm`].includes(path)
    : path.startsWith(`${outer}.`);

/** Whether a path names a group of fields, which no cell can fill; a leather is given by its weight. */
const isPart = (path: JobPath): boolean => !isLeather(path) && JOB_PATHS.some((other) => other.startsWith(`${path}.`));

/** A column of a table, and what the reading of its cells follows from. */
interface Column {
  readonly path: JobPath;
  readonly keys: readonly string[];
  /** A leather or a colour. */
  readonly isWords: boolean;
  readonly isNumber: boolean;
  readonly isText: boolean;
  readonly isList: boolean;
}

/** The columns of a table. */
export type Columns = readonly Column[];

/** What is known of the columns of a table before its first row. */
export const columnsOf = (header: RowHeader): Columns =>
  header.map((path) => ({
    path,
    keys: keysOf(path),
    isWords: isLeather(path) || isColour(path),
    isNumber: NUMBERS.has(path),
    isText: TEXTS.has(path),
    isList: LISTS.has(path),
  }));

/**
 * Makes an unchecked job document from one row.
 *
 * An empty cell leaves its field out, so that the default applies; `null` lets the tool decide. Lengths, leather
 * weights and other numbers are read like typed fields of the page, without a unit in the unit of the column; what
 * cannot be read stays text, which the check refuses. Elsewhere `true`, `false` and numbers are read as such, except in
 * a name. Format and current version are filled in where no column gives them.
 * @param cells as many as the header has, or fewer
 */
export function rowDocument(columns: Columns, cells: readonly string[]): JobDocument {
  const document: Record<string, unknown> = { format: 'coverwright-job', version: JOB_MIGRATIONS.length + 1 };
  for (let i = 0; i < columns.length; i++) {
    const column = columns[i]!;
    const text = cells[i]?.trim() ?? '';
    if (text === '') continue;
    const typed = readTyped(column, text);
    if (typed?.ok) for (const { path, value } of typed.value) put(document, keysOf(path), value);
    else put(document, column.keys, typed === null ? plainValue(column, text) : text);
  }
  return document;
}

/** As `patched`, but in place. */
function put(document: Record<string, unknown>, keys: readonly string[], value: unknown): void {
  let part = document;
  for (let i = 0; i < keys.length - 1; i++) {
    const inner = part[keys[i]!];
    const record = isRecord(inner) ? (inner as Record<string, unknown>) : {};
    part[keys[i]!] = record;
    part = record;
  }
  part[keys[keys.length - 1]!] = value;
}

/** Checks one row as a job; a cell that cannot be read is refused in the words of the page. */
export function parseRow(columns: Columns, cells: readonly string[], units: 'mm' | 'in' | null = null): ParsedJob {
  const parsed = parseJob(workedIn(rowDocument(columns, cells), units));
  return parsed.ok ? parsed : { ok: false, issues: inTableWords(parsed.issues, columns, cells) };
}

/** The issues of a row's document; for a cell that cannot be read, what is wrong with its text. */
export function inTableWords(
  issues: readonly JobIssue[],
  columns: Columns,
  cells: readonly string[],
): readonly JobIssue[] {
  return issues.map((issue) => {
    const at = columns.findIndex(({ path }) => path === issue.path);
    const column = columns[at];
    if (column === undefined) return issue;
    const text = cells[at]?.trim() ?? '';
    if (column.isList && !LIST.test(text))
      return jobIssue(
        'type',
        column.path,
        JSON.stringify(text.slice(0, 40)),
        'whole numbers, as 2 10',
        'write them with spaces',
      );
    const typed = text === '' ? null : readTyped(column, text);
    if (typed === null || typed.ok) return issue;
    return jobIssue('type', column.path, JSON.stringify(text.slice(0, 40)), typedAllowed(column.path), typed.remedy);
  });
}

/** Reads a cell like a typed field; null for a plain JSON value and for a column of another kind. */
function readTyped({ path, isWords, isNumber }: Column, text: string): Reading<readonly Patch[]> | null {
  const isTyped = isWords ? text !== 'null' : isNumber && text !== 'null' && !NUMBER.test(text);
  return isTyped ? readField(path, text, 'mm') : null;
}

function typedAllowed(path: JobPath): string {
  if (isLeather(path)) return 'a weight or thickness as sold, such as 4-5 oz, 4.5 oz or 1.6-2.0 mm';
  if (isColour(path)) return 'a colour as #8f5b3a';
  const { min, max, unit } = fieldNote(path);
  // A share is kept as a fraction and typed in percent.
  const times = unit === '%' ? 100 : 1;
  return `${times * min} to ${times * max}${unit === '' ? '' : ` ${unit}`}${unit === 'mm' ? ', as 216, 21.6 cm or 8 1/2 in' : ''}`;
}

function plainValue({ isText, isList }: Column, text: string): unknown {
  if (isText) return text;
  if (isList && LIST.test(text)) return text.split(/[\s,;]+/).map(Number);
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
