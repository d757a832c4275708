import type { JobIssue } from '../../core/index.ts';

/** One job on its way in, with the place it came from: a row of a table, the text of a file, or what broke in reading. */
export type Row = { readonly source: string } & (
  | { readonly cells: readonly string[] }
  | { readonly text: string }
  | { readonly issue: JobIssue }
);
