import type { JobIssue } from './jobIssue.ts';
import type { Job } from './jobSchema.ts';
import { type JobRecord, migrate } from './migrate.ts';
import { parseJob } from './parseJob.ts';

/** A job from outside: as written, in the current version, for keeping and editing; and parsed, for computing. */
export type OpenedJob =
  | { readonly ok: true; readonly document: JobRecord; readonly job: Job }
  | { readonly ok: false; readonly issues: readonly JobIssue[] };

/**
 * Opens a job document of any version: brings it to the current one, then checks it.
 * @param value anything read from JSON
 * @returns the job twice, as written and parsed, or every issue found; never throws
 */
export function openJob(value: unknown): OpenedJob {
  const migrated = migrate(value);
  if (!migrated.ok) return { ok: false, issues: [migrated.issue] };
  const parsed = parseJob(migrated.document);
  // What parses is an object.
  return parsed.ok ? { ok: true, document: migrated.document as JobRecord, job: parsed.job } : parsed;
}
