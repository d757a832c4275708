import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { BadInput } from '../badInput.ts';
import { unreadable } from '../readText.ts';
import { jobNames } from './folderRows.ts';
import type { RunHead } from './runRecord.ts';

/**
 * What an input is known by: a file by its content, a folder by the names, sizes and times of its jobs; standard input, a pipe or a
 * device, which can be read but once, by nothing.
 * @throws BadInput where it cannot be read
 */
export async function inputMark(name: string, interrupt: AbortSignal): Promise<RunHead['inputs'][number]> {
  const unknown = { name, bytes: null, changed: null, sha256: null };
  if (name === '-') return unknown;
  try {
    const file = await stat(name);
    if (!file.isFile() && !file.isDirectory()) return unknown;
    const changed = file.mtime.toISOString();
    const hash = createHash('sha256');
    if (file.isDirectory()) {
      let bytes = 0;
      for (const job of await jobNames(name)) {
        if (interrupt.aborted) break;
        // What cannot be read is a bad row, in the run itself.
        const found = await stat(join(name, job)).catch(() => null);
        bytes += found?.size ?? 0;
        hash.update(JSON.stringify([job, found?.size, found?.mtimeMs]));
      }
      return { name, bytes, changed, sha256: hash.digest('hex') };
    }
    for await (const chunk of createReadStream(name)) {
      if (interrupt.aborted) break;
      hash.update(chunk);
    }
    return { name, bytes: file.size, changed, sha256: hash.digest('hex') };
  } catch (error) {
    throw new BadInput([unreadable(error, name)]);
  }
}
