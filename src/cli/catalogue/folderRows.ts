import { readdir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { jobIssue } from '../../core/job/jobIssue.ts';
import { MAX_JOB_CHARACTERS } from '../../core/job/parseJob.ts';
import type { Row } from './row.ts';

/** Reads the jobs of a folder, every `.json` file in the order of their names, one at a time. */
export async function* folderRows(folder: string): AsyncGenerator<Row> {
  const names = (await readdir(folder)).filter((name) => name.endsWith('.json'));
  names.sort();
  for (const source of names) yield await fileRow(folder, source);
}

async function fileRow(folder: string, source: string): Promise<Row> {
  const path = join(folder, source);
  try {
    // A character takes at most 4 bytes, so a larger file is refused whatever is in it.
    const { size } = await stat(path);
    if (size <= 4 * MAX_JOB_CHARACTERS) return { source, text: await readFile(path, 'utf8') };
    const got = `${(size / 1e6).toFixed(1)} MB`;
    return { source, issue: jobIssue('too_large', '(file)', got, 'a job file', 'take it out of the folder') };
  } catch (error) {
    const got = (error as NodeJS.ErrnoException).code ?? String(error);
    return { source, issue: jobIssue('unreadable', '(file)', got, 'a job file that can be read', 'check the file') };
  }
}
