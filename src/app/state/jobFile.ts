import type { JobDocument } from '../../core/job/jobDocument.ts';
import type { JobIssue } from '../../core/job/jobIssue.ts';
import { openJob } from '../../core/job/openJob.ts';
import { parseJobText } from '../../core/job/parseJob.ts';
import { saveFile } from './saveFile.ts';

/** A file name from the job's name: letters and digits of any script, the rest as hyphens. */
export function jobFileName(document: JobDocument, ending = 'job.json'): string {
  const words = String(document.name ?? '')
    .toLowerCase()
    .match(/[\p{L}\p{N}]+/gu);
  return `${words?.join('-') ?? 'untitled-cover'}.${ending}`;
}

/** Hands the document to the browser as a file to save. */
export function saveJobFile(document: JobDocument): void {
  saveFile(jobFileName(document), `${JSON.stringify(document, null, 2)}\n`, 'application/json');
}

export type OpenedFile = { readonly document: JobDocument } | { readonly issues: readonly JobIssue[] };

/** Reads the text of a job file of any version; a text that does not parse as a job is refused with every issue. */
export function openJobText(text: string): OpenedFile {
  const parsed = parseJobText(text);
  if (!parsed.ok) return { issues: parsed.issues };
  const opened = openJob(JSON.parse(text.replace(/^\uFEFF/, '')));
  return opened.ok ? { document: opened.document } : { issues: opened.issues };
}
