import { coverDesign } from '../fold/coverDesign.ts';
import { type JobDocument, type Patch, patched } from '../job/jobDocument.ts';
import type { JobIssue } from '../job/jobIssue.ts';
import { parseJob } from '../job/parseJob.ts';
import { designReport } from '../report/designReport.ts';
import type { Report } from '../report/reportSchema.ts';

/** What a changed job comes to: its report, or why it is no job. */
export type Trial =
  | { readonly ok: true; readonly report: Report }
  | { readonly ok: false; readonly issues: readonly JobIssue[] };

/**
 * Works out what a job would come to with some of its fields changed.
 *
 * The document as written is changed, not the parsed job, so that what follows a field by default goes on following it.
 * @param document a job as written; it is left as it is
 * @param changes values by dotted path, put in one after the other
 */
export function tryChanges(document: JobDocument, changes: readonly Patch[]): Trial {
  const parsed = parseJob(patched(document, changes));
  return parsed.ok ? { ok: true, report: designReport(coverDesign(parsed.job)) } : parsed;
}
