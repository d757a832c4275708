import { lstat, open as openFile, realpath, rm } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { dirname, extname } from 'node:path';
import process from 'node:process';
import type { Readable } from 'node:stream';
import { jobIssue } from '../../core/index.ts';
import { readStockCovers, type StockCover } from '../../output/catalogue/stockCover.ts';
import { templateTable } from '../../output/catalogue/templateTable.ts';
import { BadInput, badWord } from '../badInput.ts';
import { EXIT } from '../exitCode.ts';
import { readText } from '../readText.ts';
import { type Command, command } from '../runCommand.ts';
import { FileSink, type Terminal } from '../terminal.ts';
import type { Words } from '../words.ts';
import { type BatchResult, batchWork, outputHeader, type Task, table } from './batchWork.ts';
import { type EarlierRun, earlierRun, rowsAfter } from './earlierRun.ts';
import { batches, inOrder } from './inOrder.ts';
import { openBooks, openInput } from './openInput.ts';
import { readPart } from './part.ts';
import { startPool } from './pool.ts';
import type { Row } from './row.ts';

const USAGE = `Computes many jobs in one run, one row or line of output for each.

  npm run --silent catalogue -- jobs.csv            jobs from a table
  npm run --silent catalogue -- folder              jobs from all .json files of a folder
  npm run --silent catalogue -- - < jobs.csv        table from standard input
  npm run --silent catalogue -- --covers covers.json --books books.csv
                                                    which ready-made cover fits which book
  npm run --silent catalogue -- --template > jobs.csv
                                                    a table to write over, with the example jobs

The first row of a table names a job field for each column, as in
  name,book.width_mm,book.height_mm,book.thickness_mm,leather.outside.min_mm,leather.outside.max_mm
or, with one column for a leather as it is sold,
  name,book.width_mm,book.height_mm,book.thickness_mm,leather.outside
What stands between the names there, a comma, a semicolon or a tab, separates all cells. Cells are read as on the page:
165.5, 165,5 (in quotes where commas separate), 8 1/2 in, 21.6 cm; 4-5 oz or 1.6-2.0 mm for a leather, 4 oz for one end.
A number without a unit is in the unit that its column's name ends with.

A table of books has name and book fields only. Covers stand in a file
  {"format": "coverwright-covers", "version": 1, "covers": [{"name": ..., "leather": ..., "pattern": ..., ...}]}
with the fields of a job but no book; cut width, cut height and pocket depth must be given.

  --to jsonl       a JSON document a line (usual)
  --to csv         a table
  --separator ,    between the cells of a table that is written: , ; or tab
  --out file       where the output goes, instead of standard output; an older file there is replaced, but none that is read
  --resume         goes on with the output that a run broken off has left in --out, after its last whole line
  --part k/n       only the k-th of n parts of the rows; the outputs of all parts, one after another, are that of one run
  --dry-run        only checks every row, computes and writes nothing
  --cores n        cores to use, 1 to 256; usually all
  --units mm|in    unit that a job which names none is worked in (usual: mm); numbers stay in mm
  --max-gap mm     a ready-made cover with a larger gap at any edge is not the best one (else its own loosest gaps)
  --help           this text

Columns chance.closes_percent and chance.fits_percent of a table of jobs: how many of 100 covers close, and how many fit in
every way, by the quick reckoning from the doubts of the inputs, as the verdict goes.

A bad row is named on standard error and left out; the last line there says how many were done, how many were bad, and
whether the output is complete. Ctrl-C ends the run after the rows in hand. Exit code: 0 none fails (every book has a
cover), 1 at least one fails (a book has none), 2 bad input, 3 internal failure, 4 the output could not be written whole,
130 interrupted.
`;

const OPTIONS = {
  to: { type: 'string' },
  units: { type: 'string' },
  cores: { type: 'string' },
  separator: { type: 'string' },
  out: { type: 'string' },
  resume: { type: 'boolean' },
  part: { type: 'string' },
  'dry-run': { type: 'boolean' },
  template: { type: 'boolean' },
  covers: { type: 'string' },
  books: { type: 'string' },
  'max-gap': { type: 'string' },
} as const;

