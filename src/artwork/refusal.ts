import { capital, type JobIssue, jobIssue } from '../core/index.ts';

/** A file that is not taken, thrown inside this room; its door returns the issue. */
export class Refusal extends Error {
  readonly issue: JobIssue;

  /**
   * @param got with the verb, as "has 40,000 points"
   * @param allowed as "at most 30,000"
   * @param remedy what the maker can do, in the imperative
   */
  constructor(code: JobIssue['code'], got: string, allowed: string, remedy: string) {
    super(`${got}; allowed: ${allowed}`);
    const words = `The drawing ${got}; allowed: ${allowed}. ${capital(remedy)}.`;
    this.issue = { ...jobIssue(code, 'tooling.artworks', `a drawing that ${got}`, allowed, remedy), words };
  }
}

/** A whole number with commas, as sentences print it. */
export const count = (value: number): string => String(value).replace(/\B(?=(\d{3})+$)/g, ',');
