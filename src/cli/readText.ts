import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import type { Readable } from 'node:stream';
import { type JobIssue, jobIssue } from '../core/index.ts';
import { decodeText, TEXT_ALLOWED, TEXT_REMEDY } from './decodeText.ts';

export type ReadText = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly issue: JobIssue };

/**
 * Reads a whole file as text.
 * @param name of the file, or `-` for standard input
 * @param maxBytes a larger file is refused, and not read to its end
 * @param input standard input; without it `-` is the name of a file
 */
async function readText(name: string, maxBytes: number, input?: Readable): Promise<ReadText> {
  try {
    const stream = name === '-' ? input : undefined;
    if (!stream && (await stat(name)).isDirectory())
      return refused(`a folder: ${name}`, 'a file', 'name the files in it one by one');
    const chunks: Buffer[] = [];
    let size = 0;
    for await (const chunk of stream ?? createReadStream(name)) {
      chunks.push(chunk);
      size += chunk.length;
      if (size > maxBytes)
        return refused(`more than ${maxBytes / 1e6} MB: ${name}`, 'a short file', 'check that it is the one you meant');
    }
    const decoded = decodeText(Buffer.concat(chunks));
    return decoded.ok ? decoded : refused(`${decoded.got}: ${name}`, TEXT_ALLOWED, TEXT_REMEDY);
  } catch (error) {
    return { ok: false, issue: unreadable(error, name) };
  }
}

/**
 * Reads the text of a JSON document. Escapes that stand for no character are refused: U+0000, and half of a pair, which could not be
 * written again.
 */
export async function readJsonText(name: string, maxBytes: number, input?: Readable): Promise<ReadText> {
  const read = await readText(name, maxBytes, input);
  if (!read.ok) return read;
  const found = NO_CHARACTER.exec(read.text);
  const [whole, written] = found ?? [];
  if (found === null || whole === undefined || written === undefined) return read;
  const what = written === '\\u0000' ? 'U+0000' : 'half a character';
  const got = `${what}, written ${written} at character ${found.index + whole.length - written.length + 1}: ${name}`;
  return refused(got, 'texts of characters that can be printed', 'take it out');
}

/** An escape of U+0000 or of half a pair: after a backslash that is none itself. */
const NO_CHARACTER =
  /(?<!\\)(?:\\\\)*(\\u(?:0000|d[89ab][0-9a-f]{2}(?!\\ud[c-f][0-9a-f]{2})|(?<!\\ud[89ab][0-9a-f]{2}\\u)d[c-f][0-9a-f]{2}))/i;

const refused = (got: string, allowed: string, remedy: string): ReadText => ({
  ok: false,
  issue: jobIssue('unreadable', '(file)', got, allowed, remedy),
});

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'no such file',
  EACCES: 'a file that may not be read',
  ELOOP: 'links that lead in a circle',
};

/**
 * What a failed reading of a file says of it.
 * @throws the error itself where it is none of the system's
 */
export function unreadable(error: unknown, name: string): JobIssue {
  const { code = '', message, syscall } = error as NodeJS.ErrnoException;
  if (syscall === undefined) throw error;
  const got = `${REASONS[code] ?? message}: ${name}`;
  return jobIssue('unreadable', '(file)', got, 'a file that can be read', 'check the name and the place');
}
