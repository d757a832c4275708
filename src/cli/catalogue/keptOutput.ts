import { constants, type FileHandle, open, realpath, rename, rm, stat } from 'node:fs/promises';
import { badWord } from '../badInput.ts';
import { FileSink, type Sink, WriteError } from '../terminal.ts';
import { outTrouble, replaceFile, settle } from '../writeWhole.ts';
import type { RunOutput } from './runOutput.ts';
import {
  difference,
  FIRST_MARK,
  notToGoOn,
  type Reached,
  type RecordLine,
  type RunHead,
  type RunMark,
  recordHead,
  recordLines,
} from './runRecord.ts';

/** Share of the time that may be spent on waiting for the disk. */
const SYNC_SHARE = 0.05;

/** Shortest time between two marks, ms. */
const LEAST_BETWEEN = 250;

/** Most characters of complaints kept between two marks. */
const MOST_KEPT = 1_000_000;

/** The names of a run: where its output is to be, where it grows, and the record of how far it is. */
export interface RunFiles {
  readonly place: string;
  readonly part: string;
  readonly record: string;
}

/** What a file named by `--out` leads to, and the two beside it. */
export async function runFiles(out: string): Promise<RunFiles> {
  const place = await realpath(out).catch(() => out);
  return { place, part: `${place}.part`, record: `${place}.run` };
}

/**
 * The output of a run in a file. It grows in a part beside its place, and a record there says how far both are known to be on the
 * disk, so that a run goes on from there after any end: killed, or without power. Once it is whole it takes its place in one step.
 * The record stays, and tells a run that is begun again that nothing is left to do.
 *
 * A part may have another writer, a run that was thought dead: it writes the same rows at the same places, and its record is
 * another file once this run has one. A run begun anew has a part of its own.
 */
export class KeptOutput implements RunOutput {
  readonly isKept = true;
  /** Where this run goes on. */
  readonly start: RunMark;
  /** Whether an earlier run has done it all. */
  readonly isDone: boolean;
  readonly #files: RunFiles;
  readonly #part: FileHandle | null;
  readonly #record: FileHandle | null;
  readonly #sink: Sink | null;
  #marked: RunMark;
  #bytes: number;
  #complaints: string[] = [];
  #complaintSize = 0;
  #nextMark = performance.now() + LEAST_BETWEEN;

  private constructor(files: RunFiles, start: RunMark, part: FileHandle | null, record: FileHandle | null) {
    this.start = start;
    this.isDone = part === null;
    this.#files = files;
    this.#part = part;
    this.#record = record;
    this.#sink = part === null ? null : new FileSink(part.fd, start.bytes);
    this.#marked = start;
    this.#bytes = start.bytes;
  }

  /**
   * Begins a run, or goes on with one.
   * @param head what the run is
   * @param isResumed whether an earlier one is gone on with where there is one
   * @throws BadInput where that is another run, or where no file can be; WriteError where there is no room
   */
  static async open(out: string, head: RunHead, isResumed: boolean): Promise<KeptOutput> {
    try {
      const files = await runFiles(out);
      const { start, isDone } = await findRun(files, head, isResumed);
      if (isDone) return new KeptOutput(files, start, null, null);
      await replaceFile(files.record, async (sink) => {
        await sink.write(lineOf(head));
        if (start === FIRST_MARK) return;
        for await (const line of recordLines(files.record)) await sink.write(lineOf(line));
      });
      const part = await open(files.part, constants.O_RDWR | constants.O_CREAT, 0o666);
      return new KeptOutput(files, start, part, await open(files.record, 'a'));
    } catch (error) {
      throw outTrouble(error);
    }
  }

