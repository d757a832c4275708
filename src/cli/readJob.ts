import type { Readable } from 'node:stream';
import { jobIssue, MAX_JOB_CHARACTERS, type ParsedJob, parseJobText } from '../core/index.ts';
import { type ReadText, readText } from './readText.ts';

/** Reads the text of a job file; `-` is standard input where `input` is given. */
export async function readJobText(name: string, input?: Readable): Promise<ReadText> {
  // A character takes at most 4 bytes.
  const read = await readText(name, 4 * MAX_JOB_CHARACTERS, input);
  if (!read.ok || !ESCAPED_NULL.test(read.text)) return read;
  const allowed = 'texts of characters that can be printed';
  return { ok: false, issue: jobIssue('rule', '(file)', 'U+0000, written \\u0000', allowed, 'take it out') };
}

/** U+0000 as JSON writes it: after a backslash that is none itself. */
const ESCAPED_NULL = /(?<!\\)(\\\\)*\\u0000/;

/**
 * Reads and checks a job file.
 * @param units unit that a job which names none is worked in; null for the default
 * @param input standard input
 */
export async function readJob(name: string, units: 'mm' | 'in' | null, input: Readable): Promise<ParsedJob> {
  const read = await readJobText(name, input);
  return read.ok ? parseJobText(read.text, units) : { ok: false, issues: [read.issue] };
}
