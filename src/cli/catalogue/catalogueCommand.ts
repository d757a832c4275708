import { createHash } from 'node:crypto';
import { readFile, realpath } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { dirname, extname } from 'node:path';
import process from 'node:process';
import type { Readable } from 'node:stream';
import tool from '../../../package.json' with { type: 'json' };
import { jobIssue } from '../../core/index.ts';
import { readStockCovers, type StockCover } from '../../output/catalogue/stockCover.ts';
import { templateTable } from '../../output/catalogue/templateTable.ts';
import { BadInput, badWord } from '../badInput.ts';
import { EXIT } from '../exitCode.ts';
import { readJsonText } from '../readText.ts';
import { type Command, command } from '../runCommand.ts';
import { type Terminal, WriteError } from '../terminal.ts';
import type { Words } from '../words.ts';
import { type BatchResult, batchWork, outputHeader, type Task, table } from './batchWork.ts';
import { inOrder } from './inOrder.ts';
import { inputMark } from './inputMark.ts';
import { runFiles } from './keptOutput.ts';
import { openBooks, openInput } from './openInput.ts';
import { outputInto, printedOutput } from './openOutput.ts';
import { readPart } from './part.ts';
import { startPool } from './pool.ts';
import { Progress } from './progress.ts';
import { type Batch, type RowsRead, RowTally } from './rowTally.ts';
import { FIRST_MARK, type Reached, type RunHead } from './runRecord.ts';

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
  --out file       where the output goes, instead of standard output; an older file there is replaced once the new one is whole,
                   but none that is read. Until then the output grows in file.part; file.run is the record of the run
  --resume         goes on with the run to --out that was broken off, whatever ended it; its messages are said again, and output,
                   messages, last line and exit code are those of a run that was not. Where nothing is left to do it says so again
  --part k/n       only the k-th of n parts of the rows; the outputs of all parts, one after another, are that of one run
  --dry-run        only checks every row, computes and writes nothing
  --cores n        cores to use, 1 to 256; usually all
  --units mm|in    unit that a job which names none is worked in (usual: mm); numbers stay in mm
  --max-gap mm     a ready-made cover with a larger gap at any edge is not the best one (else its own loosest gaps)
  --help           this text

Columns chance.closes_percent and chance.fits_percent of a table of jobs: how many of 100 covers close, and how many fit in
every way, by the quick reckoning from the doubts of the inputs, as the verdict goes.

A bad row is named on standard error and left out; the last line there says how many were done, how many were bad, and
whether the output is complete. A screen shows how far the run is. Ctrl-C (or kill) ends it after the rows in hand, a second
Ctrl-C at once. Exit code: 0 none fails (every book has a cover), 1 at least one fails (a book has none), 2 bad input,
3 internal failure, 4 the output could not be written whole, 130 interrupted by Ctrl-C, 143 by kill.
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
    // Once: a second Ctrl-C ends the process at once.
    const stop = (signal: NodeJS.Signals) => {
      ignore();
      interrupt.abort(signal === 'SIGTERM' ? EXIT.terminated : EXIT.interrupted);
    };
    const ignore = () => {
      for (const signal of ['SIGINT', 'SIGTERM']) process.off(signal, stop);
    };
    for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, stop);
    try {
      return await run(words, terminal, interrupt.signal, script);
    } finally {
      ignore();
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
  const isResumed = words.has('resume');
  if (isResumed && out === null) throw badWord('--resume', 'no --out', '--out, with the file to go on with');
  if (isDry && out !== null) throw badWord('--out', 'it with --dry-run', 'one of the two: a dry run writes nothing');
  if (out !== null && (await isRead(out, [input, coverFile])))
    throw badWord('--out', `${out}, which is read`, 'another file');

  const covers = coverFile === null ? null : await readCovers(coverFile, terminal.input);
  const open = covers === null ? openInput : openBooks;
  const { supply, header, share } = await open({ input, standardInput: terminal.input, interrupt, part });
  const task: Task = { header, covers, maxGap, to, units, separator, isDry };
  const means = { to, separator, units, 'max-gap': maxGap, part: partText };
  const read = coverFile === null ? [input] : [input, coverFile];
  const head = out === null ? null : await runHead(script, means, read, interrupt);
  if (head !== null && interrupt.aborted) {
    await terminal.say([lastLine(FIRST_MARK, 'interrupted before the first row')]);
    return interrupt.reason;
  }
  const output = out === null || head === null ? printedOutput(terminal) : await outputInto(out, head, isResumed);

  const tally = new RowTally(header);
  const { start } = output;
  let reached: Reached = start;
  const isCut = () => !output.isDone && supply.isCut;
  const goOn = output.isKept
    ? 'the same command with --resume goes on from there'
    : 'with --out, --resume can go on from there';
  try {
    for await (const complaints of output.earlierComplaints()) await terminal.say(complaints);
    // The parts of a table, one after another, have its header once.
    if (start.bytes === 0 && !isDry && (part === null || part.part === 1))
      await output.write(outputHeader(task), [], reached);
    const isShown = terminal.canShowStatus(out !== null) && !output.isDone;
    const progress = isShown ? new Progress(terminal, start.rows) : null;
    const todo = output.isDone ? [] : results(task, tally.batches(tally.after(start, supply), BATCH), cores, script);
    for await (const { result, read } of todo) {
      const { done, failing, bad } = reached;
      const next = { ...read, done: done + result.done, failing: failing + result.failing, bad: bad + result.bad };
      await output.write(result.output, result.complaints, next);
      reached = next;
      await terminal.say(result.complaints);
      await progress?.show(read.rows, share(tally.rows));
    }
    await output.finish(reached, !isCut());
  } catch (error) {
    if (!(error instanceof WriteError) || error.isClosedPipe) throw error;
    // Where standard error itself cannot be written, the exit code is the only message.
    await terminal.say([lastLine(reached, `${error.reason}; make room, then ${goOn}`)]).catch(() => {});
    return EXIT.outputCut;
  } finally {
    await output.close();
  }
  if (supply.fault !== null) await terminal.complain([supply.fault]);
  const where = reached.last === '' ? 'before the first row' : `after ${reached.last}`;
  const broken = supply.fault === null ? `interrupted ${where}` : `nothing ${where} could be read`;
  await terminal.say([
    isDry ? dryLine(reached, isCut() ? broken : null) : lastLine(reached, isCut() ? `${broken}; ${goOn}` : null),
  ]);
  if (isCut() && interrupt.aborted) return interrupt.reason;
  if (isCut() || reached.bad > 0) return EXIT.badInput;
  return reached.failing > 0 ? EXIT.fails : EXIT.noneFails;
}

