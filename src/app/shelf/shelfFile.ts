import { type JobIssue, type JobRecord, jobIssue, openJob } from '../../core/index.ts';

/** Largest file of jobs read, in characters: some 100,000 jobs. */
export const MAX_SHELF_CHARACTERS = 100_000_000;

const FORMAT = 'coverwright-jobs';

/** The sound jobs of a file, and what is wrong with each of the others by its place in the file. */
export interface ReadShelfFile {
  readonly documents: readonly JobRecord[];
  readonly broken: readonly BrokenJob[];
}

/** A job of a file that could not be read. */
interface BrokenJob {
  /** Its place in the file, from 0. */
  readonly index: number;
  /** Null without a readable name. */
  readonly name: string | null;
  readonly issues: readonly JobIssue[];
}

/** Writes jobs as one JSON document, a job a line. */
export const shelfFile = (documents: readonly JobRecord[]): string =>
  `{"format":"${FORMAT}","version":1,"jobs":[\n${documents.map((document) => JSON.stringify(document)).join(',\n')}\n]}\n`;

/**
 * Reads a file of one job or of many, of any version.
 * @param text of a job, a list of jobs, or what `shelfFile` wrote
 * @returns the sound jobs, brought to the current version, and the issues of the others; any other file is one broken
 *   job at index 0; never throws
 */
export function readShelfFile(text: string): ReadShelfFile {
  if (text.length > MAX_SHELF_CHARACTERS)
    return refused('too_large', `${millions(text.length)} million characters`, 'import it in parts');
  if (text.trim() === '') return refused('empty', 'nothing', 'choose a file that was exported');
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return refused('not_json', error instanceof Error ? error.message : String(error), 'choose an undamaged copy');
  }
  const jobs = jobsIn(value);
  if (jobs === null) return refused('choice', 'a file of jobs of another version', 'open it with a newer version');
  const documents: JobRecord[] = [];
  const broken: BrokenJob[] = [];
  jobs.forEach((job, index) => {
    const opened = openJob(job);
    if (opened.ok) documents.push(opened.document);
    else broken.push({ index, name: nameIn(job), issues: opened.issues });
  });
  return { documents, broken };
}

/**
 * Reads a file that the maker chose, as `readShelfFile` does.
 * @returns as `readShelfFile`; a file that the browser cannot read, or that is too large to be tried, is one broken job
 */
export async function readChosenFile(file: Blob): Promise<ReadShelfFile> {
  // A character takes at most 4 bytes, so a larger file is refused whatever is in it.
  if (file.size > 4 * MAX_SHELF_CHARACTERS)
    return refused('too_large', `${millions(file.size)} million bytes`, 'import it in parts');
  try {
    return readShelfFile(await file.text());
  } catch (error) {
    return refused(
      'unreadable',
      error instanceof Error ? error.message : String(error),
      'choose the file again: it may have been moved, or changed after it was chosen',
    );
  }
}

const millions = (count: number): string => (count / 1e6).toFixed(0);

const refused = (code: JobIssue['code'], got: string, remedy: string): ReadShelfFile => ({
  documents: [],
  broken: [{ index: 0, name: null, issues: [jobIssue(code, '(file)', got, 'a file of jobs in JSON', remedy)] }],
});

/** One job, a list of jobs, or an exported shelf; null for a shelf of a later version. */
function jobsIn(value: unknown): readonly unknown[] | null {
  if (Array.isArray(value)) return value;
  if (typeof value !== 'object' || value === null || !('format' in value) || value.format !== FORMAT) return [value];
  const { version, jobs } = value as { version?: unknown; jobs?: unknown };
  return version === 1 && Array.isArray(jobs) ? jobs : null;
}

function nameIn(job: unknown): string | null {
  const name = typeof job === 'object' && job !== null && 'name' in job ? job.name : null;
  return typeof name === 'string' && name.trim() !== '' ? name.slice(0, MAX_SHOWN_NAME) : null;
}

/** Characters of a broken job's name that are shown; a sound one has at most 200. */
const MAX_SHOWN_NAME = 200;
