import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { jobIssue } from '../../core/index.ts';
import { BadInput } from '../badInput.ts';
import { readJobText } from '../readJob.ts';
import { unreadable } from '../readText.ts';
import type { Row } from './row.ts';

/** Names of the jobs in a folder, every `.json` file, in order. */
export async function jobNames(folder: string): Promise<readonly string[]> {
  return (await readdir(folder)).filter((name) => name.endsWith('.json')).sort();
}

/**
 * Names of the jobs in a folder that must have some.
 * @throws BadInput
 */
export async function someJobNames(folder: string): Promise<readonly string[]> {
  const names = await jobNames(folder).catch((error) => {
    throw new BadInput([unreadable(error, folder)]);
  });
  if (names.length > 0) return names;
  const got = `no job files in ${folder}`;
  const issue = jobIssue('unreadable', '(file)', got, 'a folder with .json files', 'check the name and the place');
  throw new BadInput([issue]);
}

/** Reads the jobs of these names in a folder one at a time. */
export async function* folderRows(folder: string, names: readonly string[]): AsyncGenerator<Row> {
  for (const source of names) yield await fileRow(join(folder, source), source);
}

async function fileRow(path: string, source: string): Promise<Row> {
  try {
    // Anything else, as a pipe or a device, may never end.
    if (!(await stat(path)).isFile())
      return { source, issue: jobIssue('unreadable', '(file)', 'no file', 'a job file', 'take it out of the folder') };
    const read = await readJobText(path);
    return { source, ...read };
  } catch (error) {
    return { source, issue: unreadable(error, path) };
  }
}
