import { createReadStream } from 'node:fs';
import { jobIssue } from '../../core/index.ts';
import { BadInput } from '../badInput.ts';
import { unreadable } from '../readText.ts';
import { batchWork, outputHeader, type Task } from './batchWork.ts';
import { csvRows } from './csvRows.ts';
import type { Row } from './row.ts';

/** What an earlier run has left in its output file: whole lines, and perhaps a broken one, which is not counted. */
export interface EarlierRun {
  readonly bytes: number;
  readonly rows: number;
  /** Of the rows those that fail, or the books without a cover. */
  readonly failing: number;
  /** The last row: where it came from, and its line. */
  readonly last: { readonly source: string; readonly line: Buffer } | null;
}

/**
 * Reads what an earlier run with the same task has written.
 * @param withHeader whether a table begins with the names of its columns
 * @returns null where there is no such file
 * @throws BadInput for a file that such a run has not written
 */
export async function earlierRun(file: string, task: Task, withHeader: boolean): Promise<EarlierRun | null> {
  const isTable = task.to === 'csv';
  const header = withHeader ? outputHeader(task) : '';
  try {
    const { bytes, first, last } = await wholeLines(file, isTable);
    const isHeaded = header !== '' && first !== null;
    if (isHeaded && first.toString() !== header) throw notOurs(file, 'a table with other columns');
    let rows = 0;
    let failing = 0;
    let source: string | null = null;
    for await (const told of isTable ? tableRows(file, bytes, task.separator) : jsonRows(file, bytes)) {
      if (rows++ === 0 && isHeaded) continue;
      if (told.fails) failing++;
      source = told.source;
    }
    if (isHeaded) rows--;
    return { bytes, rows, failing, last: source === null || last === null ? null : { source, line: last } };
  } catch (error) {
    if (error instanceof BadInput) throw error;
    if (error instanceof SyntaxError) throw notOurs(file, 'a line that is no report');
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw new BadInput([{ ...unreadable(error, file), path: '--out' }]);
  }
}

/**
 * The rows after the last one of an earlier run. That one is worked once more, to see that the run was of the same table, in the
 * same way.
 * @param passed takes how many rows lie before the first one given, and the last of them
 * @throws BadInput where it was not
 */
export async function* rowsAfter(
  rows: AsyncIterable<Row>,
  { last }: EarlierRun,
  file: string,
  task: Task,
  passed: (rows: number) => void,
): AsyncGenerator<Row, undefined> {
  let count = 0;
  let isFound = last === null;
  for await (const row of rows) {
    if (isFound) {
      yield row;
      continue;
    }
    count++;
    if (last === null || asWritten(row.source) !== last.source) continue;
    if (!last.line.equals(batchWork(task)([row]).output)) throw notOurs(file, `another line for ${row.source}`);
    isFound = true;
    passed(count);
  }
  if (!isFound) throw notOurs(file, `a line for ${last?.source}, which is not in this input`);
}

/** A table marks a text that a spreadsheet would run as a formula. */
const asWritten = (source: string): string => source.replace(/^'(?=[=+\-@])/, '');

const notOurs = (file: string, got: string): BadInput =>
  new BadInput([
    jobIssue(
      'rule',
      '--resume',
      `${file} with ${got}`,
      'the output of the same run, broken off',
      'leave out --resume to write it anew',
    ),
  ]);

/** How far a file has whole lines, with the first and the last of them; a table has line breaks in quotes. */
async function wholeLines(file: string, isTable: boolean) {
  let [bytes, read, isQuoted] = [0, 0, false];
  let first: Buffer | null = null;
  let last: Buffer | null = null;
  let rest: Buffer[] = [];
  for await (const chunk of createReadStream(file) as AsyncIterable<Buffer>) {
    let start = 0;
    for (let i = 0; i < chunk.length; i++) {
      if (isTable && chunk[i] === QUOTE) isQuoted = !isQuoted;
      if (chunk[i] !== LINE_FEED || isQuoted) continue;
      last = Buffer.concat([...rest, chunk.subarray(start, i + 1)]);
      first ??= last;
      rest = [];
      start = i + 1;
      bytes = read + start;
    }
    rest.push(chunk.subarray(start));
    read += chunk.length;
  }
  return { bytes, first, last };
}

const QUOTE = 0x22;
const LINE_FEED = 0x0a;

interface ToldRow {
  readonly source: string;
  readonly fails: boolean;
}

async function* tableRows(file: string, bytes: number, separator: string): AsyncGenerator<ToldRow> {
  if (bytes === 0) return;
  for await (const row of csvRows(createReadStream(file, { end: bytes - 1 }), separator)) {
    const [source, , verdict] = 'cells' in row ? row.cells : [];
    // The third column is the verdict of a job, or the best cover of a book.
    if (source === undefined || verdict === undefined) throw new SyntaxError('no row of a catalogue');
    yield { source: asWritten(source), fails: verdict === 'fails' || verdict === '' };
  }
}

async function* jsonRows(file: string, bytes: number): AsyncGenerator<ToldRow> {
  if (bytes === 0) return;
  let rest = '';
  const decoder = new TextDecoder();
  for await (const chunk of createReadStream(file, { end: bytes - 1 }) as AsyncIterable<Buffer>) {
    const lines = (rest + decoder.decode(chunk, { stream: true })).split('\n');
    rest = lines.pop() ?? '';
    for (const line of lines) {
      const { source, verdict, best } = JSON.parse(line);
      if (typeof source !== 'string') throw new SyntaxError('no line of a catalogue');
      yield { source, fails: verdict === 'fails' || best === null };
    }
  }
}