const SEPARATORS = { ',': ',', ';': ';', tab: '\t' } as const;

/** What a run is; of the words only those that its output follows from. */
async function runHead(
  script: URL,
  words: Readonly<Record<string, string | number | null>>,
  inputs: readonly string[],
  interrupt: AbortSignal,
): Promise<RunHead> {
  const given = Object.entries(words).flatMap(([word, value]) => (value === null ? [] : [[word, String(value)]]));
  return {
    format: 'coverwright-run',
    version: 1,
    tool: await toolName(script),
    words: Object.fromEntries(given),
    inputs: await Promise.all(inputs.map((input) => inputMark(input, interrupt))),
  };
}

/** The version of this tool, and a mark of the very program: half an output by another may not go with half of this one's. */
async function toolName(script: URL): Promise<string> {
  const program = await readFile(script).catch(() => null);
  return program === null
    ? tool.version
    : `${tool.version} ${createHash('sha256').update(program).digest('hex').slice(0, 12)}`;
}

/** Whether a run writes over what it reads: one of these files, or a job of one of these folders. */
async function isRead(out: string, inputs: readonly (string | null)[]): Promise<boolean> {
  const real = (name: string) => realpath(name).catch(() => null);
  const { place, part, record } = await runFiles(out);
  const places = await Promise.all(
    [place, part, record, ...(extname(out) === '.json' ? [dirname(out)] : [])].map(real),
  );
  const read = await Promise.all(inputs.map((input) => (input === null || input === '-' ? null : real(input))));
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

interface Count {
  readonly done: number;
  readonly bad: number;
}

/** @param broken why the output is not complete; null where it is */
const lastLine = ({ done, bad }: Count, broken: string | null): string =>
  `${done} done, ${bad} bad, output ${broken === null ? 'complete' : `not complete: ${broken}`}`;

const dryLine = ({ done, bad }: Count, broken: string | null): string =>
  `${done} sound, ${bad} bad, ${broken === null ? 'nothing computed' : `not all checked: ${broken}`}`;

/** Largest file of ready-made covers read: some ten thousand of them. */
const MAX_COVERS_BYTES = 10_000_000;

async function readCovers(file: string, input: Readable): Promise<readonly StockCover[]> {
  const text = await readJsonText(file, MAX_COVERS_BYTES, input);
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

/** What became of some rows, and how far the input was read with them. */
interface Worked {
  readonly result: BatchResult;
  readonly read: RowsRead;
}

/** Works batches off: on one core here, on more in threads, this one being left to reading and writing. */
async function* results(
  task: Task,
  batches: AsyncIterable<Batch, unknown, undefined>,
  cores: number,
  script: URL,
): AsyncGenerator<Worked> {
  if (cores === 1) {
    const work = batchWork(task);
    for await (const { rows, read } of batches) yield { result: work(rows), read };
    return;
  }
  const pool = startPool(script, task, cores);
  try {
    const work = async ({ rows, read }: Batch): Promise<Worked> => ({ result: await pool.run(rows), read });
    yield* inOrder(batches, work, AHEAD * cores);
  } finally {
    await pool.close();
  }
}
