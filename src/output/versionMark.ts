import type { Job } from '../core/index.ts';
import { crc32 } from './crc32.ts';

/** Digits of a mark that no hand or eye confuses: without I, L, O and U (Crockford's base 32). */
const DIGITS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const LENGTH = 7;

/**
 * Marks the version of a job: seven digits that stand on every sheet made of it and on the screen, so that a sheet in hand can be told
 * to be of the job that is open. Any change of the job alters them but a tick of work done, which changes nothing that is made.
 *
 * It is the CRC-32 of the job with its defaults, as JSON with sorted names, in base 32: however a document is written, jobs that
 * mean the same have one mark. Of two jobs that differ, one pair in 4 thousand million has the same; a change within four
 * letters in a row never.
 */
export function versionMark({ made: _, ...job }: Job): string {
  let rest = crc32(new TextEncoder().encode(canonical(job)));
  let mark = '';
  for (let i = 0; i < LENGTH; i++) {
    mark = DIGITS[rest & 31]! + mark;
    rest >>>= 5;
  }
  return mark;
}

/** JSON with the names of each object sorted (as RFC 8785 has them), so that their order says nothing. */
const canonical = (value: unknown): string =>
  JSON.stringify(value, (_, each: unknown) =>
    typeof each === 'object' && each !== null && !Array.isArray(each)
      ? Object.fromEntries(Object.entries(each).sort(([a], [b]) => (a < b ? -1 : 1)))
      : each,
  );
