import { once } from 'node:events';
import { createReadStream, statSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import process from 'node:process';
import { type JobIssue, jobIssue } from '../../core/job/jobIssue.ts';
import { type RowHeader, readHeader } from '../../output/catalogue/rowDocument.ts';
import { readStockCovers, type StockCover } from '../../output/catalogue/stockCover.ts';
import { EXIT } from '../exitCode.ts';
import { oneLine } from '../oneLine.ts';
import { type CatalogueArguments, parseCatalogueArguments, USAGE } from './arguments.ts';
import { type BatchResult, batchWork, outputHeader, type Task } from './batchWork.ts';
import { csvRows } from './csvRows.ts';
import { folderRows } from './folderRows.ts';
import { batches, inOrder } from './inOrder.ts';
import { startPool } from './pool.ts';
import type { Row } from './row.ts';

/** Rows handed over at a time: enough that handing over costs little, few enough that memory stays small. */
const BATCH = 256;

/** Batches under way for each thread, so that it finds the next when it is done with one. */
const AHEAD = 3;

/** Bad input that stops the whole run, as against one bad row. */
class BadInput extends Error {
  readonly issues: readonly JobIssue[];
  constructor(issues: readonly JobIssue[]) {
    super(issues[0]?.message);
    this.issues = issues;
  }
}

/**
 * Runs the catalogue command.
 * @param script the bundled script, which threads run too
 * @returns the exit code
 */
export async function runCatalogue(words: readonly string[], script: URL): Promise<number> {
  const parsed = parseCatalogueArguments(words);
  if (parsed.kind === 'help') {
    process.stdout.write(USAGE);
    return EXIT.fits;
  }
  if (parsed.kind === 'bad') {
    process.stderr.write(`${parsed.message}\n`);
    return EXIT.badInput;
  }
  try {
    return await compute(parsed.arguments, script);
  } catch (error) {
    if (!(error instanceof BadInput)) throw error;
    for (const { path, message } of error.issues) process.stderr.write(`${oneLine(`${path}: ${message}`)}\n`);
    return EXIT.badInput;
  }
}

async function compute(words: CatalogueArguments, script: URL): Promise<number> {
  const covers = words.covers === null ? null : await readCovers(words.covers);
  const { rows, header } = await openInput(words.input, covers);
  const { to, units, maxGap } = words;
  const task: Task = { header, covers, maxGap, to, units };
  const cores = words.cores ?? availableParallelism();
  await write(process.stdout, outputHeader(task));

  let failing = 0;
  let isBad = false;
  for await (const result of results(task, rows, cores, script)) {
    await write(process.stdout, result.output);
    for (const complaint of result.complaints) await write(process.stderr, `${complaint}\n`);
    failing += result.failing;
    isBad ||= result.complaints.length > 0;
  }
  if (isBad) return EXIT.badInput;
  return failing > 0 ? EXIT.fails : EXIT.fits;
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

async function openInput(input: string, covers: readonly StockCover[] | null) {
  if (input !== '-' && fileKind(input) === 'folder') {
    if (covers !== null) throw bad('--books', `a folder: ${input}`, 'a table of books', 'put the books into a table');
    return { rows: folderRows(input), header: [] };
  }
  const stream = input === '-' ? process.stdin : createReadStream(input);
  const rows = csvRows(stream);
  const first = (await rows.next()) as IteratorResult<Row, undefined>;
  if (first.done) throw bad('(file)', 'an empty table', 'a first row that names the columns', 'see --help');
  if ('issue' in first.value) throw new BadInput([{ ...first.value.issue, path: first.value.source }]);
  const read = readHeader('cells' in first.value ? first.value.cells : []);
  if (!read.ok) throw new BadInput(read.issues);
  if (covers !== null) refuseOtherColumns(read.header);
  return { rows, header: read.header };
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
  fileKind(file);
  let value: unknown;
  try {
    value = JSON.parse((await readFile(file, 'utf8')).replace(/^\uFEFF/, ''));
  } catch (error) {
    throw bad(file, error instanceof Error ? error.message : String(error), 'a set of covers in JSON', 'see --help');
  }
  const read = readStockCovers(value);
  if (!read.ok) throw new BadInput(read.issues.map((issue) => ({ ...issue, path: `${file}: ${issue.path}` })));
  return read.covers;
}

function fileKind(name: string): 'file' | 'folder' {
  const stat = statSync(name, { throwIfNoEntry: false });
  if (stat === undefined)
    throw bad('(file)', `no such file: ${name}`, 'a file that can be read', 'check the name and the place');
  return stat.isDirectory() ? 'folder' : 'file';
}

const bad = (path: string, got: string, allowed: string, remedy: string): BadInput =>
  new BadInput([jobIssue('unreadable', path, got, allowed, remedy)]);

/** Writes and, where the reader is slower than this program, waits for it. */
async function write(stream: NodeJS.WriteStream, content: string | Uint8Array): Promise<void> {
  if (content.length > 0 && !stream.write(content)) await once(stream, 'drain');
}
