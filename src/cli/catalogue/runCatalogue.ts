import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import process from 'node:process';
import { addAbortSignal } from 'node:stream';
import { isatty } from 'node:tty';
import { jobIssue } from '../../core/index.ts';
import { type RowHeader, readHeader } from '../../output/catalogue/rowDocument.ts';
import { readStockCovers, type StockCover } from '../../output/catalogue/stockCover.ts';
import { BadInput } from '../badInput.ts';
import { EXIT } from '../exitCode.ts';
import { complain, print, say } from '../output.ts';
import { readText, unreadable } from '../readText.ts';
import { type CatalogueArguments, parseCatalogueArguments, USAGE } from './arguments.ts';
import { type BatchResult, batchWork, outputHeader, type Task } from './batchWork.ts';
import { csvRows } from './csvRows.ts';
import { folderRows, jobNames } from './folderRows.ts';
import { batches, inOrder } from './inOrder.ts';
import { startPool } from './pool.ts';
import type { Row } from './row.ts';
import { RowSupply } from './rowSupply.ts';

/** Rows handed over at a time: enough that handing over costs little, few enough that memory stays small. */
const BATCH = 256;

/** Batches under way for each thread, so that it finds the next when it is done with one. */
const AHEAD = 3;

/**
 * Runs the catalogue command.
 * @param script the bundled script, which threads run too
 * @returns the exit code
 */
export async function runCatalogue(args: readonly string[], script: URL): Promise<number> {
  const words = parseCatalogueArguments(args);
  if (words !== null) return compute(words, script);
  await print(USAGE);
  return EXIT.noneFails;
}

async function compute(words: CatalogueArguments, script: URL): Promise<number> {
  const interrupt = new AbortController();
  // Once: pressed again, it ends the process at once.
  process.once('SIGINT', () => interrupt.abort());
  const covers = words.covers === null ? null : await readCovers(words.covers);
  const { supply, header } = await openInput(words.input, covers, interrupt.signal);
  const { to, units, maxGap } = words;
  const task: Task = { header, covers, maxGap, to, units };
  await print(outputHeader(task));

  const count = { done: 0, failing: 0, bad: 0 };
  for await (const result of results(task, supply.rows, words.cores ?? availableParallelism(), script)) {
    await print(result.output);
    await say(result.complaints);
    count.done += result.done;
    count.failing += result.failing;
    count.bad += result.bad;
  }
  if (supply.fault !== null) await complain([supply.fault]);
  const isCut = interrupt.signal.aborted || supply.fault !== null;
  if (isCut || count.bad > 0 || isatty(2)) await say([summary(count, isCut, interrupt.signal.aborted)]);
  if (interrupt.signal.aborted) return EXIT.interrupted;
  if (isCut || count.bad > 0) return EXIT.badInput;
  return count.failing > 0 ? EXIT.fails : EXIT.noneFails;
}

const summary = ({ done, bad }: { done: number; bad: number }, isCut: boolean, isInterrupted: boolean): string =>
  `${isInterrupted ? 'interrupted: ' : ''}${done} done, ${bad} bad; output ${isCut ? 'stops there' : 'complete'}`;

/** Largest file of ready-made covers read: some ten thousand of them. */
const MAX_COVERS_BYTES = 10_000_000;

/** Works the rows off in batches: on one core here, on more in threads, this one being left to reading and writing. */
async function* results(task: Task, rows: AsyncIterable<Row>, cores: number, script: URL): AsyncGenerator<BatchResult> {
  if (cores === 1) {
    const work = batchWork(task);
    for await (const batch of batches(rows, BATCH)) yield work(batch);
    return;
  }
  const pool = startPool(script, task, cores);
  try {
    yield* inOrder(batches(rows, BATCH), (batch) => pool.run(batch), AHEAD * cores);
  } finally {
    await pool.close();
  }
}

async function openInput(input: string, covers: readonly StockCover[] | null, interrupt: AbortSignal) {
  if (input !== '-' && (await isFolder(input))) {
    if (covers !== null) throw bad('--books', `a folder: ${input}`, 'a table of books', 'put the books into a table');
    const names = await jobNames(input).catch((error) => {
      throw new BadInput([unreadable(error, input)]);
    });
    if (names.length === 0)
      throw bad('(file)', `no job files in ${input}`, 'a folder with .json files', 'check the name and the place');
    return { supply: new RowSupply(folderRows(input, names), input, interrupt), header: [] };
  }
  const stream = addAbortSignal(interrupt, input === '-' ? process.stdin : createReadStream(input));
  const supply = new RowSupply(csvRows(stream), input, interrupt);
  const { value: first } = await supply.rows.next();
  if (supply.fault !== null) throw new BadInput([supply.fault]);
  if (first === undefined && interrupt.aborted) return { supply, header: [] };
  if (first === undefined) throw bad('(file)', 'an empty table', 'a first row that names the columns', 'see --help');
  if ('issue' in first) throw new BadInput([{ ...first.issue, path: first.source }]);
  const read = readHeader('cells' in first ? first.cells : []);
  if (!read.ok) throw new BadInput(read.issues);
  if (covers !== null) refuseOtherColumns(read.header);
  return { supply, header: read.header };
}

/** A column that would be passed over in silence is a mistake. */
function refuseOtherColumns(header: RowHeader): void {
  const other = header.filter((path) => path !== 'name' && !/^book(\.|$)/.test(path));
  if (other.length > 0)
    throw new BadInput(
      other.map((path) =>
        jobIssue('unknown_field', path, 'a column that is no book field', 'name and book fields', 'take it out'),
      ),
    );
}

async function readCovers(file: string): Promise<readonly StockCover[]> {
  const text = await readText(file, MAX_COVERS_BYTES);
  if (!text.ok) throw new BadInput([text.issue]);
  let value: unknown;
  try {
    value = JSON.parse(text.text);
  } catch (error) {
    throw bad(file, error instanceof Error ? error.message : String(error), 'a set of covers in JSON', 'see --help');
  }
  const read = readStockCovers(value);
  if (!read.ok) throw new BadInput(read.issues.map((issue) => ({ ...issue, path: `${file}: ${issue.path}` })));
  return read.covers;
}

async function isFolder(name: string): Promise<boolean> {
  try {
    return (await stat(name)).isDirectory();
  } catch (error) {
    throw new BadInput([unreadable(error, name)]);
  }
}

const bad = (path: string, got: string, allowed: string, remedy: string): BadInput =>
  new BadInput([jobIssue('unreadable', path, got, allowed, remedy)]);