/** Rows handed over at a time: enough that handing over costs little, few enough that memory stays small. */
const BATCH = 256;

/** Batches under way for each thread, so that it finds the next when it is done with one. */
const AHEAD = 3;

/** @param script the bundled script, which the threads run too */
export const catalogueCommand = (script: URL): Command =>
  command(USAGE, OPTIONS, async (words, terminal) => {
    const interrupt = new AbortController();
    const abort = () => interrupt.abort();
    // Once: a second Ctrl-C ends the process at once.
    process.once('SIGINT', abort);
    try {
      return await run(words, terminal, interrupt.signal, script);
    } finally {
      process.off('SIGINT', abort);
    }
  });

async function run(words: Words<typeof OPTIONS>, terminal: Terminal, interrupt: AbortSignal, script: URL) {
  const separator = SEPARATORS[words.choice('separator', [',', ';', 'tab']) ?? ','];
  if (words.has('template')) {
    await terminal.print(table(templateTable(), separator));
    return EXIT.noneFails;
  }
  const { input, coverFile } = chooseInput(words.files, words.text('covers'), words.text('books'));
  const to = words.choice('to', ['jsonl', 'csv']) ?? 'jsonl';
  const units = words.choice('units', ['mm', 'in']);
  const cores = words.number('cores', 1, 256, true) ?? availableParallelism();
  const maxGap = words.number('max-gap', 0, 1000);
  const partText = words.text('part');
  const part = partText === null ? null : readPart(partText);
  const isDry = words.has('dry-run');
  const out = words.text('out');
  if (words.has('resume') && out === null) throw badWord('--resume', 'no --out', '--out, with the file to go on with');
  if (isDry && out !== null) throw badWord('--out', 'it with --dry-run', 'one of the two: a dry run writes nothing');
  if (out !== null && (await isRead(out, [input, coverFile])))
    throw badWord('--out', `${out}, which is read`, 'another file');

  const covers = coverFile === null ? null : await readCovers(coverFile, terminal.input);
  const open = covers === null ? openInput : openBooks;
  const { supply, header } = await open({ input, standardInput: terminal.input, interrupt, part });
  const task: Task = { header, covers, maxGap, to, units, separator, isDry };
  // The parts of a table, one after another, have its header once.
  const withHeader = !isDry && (part === null || part.part === 1);
  const earlier = out !== null && words.has('resume') ? await earlierRun(out, task, withHeader) : null;

  const isCut = (): boolean => interrupt.aborted || supply.fault !== null;
  const count = { done: earlier?.rows ?? 0, failing: earlier?.failing ?? 0, bad: 0 };
  let rows = supply.rows;
  if (out !== null && earlier !== null)
    rows = rowsAfter(rows, earlier, out, task, (passed) => {
      count.bad += passed - earlier.rows;
    });
  await toOutput(out, earlier?.bytes ?? 0, terminal, async (print) => {
    if (withHeader && (earlier?.bytes ?? 0) === 0) await print(outputHeader(task));
    for await (const result of results(task, rows, cores, script)) {
      await print(result.output);
      await terminal.say(result.complaints);
      count.done += result.done;
      count.failing += result.failing;
      count.bad += result.bad;
    }
    return !isCut();
  });
  if (supply.fault !== null) await terminal.complain([supply.fault]);
  if (isDry || isCut() || count.bad > 0 || earlier !== null || terminal.isWatched)
    await terminal.say([summary(count, { isCut: isCut(), isDry, isInterrupted: interrupt.aborted, earlier })]);
  if (interrupt.aborted) return EXIT.interrupted;
  if (isCut() || count.bad > 0) return EXIT.badInput;
  return count.failing > 0 ? EXIT.fails : EXIT.noneFails;
}

