import { type JobIssue, jobIssue } from '../core/index.ts';

/** Bad input that stops the whole run, as against one bad job of several. */
export class BadInput extends Error {
  readonly issues: readonly JobIssue[];

  constructor(issues: readonly JobIssue[]) {
    super(issues[0]?.message);
    this.issues = issues;
  }
}

/** A word of the command line that cannot be taken. */
export const badWord = (path: string, got: string, allowed: string): BadInput =>
  new BadInput([jobIssue('choice', path, got, allowed, 'see --help')]);