  /** What was said of bad rows before the start, in order. */
  async *earlierComplaints(): AsyncGenerator<readonly string[]> {
    for await (const { complaints } of recordLines(this.#files.record)) yield complaints;
  }

  /**
   * Writes what became of some rows.
   * @param reached how far the run is with them
   * @throws WriteError
   */
  async write(output: string | Uint8Array, complaints: readonly string[], reached: Reached): Promise<void> {
    await this.#sink?.write(output);
    this.#bytes += Buffer.byteLength(output);
    this.#complaints.push(...complaints);
    for (const complaint of complaints) this.#complaintSize += complaint.length;
    if (performance.now() >= this.#nextMark || this.#complaintSize > MOST_KEPT) await this.#mark(reached, false);
  }

  /**
   * Ends the output.
   * @param isWhole whether it takes its place; else it can be gone on with
   * @throws WriteError, also where another run has begun it anew in the meantime
   */
  async finish(reached: Reached, isWhole: boolean): Promise<void> {
    if (this.#part === null) return;
    // A run that was gone on with may have left more than its last mark says.
    if (isWhole) await this.#part.truncate(this.#bytes).catch(rethrown);
    await this.#mark(reached, isWhole);
    if (!isWhole) return;
    const { place, part } = this.#files;
    if (await isSame(this.#part, part)) await rename(part, place).catch(rethrown);
    else if (!(await isSame(this.#part, place))) throw new WriteError(new Error(`another run has begun ${place} anew`));
    await settle(place);
  }

  async close(): Promise<void> {
    await this.#part?.close();
    await this.#record?.close();
  }

  /** Waits until the output is on the disk, then says so in the record. */
  async #mark(reached: Reached, isComplete: boolean): Promise<void> {
    const begun = performance.now();
    await this.#part?.datasync().catch(rethrown);
    const mark: RunMark = { ...reached, bytes: this.#bytes };
    const line: RecordLine = { from: this.#marked.rows, ...mark, complaints: this.#complaints, isComplete };
    if (this.#record !== null) await new FileSink(this.#record.fd).write(lineOf(line));
    await this.#record?.datasync().catch(rethrown);
    this.#marked = mark;
    this.#complaints = [];
    this.#complaintSize = 0;
    const now = performance.now();
    this.#nextMark = now + Math.max(LEAST_BETWEEN, (now - begun) / SYNC_SHARE);
  }
}

interface FoundRun {
  readonly start: RunMark;
  readonly isDone: boolean;
}

/** What an earlier run has left at these places, put away where it is not gone on with. */
async function findRun({ place, part, record }: RunFiles, head: RunHead, isResumed: boolean): Promise<FoundRun> {
  const found = await recordHead(record);
  const [whole, half] = await Promise.all([sizeOf(place), sizeOf(part)]);
  if (found === null)
    for (const [name, size] of [
      [record, await sizeOf(record)],
      [part, half],
    ] as const)
      if (size !== null) throw badWord('--out', `${name}, which no run has left there`, 'that name free: move it away');
  const anew = { start: FIRST_MARK, isDone: false };
  if (!isResumed) {
    await rm(part, { force: true });
    return anew;
  }
  if (found === null) {
    if (whole !== null) throw notToGoOn(`${place} without ${record}, which says how it was made`);
    return anew;
  }
  const differs = difference(found, head);
  if (differs !== null) throw notToGoOn(differs);
  let last: RecordLine | null = null;
  for await (const line of recordLines(record)) last = line;
  if (last === null) return anew;
  const { from: _from, complaints: _complaints, isComplete, ...start } = last;
  if (half !== null && half < start.bytes) throw notToGoOn(`${part}, which is shorter than ${record} says`);
  if (!isComplete) return half === null ? anew : { start, isDone: false };
  if (half !== null) {
    // The run ended between its last mark and the step that gives the output its place.
    await rename(part, place);
    await settle(place);
  } else if (whole !== start.bytes) throw notToGoOn(`${place}, which is not as the run left it`);
  return { start, isDone: true };
}

const lineOf = (line: RunHead | RecordLine): string => `${JSON.stringify(line)}\n`;

const sizeOf = (path: string): Promise<number | null> =>
  stat(path).then(
    ({ size }) => size,
    () => null,
  );

async function isSame(file: FileHandle, path: string): Promise<boolean> {
  const [open, there] = await Promise.all([file.stat(), stat(path).catch(() => null)]);
  return there?.ino === open.ino && there.dev === open.dev;
}

const rethrown = (error: NodeJS.ErrnoException): never => {
  throw outTrouble(error);
};
