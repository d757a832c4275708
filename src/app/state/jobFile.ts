import type { JobIssue } from '../../core/job/jobIssue.ts';
import { parseJobText } from '../../core/job/parseJob.ts';
import type { JobDocument } from './jobDocument.ts';

/** A file name from the job's name: letters and digits of any script, the rest as hyphens. */
export function jobFileName(document: JobDocument): string {
  const words = String(document.name ?? '')
    .toLowerCase()
    .match(/[\p{L}\p{N}]+/gu);
  return `${words?.join('-') ?? 'untitled-cover'}.job.json`;
}

/** Hands the document to the browser as a file to save. */
export function saveJobFile(document: JobDocument): void {
  const url = URL.createObjectURL(new Blob([`${JSON.stringify(document, null, 2)}\n`], { type: 'application/json' }));
  const link = window.document.createElement('a');
  link.href = url;
  link.download = jobFileName(document);
  link.click();
  // The browser reads the address after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

export type OpenedFile = { readonly document: JobDocument } | { readonly issues: readonly JobIssue[] };

/** Reads the text of a job file; a text that does not parse as a job is refused with every issue. */
export function openJobText(text: string): OpenedFile {
  const parsed = parseJobText(text);
  if (!parsed.ok) return { issues: parsed.issues };
  return { document: JSON.parse(text.replace(/^\uFEFF/, '')) as JobDocument };
}
