export interface Arguments {
  readonly files: readonly string[];
  /** Unit that a job which names none is worked in; null where it was not said. */
  readonly units: 'mm' | 'in' | null;
  readonly help: boolean;
  /** Whether to solve the elastic strip. */
  readonly strip: boolean;
}

export const USAGE = `Computes how a leather cover fits its book.

  npm run --silent fit -- job.json            report of one job, as JSON
  npm run --silent fit -- a.json b.json       one report a line (JSON Lines)
  npm run --silent fit -- - < job.json        job from standard input

  --units in    a job that names no unit is worked in inches: cut sizes are multiples of 1/16 in, and messages
                are in inches; numbers of the report stay in mm
  --units mm    the same in mm (default)
  --no-strip    closed form only: quicker, and nothing on how far the cover springs open
  --help        this text

Exit code: 0 fits or tight, 1 at least one job fails, 2 bad input (each error on standard error as
"path: message"), 3 internal failure. Example jobs are in public/jobs.
`;

export type ParsedArguments =
  | { readonly ok: true; readonly arguments: Arguments }
  | { readonly ok: false; readonly message: string };

/** Reads the command line; everything that is not an option is a file, and all that follows `--` is. */
export function parseArguments(words: readonly string[]): ParsedArguments {
  const files: string[] = [];
  let units: 'mm' | 'in' | null = null;
  let help = false;
  let strip = true;
  for (let i = 0; i < words.length; i++) {
    const word = words[i]!;
    if (word === '--') {
      files.push(...words.slice(i + 1));
      break;
    }
    if (word === '--help' || word === '-h') help = true;
    else if (word === '--no-strip') strip = false;
    else if (word === '--units' || word.startsWith('--units=')) {
      const value = word === '--units' ? words[++i] : word.slice('--units='.length);
      if (value !== 'mm' && value !== 'in') return bad('--units', value ?? 'nothing', 'mm or in', 'as in --units in');
      units = value;
    } else if (word.startsWith('-') && word !== '-') {
      return bad(word, 'an unknown option', '--units, --no-strip, --help', 'see --help');
    } else files.push(word);
  }
  if (!help && files.length === 0) return bad('(files)', 'no file', 'one or more job files, or -', 'see --help');
  return { ok: true, arguments: { files, units, help, strip } };
}

const bad = (path: string, got: string, allowed: string, remedy: string): ParsedArguments => ({
  ok: false,
  message: `${path}: got ${got}; allowed: ${allowed}; ${remedy}`,
});
