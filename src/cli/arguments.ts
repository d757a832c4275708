import { badWord } from './badInput.ts';
import { Words } from './words.ts';

export interface Arguments {
  readonly files: readonly string[];
  /** Unit that a job which names none is worked in; null where it was not said. */
  readonly units: 'mm' | 'in' | null;
  readonly help: boolean;
  /** Whether to leave the elastic strip unsolved. */
  readonly quick: boolean;
}

export const USAGE = `Computes how a leather cover fits its book.

  npm run --silent fit -- job.json            report of one job, as JSON
  npm run --silent fit -- a.json b.json       one report a line (JSON Lines)
  npm run --silent fit -- - < job.json        job from standard input

  --units in    a job that names no unit is worked in inches: cut sizes are multiples of 1/16 in, and messages
                are in inches; numbers of the report stay in mm
  --units mm    the same in mm (default)
  --quick       without the springy model: quicker, and nothing on how far the cover springs open
                (--no-strip, as it was called before, is still taken)
  --help        this text

Exit code: 0 none fails (fits, tight, loose, unknown), 1 at least one job fails, 2 bad input (each error on
standard error as "path: message"), 3 internal failure, 4 the output could not be written whole.
Example jobs are in public/jobs.
`;

const OPTIONS = {
  units: { type: 'string' },
  quick: { type: 'boolean' },
  'no-strip': { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
} as const;

/** Reads the command line; everything that is not an option is a file, and all that follows `--` is. */
export function parseArguments(args: readonly string[]): Arguments {
  const words = new Words(args, OPTIONS);
  const help = words.has('help');
  if (!help) requireFiles(words.files);
  return {
    files: words.files,
    units: words.choice('units', ['mm', 'in']),
    help,
    quick: words.has('quick') || words.has('no-strip'),
  };
}

export function requireFiles(files: readonly string[]): void {
  if (files.length === 0) throw badWord('(files)', 'no file', 'one or more job files, or -');
}
