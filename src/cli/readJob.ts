import type { Readable } from 'node:stream';
import { MAX_JOB_CHARACTERS, type ParsedJob, parseJobText } from '../core/index.ts';
import { type ReadText, readJsonText } from './readText.ts';

/** Reads the text of a job file; `-` is standard input where `input` is given. */
export const readJobText = (name: string, input?: Readable): Promise<ReadText> =>
  // A character takes at most 4 bytes.
  readJsonText(name, 4 * MAX_JOB_CHARACTERS, input);

/**
 * Reads and checks a job file.
 * @param units unit that a job which names none is worked in; null for the default
 * @param input standard input
 */
export async function readJob(name: string, units: 'mm' | 'in' | null, input: Readable): Promise<ParsedJob> {
  const read = await readJobText(name, input);
  return read.ok ? parseJobText(read.text, units) : { ok: false, issues: [read.issue] };
}
