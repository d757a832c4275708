import type { LengthUnit } from '../units/parseLength.ts';
import { isRecord, valueAt } from './jobDocument.ts';
import { type JobIssue, jobIssue, jobIssues } from './jobIssue.ts';
import { type Job, jobSchema } from './jobSchema.ts';
import { migrate } from './migrate.ts';
import { type QuickParser, quickParser, REFUSED } from './quickParser.ts';
import { workedIn } from './workedIn.ts';

export type ParsedJob =
  | { readonly ok: true; readonly job: Job }
  | { readonly ok: false; readonly issues: readonly JobIssue[] };

/** Largest job text read, in characters. A real job has about 1,500; the cap keeps a wrong file from stalling the reader. */
export const MAX_JOB_CHARACTERS = 1_000_000;

/**
 * Checks a value read from JSON against the job document, of any version, and fills in the defaults.
 * @param value anything
 * @returns the job, or every issue found at once; never throws
 */
export function parseJob(value: unknown): ParsedJob {
  const migrated = migrate(value);
  if (!migrated.ok) return { ok: false, issues: [migrated.issue] };
  const { document } = migrated;
  parseQuickly ??= quickParser(jobSchema);
  const job = parseQuickly(document);
  if (job !== REFUSED) return { ok: true, job: withOrigins(job as Job, document) };
  const result = jobSchema.safeParse(document);
  return result.success
    ? { ok: true, job: withOrigins(result.data, document) }
    : { ok: false, issues: jobIssues(result.error, document) };
}

/** Compiled with the first job, not with the start of the program. */
let parseQuickly: QuickParser | undefined;

/** Fields whose usual value is surer when it is typed. */
const SURER_TYPED = ['boardThickness_mm', 'jointDip_mm', 'pageGive'] as const;

/** Notes in the doubts of a job which values are usual ones, for its defaults no longer tell. */
function withOrigins(job: Job, document: unknown): Job {
  const book = valueAt(document, 'book');
  const usual = SURER_TYPED.filter(
    (key) => (isRecord(book) ? book[key] : undefined) === undefined && job.doubts[`book.${key}`]?.from === undefined,
  );
  if (usual.length === 0) return job;
  const doubts = { ...job.doubts };
  for (const key of usual) doubts[`book.${key}`] = { ...doubts[`book.${key}`], from: 'usual' };
  return { ...job, doubts };
}

/**
 * Reads a job from JSON text.
 * @param text the content of a job file; at most `MAX_JOB_CHARACTERS` long
 * @param units unit that a job which names none is worked in; null for the documented default
 * @returns as `parseJob`; an empty, too large or broken text is an issue at the path `(file)`
 */
export function parseJobText(text: string, units: LengthUnit | null = null): ParsedJob {
  const refused = (code: JobIssue['code'], got: string, allowed: string, remedy: string): ParsedJob => ({
    ok: false,
    issues: [jobIssue(code, '(file)', got, allowed, remedy)],
  });
  if (text.length > MAX_JOB_CHARACTERS)
    return refused(
      'too_large',
      `${(text.length / 1e6).toFixed(1)} million characters`,
      'at most 1 million characters',
      'a job is a short file: check that this is the one you meant',
    );
  if (text.trim() === '')
    return refused('empty', 'nothing', 'a job document in JSON', 'start from one of the example jobs');
  try {
    return parseJob(workedIn(JSON.parse(text.replace(/^\uFEFF/, '')), units));
  } catch (error) {
    return refused(
      'not_json',
      error instanceof Error ? error.message : String(error),
      'a job document in JSON',
      'check quotes, commas and brackets near the place named; NaN and Infinity are not JSON',
    );
  }
}
