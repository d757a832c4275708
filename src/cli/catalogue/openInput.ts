import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { addAbortSignal, type Readable } from 'node:stream';
import { jobIssue } from '../../core/index.ts';
import { type RowHeader, readHeader } from '../../output/catalogue/rowDocument.ts';
import { BadInput, badWord } from '../badInput.ts';
import { unreadable } from '../readText.ts';
import { csvRows } from './csvRows.ts';
import { folderRows, jobNames } from './folderRows.ts';
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

interface OpenedInput {
  readonly supply: RowSupply;
  /** The job field of each column; empty for a folder, or where the run was interrupted at once. */
  readonly header: RowHeader;
}

/**
 * Opens what the catalogue reads: a folder of jobs, or a table whose first row is read here.
 * @throws BadInput
 */
export async function openInput({ input, standardInput, interrupt, part }: Source): Promise<OpenedInput> {
  if (input !== '-' && (await isFolder(input))) {
    const names = await jobNames(input).catch((error) => {
      throw new BadInput([unreadable(error, input)]);
    });
    if (names.length === 0)
      throw unusable('(file)', `no job files in ${input}`, 'a folder with .json files', 'check the name and the place');
    const taken = part === null ? names : names.slice(...rangeOf(part, names.length));
    return { supply: new RowSupply(folderRows(input, taken), input, interrupt), header: [] };
  }
  if (input === '-' && part !== null)
    throw badWord('--part', 'standard input', 'a table or a folder, whose rows can be counted first');
  const range = part === null ? undefined : rangeOf(part, await countRows(input));
  const stream = addAbortSignal(interrupt, input === '-' ? standardInput : createReadStream(input));
  const supply = new RowSupply(csvRows(stream), input, interrupt);
  const { value: first } = await supply.rows.next();
  if (supply.fault !== null) throw new BadInput([supply.fault]);
  if (first === undefined && interrupt.aborted) return { supply, header: [] };
  if (first === undefined)
    throw unusable('(file)', 'an empty table', 'a first row that names the columns', 'see --help');
  if ('issue' in first) throw new BadInput([{ ...first.issue, path: first.source }]);
  const read = readHeader('cells' in first ? first.cells : []);
  if (!read.ok) throw new BadInput(read.issues);
  if (range !== undefined) supply.takeOnly(...range);
  return { supply, header: read.header };
}

/** Rows of a table after its first; where it cannot be read, those up to there: the run itself says why. */
async function countRows(table: string): Promise<number> {
  let rows = -1;
  try {
    for await (const _ of csvRows(createReadStream(table))) rows++;
  } catch (error) {
    unreadable(error, table);
  }
  return Math.max(0, rows);
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
