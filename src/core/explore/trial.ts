import { type CoverDesign, coverDesign } from '../fold/coverDesign.ts';
import { type JobDocument, type Patch, patched } from '../job/jobDocument.ts';
import type { JobIssue } from '../job/jobIssue.ts';
import { parseJob } from '../job/parseJob.ts';

/** What a changed job comes to: its report, or why it is no job. */
export type Trial<Report> =
  | { readonly ok: true; readonly report: Report }
  | { readonly ok: false; readonly issues: readonly JobIssue[] };

/**
 * Works out what a job would come to with some of its fields changed.
 *
 * The document as written is changed, not the parsed job, so that what follows a field by default goes on following it.
 * @param document a job as written; it is left as it is
 * @param changes values by dotted path, put in one after the other
 * @param reportOf `designReport`, or `briefReport` where no budget is read
 */
export function tryChanges<Report>(
  document: JobDocument,
  changes: readonly Patch[],
  reportOf: (design: CoverDesign) => Report,
): Trial<Report> {
  const parsed = parseJob(patched(document, changes));
  return parsed.ok ? { ok: true, report: reportOf(coverDesign(parsed.job)) } : parsed;
}
