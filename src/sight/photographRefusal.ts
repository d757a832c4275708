import { capital } from '../core/index.ts';

/** A file that is not taken as a photograph, in words for who chose it: what it is, what is allowed, what to do. */
export class PhotographRefusal extends Error {
  /**
   * @param file its name
   * @param got with the verb, as "is an empty file"
   * @param allowed as "a photograph of at most 60 MB"
   * @param remedy what to do, in the imperative
   */
  constructor(file: string, got: string, allowed: string, remedy: string) {
    super(`${shortName(file)} ${got}; allowed: ${allowed}. ${capital(remedy)}.`);
  }
}

/** The name without folders and signs that cannot be seen, 60 characters at most. */
function shortName(file: string): string {
  const last = file.replace(/^.*[\\/]/s, '').replace(/[\p{C}\s]+/gu, ' ');
  return [...last.trim()].slice(0, 60).join('') || 'The file';
}
