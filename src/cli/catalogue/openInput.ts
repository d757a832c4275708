import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { addAbortSignal, type Readable } from 'node:stream';
import { jobIssue } from '../../core/index.ts';
import { type RowHeader, readHeader } from '../../output/catalogue/rowDocument.ts';
import { BadInput } from '../badInput.ts';
import { unreadable } from '../readText.ts';
import { csvRows } from './csvRows.ts';
import { folderRows, jobNames } from './folderRows.ts';
import { RowSupply } from './rowSupply.ts';

/**
 * Opens what the catalogue reads: a folder of jobs, or a table whose first row is read here.
 * @param input name of the folder or table, or `-` for standard input
 * @returns the rows, and the job field of each column; no fields for a folder, or where the run was interrupted at once
 * @throws BadInput
 */
export async function openInput(
  input: string,
  standardInput: Readable,
  interrupt: AbortSignal,
): Promise<{ supply: RowSupply; header: RowHeader }> {
  if (input !== '-' && (await isFolder(input))) {
    const names = await jobNames(input).catch((error) => {
      throw new BadInput([unreadable(error, input)]);
    });
    if (names.length === 0)
      throw unusable('(file)', `no job files in ${input}`, 'a folder with .json files', 'check the name and the place');
    return { supply: new RowSupply(folderRows(input, names), input, interrupt), header: [] };
  }
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
  return { supply, header: read.header };
}

/** Opens a table of books for ready-made covers; a column that is no book field would be ignored and so is refused. */
export async function openBooks(input: string, standardInput: Readable, interrupt: AbortSignal) {
  if (input !== '-' && (await isFolder(input)))
    throw unusable('--books', `a folder: ${input}`, 'a table of books', 'put the books into a table');
  const opened = await openInput(input, standardInput, interrupt);
  const other = opened.header.filter((path) => path !== 'name' && !/^book(\.|$)/.test(path));
  if (other.length === 0) return opened;
  throw new BadInput(
    other.map((path) =>
      jobIssue('unknown_field', path, 'a column that is no book field', 'name and book fields', 'take it out'),
    ),
  );
}

async function isFolder(name: string): Promise<boolean> {
  try {
    return (await stat(name)).isDirectory();
  } catch (error) {
    throw new BadInput([unreadable(error, name)]);
  }
}

const unusable = (path: string, got: string, allowed: string, remedy: string): BadInput =>
  new BadInput([jobIssue('unreadable', path, got, allowed, remedy)]);
