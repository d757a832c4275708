import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { addAbortSignal, type Readable } from 'node:stream';
import { jobIssue } from '../../core/index.ts';
import { type RowHeader, readHeader } from '../../output/catalogue/rowDocument.ts';
import { BadInput, badWord } from '../badInput.ts';
import { unreadable } from '../readText.ts';
import { csvRows } from './csvRows.ts';
import { folderRows, someJobNames } from './folderRows.ts';
import { type Part, rangeOf } from './part.ts';
import { RowSupply } from './rowSupply.ts';

/** What the rows come from. */
export interface Source {
  /** Name of the folder or table, or `-` for standard input. */
  readonly input: string;
  readonly standardInput: Readable;
  readonly interrupt: AbortSignal;
  /** Which part of the rows is taken; null for all. */
  readonly part: Part | null;
}

interface OpenedInput extends Omit<OpenedTable, 'first'> {
  /** The job field of each column; empty for a folder, or where the run was interrupted at once. */
  readonly header: RowHeader;
}

interface OpenedTable {
  readonly supply: RowSupply;
  /** The first row; null where the run was interrupted at once. */
  readonly first: readonly string[] | null;
  /**
   * How much of the input has been read, 0 to 1; null where its size is not known.
   * @param rows rows taken so far
   */
  readonly share: (rows: number) => number | null;
}

/**
 * Opens what the catalogue reads: a folder of jobs, or a table whose first row is read here.
 * @throws BadInput
 */
export async function openInput(source: Source): Promise<OpenedInput> {
  const { input, interrupt, part } = source;
  if (input !== '-' && (await isFolder(input))) {
    const names = await someJobNames(input);
    const taken = part === null ? names : names.slice(...rangeOf(part, names.length));
    const supply = new RowSupply(folderRows(input, taken), input, interrupt);
    return { supply, header: [], share: (rows) => shareOf(rows, taken.length) };
  }
  const { first, ...table } = await openTable(source);
  return { ...table, header: first === null ? [] : jobHeader(first) };
}

/**
 * The job field of each column.
 * @throws BadInput
 */
export function jobHeader(first: readonly string[]): RowHeader {
  const read = readHeader(first);
  if (!read.ok) throw new BadInput(read.issues);
  return read.header;
}

/**
 * Opens a table, whose first row is read here, whatever its columns are.
 * @throws BadInput
 */
export async function openTable({ input, standardInput, interrupt, part }: Source): Promise<OpenedTable> {
  const found = input === '-' ? null : await stat(input).catch(() => null);
  const size = found?.isFile() ? found.size : null;
  if (part !== null && size === null) {
    const got = input === '-' ? 'standard input' : `${input}, a pipe`;
    throw badWord('--part', got, 'a table or a folder, whose rows can be counted first');
  }
  const range = part === null ? undefined : rangeOf(part, await countRows(input, interrupt));
  const file = input === '-' ? null : createReadStream(input);
  const share = (rows: number): number | null => {
    if (range !== undefined) return shareOf(rows, range[1] - range[0]);
    return file === null || size === null ? null : shareOf(file.bytesRead, size);
  };
  const supply = new RowSupply(csvRows(addAbortSignal(interrupt, file ?? standardInput)), input, interrupt);
  const { value: first } = await supply.rows.next();
  if (supply.fault !== null) throw new BadInput([supply.fault]);
  if (first === undefined && interrupt.aborted) return { supply, first: null, share };
  if (first === undefined)
    throw unusable('(file)', 'an empty table', 'a first row that names the columns', 'see --help');
  if ('issue' in first) throw new BadInput([{ ...first.issue, path: first.source }]);
  if (range !== undefined) supply.takeOnly(...range);
  return { supply, first: 'cells' in first ? first.cells : [], share };
}

const shareOf = (done: number, all: number): number => (all === 0 ? 1 : Math.min(1, done / all));

/** Rows of a table after its first; where it cannot be read, those up to there: the run itself says why. */
async function countRows(table: string, interrupt: AbortSignal): Promise<number> {
  const { rows } = new RowSupply(csvRows(createReadStream(table)), table, interrupt);
  let count = -1;
  for await (const _ of rows) count++;
  return Math.max(0, count);
}

/** Opens a table of books for ready-made covers; a column that is no book field would be ignored and so is refused. */
export async function openBooks(source: Source): Promise<OpenedInput> {
  const { input } = source;
  if (input !== '-' && (await isFolder(input)))
    throw unusable('--books', `a folder: ${input}`, 'a table of books', 'put the books into a table');
  const opened = await openInput(source);
  const other = opened.header.filter((path) => path !== 'name' && !/^book(\.|$)/.test(path));
  if (other.length === 0) return opened;
  throw new BadInput(
    other.map((path) =>
      jobIssue('unknown_field', path, 'a column that is no book field', 'name and book fields', 'take it out'),
    ),
  );
}

export async function isFolder(name: string): Promise<boolean> {
  try {
    return (await stat(name)).isDirectory();
  } catch (error) {
    throw new BadInput([unreadable(error, name)]);
  }
}

const unusable = (path: string, got: string, allowed: string, remedy: string): BadInput =>
  new BadInput([jobIssue('unreadable', path, got, allowed, remedy)]);
