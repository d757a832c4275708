import {
  type JobDocument,
  type JobIssue,
  jobIssue,
  MAX_JOB_CHARACTERS,
  openJob,
  parseJobText,
} from '../../core/index.ts';

export type OpenedFile = { readonly document: JobDocument } | { readonly issues: readonly JobIssue[] };

/** Reads the text of a job file of any version; a text that does not parse as a job is refused with every issue. */
export function openJobText(text: string): OpenedFile {
  const parsed = parseJobText(text);
  if (!parsed.ok) return { issues: parsed.issues };
  const opened = openJob(JSON.parse(text.replace(/^\uFEFF/, '')));
  return opened.ok ? { document: opened.document } : { issues: opened.issues };
}

/** Reads a job file that the maker chose. As `openJobText`; one that the browser cannot read, or far too large, is refused. */
export async function openJobFile(file: Blob): Promise<OpenedFile> {
  const refused = (code: JobIssue['code'], got: string, remedy: string): OpenedFile => ({
    issues: [jobIssue(code, '(file)', got, 'a job file that can be read', remedy)],
  });
  // A character takes at most 4 bytes, so a larger file is refused whatever is in it.
  if (file.size > 4 * MAX_JOB_CHARACTERS)
    return refused(
      'too_large',
      `${(file.size / 1e6).toFixed(0)} million bytes`,
      'check that this is the file you meant',
    );
  let text: string;
  try {
    text = await file.text();
  } catch (error) {
    return refused(
      'unreadable',
      error instanceof Error ? error.message : String(error),
      'choose the file again: it may have been moved, or changed after it was chosen',
    );
  }
  return openJobText(text);
}
