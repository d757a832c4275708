import { parseArgs } from 'node:util';

/** What the catalogue command was asked to do. */
export interface CatalogueArguments {
  /** A table, a folder of jobs, or `-`; with `covers` a table of books. */
  readonly input: string;
  /** File of ready-made covers to try on every book; null to compute every job. */
  readonly covers: string | null;
  readonly to: 'csv' | 'jsonl';
  /** Unit that a job which names none is worked in; null where it was not said. */
  readonly units: 'mm' | 'in' | null;
  /** Null for all there are. */
  readonly cores: number | null;
  /** mm; Infinity for no limit. */
  readonly maxGap: number;
}

export const USAGE = `Computes many jobs in one run, one row or line of output for each.

  npm run --silent catalogue -- jobs.csv            jobs from a table
  npm run --silent catalogue -- folder              jobs from all .json files of a folder
  npm run --silent catalogue -- - < jobs.csv        table from standard input
  npm run --silent catalogue -- --covers covers.json --books books.csv
                                                    which ready-made cover fits which book

The first row of a table names a job field for each column, as in
  name,book.width_mm,book.height_mm,book.thickness_mm,leather.outside.min_mm,leather.outside.max_mm
A table of books has name and book fields only. Covers stand in a file
  {"format": "coverwright-covers", "version": 1, "covers": [{"name": ..., "leather": ..., "pattern": ..., ...}]}
with the fields of a job but no book; cut width, cut height and pocket depth must be given.

  --to jsonl       a JSON document a line (default)
  --to csv         a table
  --cores n        cores to use, 1 to 256; default all
  --units mm|in    unit that a job which names none is worked in (default mm); numbers stay in mm
  --max-gap mm     a ready-made cover with a larger gap at any edge is too loose to be the best one
  --help           this text

A bad row is named on standard error and left out. Exit code: 0 all fit or are tight (every book has a cover), 1 at least
one fails (a book has none), 2 bad input, 3 internal failure.
`;

export type ParsedCatalogueArguments =
  | { readonly kind: 'run'; readonly arguments: CatalogueArguments }
  | { readonly kind: 'help' }
  | { readonly kind: 'bad'; readonly message: string };

const OPTIONS = {
  to: { type: 'string' },
  units: { type: 'string' },
  cores: { type: 'string' },
  covers: { type: 'string' },
  books: { type: 'string' },
  'max-gap': { type: 'string' },
  help: { type: 'boolean', short: 'h' },
} as const;

class BadWord extends Error {}

/** Reads the words of the command line. */
export function parseCatalogueArguments(words: readonly string[]): ParsedCatalogueArguments {
  const { values, positionals, tokens } = parseArgs({
    args: [...words],
    options: OPTIONS,
    allowPositionals: true,
    strict: false,
    tokens: true,
  });
  if (values.help === true) return { kind: 'help' };
  try {
    for (const token of tokens)
      if (token.kind === 'option' && !(token.name in OPTIONS))
        throw wrong(
          token.rawName,
          'an unknown option',
          Object.keys(OPTIONS)
            .map((name) => `--${name}`)
            .join(', '),
        );
    const text = (name: keyof typeof OPTIONS): string | null => {
      const value = values[name];
      if (value === undefined) return null;
      if (typeof value !== 'string' || value === '') throw wrong(`--${name}`, 'nothing', 'a value after it');
      return value;
    };
    return {
      kind: 'run',
      arguments: {
        ...chooseInput(positionals, text('covers'), text('books')),
        to: choice('--to', text('to') ?? 'jsonl', ['csv', 'jsonl']),
        units: text('units') === null ? null : choice('--units', text('units')!, ['mm', 'in'] as const),
        cores: within('--cores', text('cores'), 1, 256, true),
        maxGap: within('--max-gap', text('max-gap'), 0, 1000, false) ?? Number.POSITIVE_INFINITY,
      },
    };
  } catch (error) {
    if (error instanceof BadWord) return { kind: 'bad', message: error.message };
    throw error;
  }
}

function chooseInput(files: readonly string[], covers: string | null, books: string | null) {
  if ((covers === null) !== (books === null))
    throw wrong(covers === null ? '--covers' : '--books', 'nothing', 'covers and books together');
  const inputs = books === null ? files : [books, ...files];
  if (inputs.length !== 1)
    throw wrong('(files)', inputs.length === 0 ? 'no file' : `${inputs.length} files`, 'one table or folder, or -');
  return { input: inputs[0]!, covers };
}

function choice<T extends string>(option: string, value: string, allowed: readonly T[]): T {
  const found = allowed.find((word) => word === value);
  if (found === undefined) throw wrong(option, value, allowed.join(' or '));
  return found;
}

function within(option: string, text: string | null, min: number, max: number, whole: boolean): number | null {
  if (text === null) return null;
  const value = Number(text);
  if (!(value >= min && value <= max) || (whole && !Number.isInteger(value)))
    throw wrong(option, text, `a ${whole ? 'whole ' : ''}number from ${min} to ${max}`);
  return value;
}

const wrong = (path: string, got: string, allowed: string): BadWord =>
  new BadWord(`${path}: got ${got}; allowed: ${allowed}; see --help`);