const SEPARATORS = { ',': ',', ';': ';', tab: '\t' } as const;

type Print = (content: string | Uint8Array) => Promise<void>;

/**
 * Gives `write` what takes the output: standard output, or a file. A file may have another writer, a run that was thought dead: it has the
 * same rows at the same places where this run goes on with them, and a file of its own where this run begins anew.
 * @param kept bytes of the file that stay, those of an earlier run
 * @param write tells whether the output is whole
 * @throws BadInput where the file cannot be there
 */
async function toOutput(
  out: string | null,
  kept: number,
  terminal: Terminal,
  write: (print: Print) => Promise<boolean>,
): Promise<void> {
  if (out === null) {
    await write((content) => terminal.print(content));
    return;
  }
  const older = kept > 0 ? null : await lstat(out).catch(() => null);
  // Where the folder does not let it go, it is written over.
  if (older?.isFile()) await rm(out).catch(() => {});
  const file = await openFile(out, kept > 0 ? 'r+' : 'w').catch((error: NodeJS.ErrnoException) => {
    throw badWord('--out', error.message, 'a file in a folder that can be written to');
  });
  try {
    const sink = new FileSink(file.fd, kept > 0 ? kept : null);
    const isWhole = await write((content) => sink.write(content));
    if (isWhole && kept > 0) await file.truncate(kept + sink.bytes);
  } finally {
    await file.close();
  }
}

/** Whether a run writes over what it reads: one of these files, or a job of one of these folders. */
async function isRead(out: string, inputs: readonly (string | null)[]): Promise<boolean> {
  const place = (name: string) => realpath(name).catch(() => null);
  const places = [await place(out), extname(out) === '.json' ? await place(dirname(out)) : null];
  const read = await Promise.all(inputs.map((input) => (input === null || input === '-' ? null : place(input))));
  return read.some((input) => input !== null && places.includes(input));
}

function chooseInput(files: readonly string[], coverFile: string | null, books: string | null) {
  if ((coverFile === null) !== (books === null))
    throw badWord(coverFile === null ? '--covers' : '--books', 'nothing', 'covers and books together');
  const inputs = books === null ? files : [books, ...files];
  if (inputs.length !== 1)
    throw badWord('(files)', inputs.length === 0 ? 'no file' : `${inputs.length} files`, 'one table or folder, or -');
  return { input: inputs[0]!, coverFile };
}

interface Course {
  readonly isCut: boolean;
  readonly isDry: boolean;
  readonly isInterrupted: boolean;
  readonly earlier: EarlierRun | null;
}

function summary({ done, bad }: { done: number; bad: number }, { isCut, isDry, isInterrupted, earlier }: Course) {
  const before = isInterrupted ? 'interrupted: ' : '';
  if (isDry) return `${before}${done} sound, ${bad} bad; ${isCut ? 'checked up to there' : 'nothing computed'}`;
  const resumed = earlier === null ? '' : `, ${earlier.rows} of them by the run before`;
  return `${before}${done} done${resumed}, ${bad} bad; output ${isCut ? 'stops there' : 'complete'}`;
}

/** Largest file of ready-made covers read: some ten thousand of them. */
const MAX_COVERS_BYTES = 10_000_000;

async function readCovers(file: string, input: Readable): Promise<readonly StockCover[]> {
  const text = await readText(file, MAX_COVERS_BYTES, input);
  if (!text.ok) throw new BadInput([text.issue]);
  let value: unknown;
  try {
    value = JSON.parse(text.text);
  } catch (error) {
    const got = error instanceof Error ? error.message : String(error);
    throw new BadInput([jobIssue('unreadable', file, got, 'a set of covers in JSON', 'see --help')]);
  }
  const read = readStockCovers(value);
  if (!read.ok) throw new BadInput(read.issues.map((issue) => ({ ...issue, path: `${file}: ${issue.path}` })));
  return read.covers;
}

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
