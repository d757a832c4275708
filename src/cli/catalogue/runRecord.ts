import { createReadStream } from 'node:fs';
import { z } from 'zod/mini';
import { jobIssue } from '../../core/index.ts';
import { BadInput } from '../badInput.ts';

const count = z.int().check(z.gte(0));

/** What a run is: two runs with equal heads write equal output. */
const headSchema = z.strictObject({
  format: z.literal('coverwright-run'),
  version: z.literal(1),
  /** Version of this tool. */
  tool: z.string(),
  /** The words of the command that its output follows from, as they are understood. */
  words: z.record(z.string(), z.string()),
  /** What was read, each with its size, its last change and a hash; null for standard input, of which none is known before. */
  inputs: z.array(
    z.strictObject({
      name: z.string(),
      bytes: z.nullable(count),
      changed: z.nullable(z.string()),
      sha256: z.nullable(z.string()),
    }),
  ),
});
export type RunHead = z.infer<typeof headSchema>;

/** How far a run has come: what it has read and written up to a row, all of it on the disk. */
const markSchema = z.strictObject({
  /** Rows taken from the input, counted from its first or from the first of its part. */
  rows: count,
  /** Rows computed, those of them that fail, and rows left out. */
  done: count,
  failing: count,
  bad: count,
  /** Bytes of the output. */
  bytes: count,
  /** Hash of all rows taken, as they were read. */
  sha256: z.string(),
  /** Where the last row came from; empty before the first. */
  last: z.string(),
});
export type RunMark = z.infer<typeof markSchema>;

/** How far a run is, without the bytes of its output. */
export type Reached = Omit<RunMark, 'bytes'>;

const lineSchema = z.strictObject({
  /** Rows taken at the mark before. */
  from: count,
  ...markSchema.shape,
  /** What was said of bad rows since the mark before. */
  complaints: z.array(z.string()),
  isComplete: z.boolean(),
});
export type RecordLine = z.infer<typeof lineSchema>;

/** Where every run begins. */
export const FIRST_MARK: RunMark = { rows: 0, done: 0, failing: 0, bad: 0, bytes: 0, sha256: '', last: '' };

/** No head is longer; another file may be one endless line. */
const MAX_HEAD_BYTES = 1_000_000;

/** The first line of the record of a run; null where the file holds none, or is not there. */
export async function recordHead(file: string): Promise<RunHead | null> {
  for await (const line of linesOf(file, MAX_HEAD_BYTES)) return readAs(headSchema, line);
  return null;
}

/**
 * The marks of a record, in order. What is no mark that follows the one before is left out: a line that a killed run broke off, or
 * one of a run that was thought dead and that another has gone on for.
 */
export async function* recordLines(file: string): AsyncGenerator<RecordLine> {
  let rows = 0;
  let isHead = true;
  for await (const text of linesOf(file)) {
    const line = isHead ? null : readAs(lineSchema, text);
    isHead = false;
    if (line === null || line.from !== rows || line.rows < rows) continue;
    rows = line.rows;
    yield line;
  }
}

/** Whole lines of a file; none where it is not there. */
async function* linesOf(file: string, end?: number): AsyncGenerator<string> {
  let rest = '';
  try {
    for await (const text of createReadStream(file, { encoding: 'utf8', end }) as AsyncIterable<string>) {
      const lines = (rest + text).split('\n');
      rest = lines.pop() ?? '';
      yield* lines;
    }
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
  }
}

function readAs<T>(schema: z.ZodMiniType<T>, line: string): T | null {
  try {
    const read = z.safeParse(schema, JSON.parse(line));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

/** What of a run differs from the one whose record was found, in the fewest words; null where nothing does. */
export function difference(found: RunHead, now: RunHead): string | null {
  if (found.tool !== now.tool) return `the output of version ${found.tool} of this tool`;
  for (const word of new Set([...Object.keys(found.words), ...Object.keys(now.words)])) {
    const [before, after] = [found.words[word] ?? 'nothing', now.words[word] ?? 'nothing'];
    if (before !== after) return `--${word} ${after} where the run broken off had ${before}`;
  }
  if (found.inputs.length !== now.inputs.length) return 'other inputs';
  const at = now.inputs.findIndex(
    ({ sha256, bytes }, i) => sha256 !== found.inputs[i]!.sha256 || bytes !== found.inputs[i]!.bytes,
  );
  return at === -1 ? null : `${now.inputs[at]!.name}, which is not as it was when the run began`;
}

/** What `--resume` cannot go on with. */
export const notToGoOn = (got: string): BadInput =>
  new BadInput([
    jobIssue('rule', '--resume', got, 'the same run as the one broken off', 'leave out --resume to begin it anew'),
  ]);
