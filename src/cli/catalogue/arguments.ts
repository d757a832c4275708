import { badWord } from '../badInput.ts';
import { Words } from '../words.ts';

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
  /** mm; null for the loosest gaps of each cover. */
  readonly maxGap: number | null;
}

export const USAGE = `Computes many jobs in one run, one row or line of output for each.

  npm run --silent catalogue -- jobs.csv            jobs from a table
  npm run --silent catalogue -- folder              jobs from all .json files of a folder
  npm run --silent catalogue -- - < jobs.csv        table from standard input
  npm run --silent catalogue -- --covers covers.json --books books.csv
                                                    which ready-made cover fits which book

The first row of a table names a job field for each column, as in
  name,book.width_mm,book.height_mm,book.thickness_mm,leather.outside.min_mm,leather.outside.max_mm
or, with one column for a leather as it is sold,
  name,book.width_mm,book.height_mm,book.thickness_mm,leather.outside
What stands between the names there, a comma, a semicolon or a tab, separates all cells. Cells are read as on the page:
165.5, 165,5 (in quotes where commas separate), 8 1/2 in, 21.6 cm; 4-5 oz or 1.6-2.0 mm for a leather, 4 oz for one end.
A number without a unit is in the unit that its column's name ends with.

A table of books has name and book fields only. Covers stand in a file
  {"format": "coverwright-covers", "version": 1, "covers": [{"name": ..., "leather": ..., "pattern": ..., ...}]}
with the fields of a job but no book; cut width, cut height and pocket depth must be given.

  --to jsonl       a JSON document a line (default)
  --to csv         a table
  --cores n        cores to use, 1 to 256; default all
  --units mm|in    unit that a job which names none is worked in (default mm); numbers stay in mm
  --max-gap mm     a ready-made cover with a larger gap at any edge is not the best one (else its own loosest gaps)
  --help           this text

A bad row is named on standard error and left out; the last line there says how many were done, how many were bad, and
whether the output is complete. Ctrl-C ends the run after the rows in hand. Exit code: 0 none fails (every book has a
cover), 1 at least one fails (a book has none), 2 bad input, 3 internal failure, 4 the output could not be written whole,
130 interrupted.
`;

const OPTIONS = {
  to: { type: 'string' },
  units: { type: 'string' },
  cores: { type: 'string' },
  covers: { type: 'string' },
  books: { type: 'string' },
  'max-gap': { type: 'string' },
  help: { type: 'boolean', short: 'h' },
} as const;

/** Reads the words of the command line; null where they ask for help. */
export function parseCatalogueArguments(args: readonly string[]): CatalogueArguments | null {
  const words = new Words(args, OPTIONS);
  if (words.has('help')) return null;
  return {
    ...chooseInput(words.files, words.text('covers'), words.text('books')),
    to: words.choice('to', ['jsonl', 'csv']) ?? 'jsonl',
    units: words.choice('units', ['mm', 'in']),
    cores: words.number('cores', 1, 256, true),
    maxGap: words.number('max-gap', 0, 1000),
  };
}

function chooseInput(files: readonly string[], covers: string | null, books: string | null) {
  if ((covers === null) !== (books === null))
    throw badWord(covers === null ? '--covers' : '--books', 'nothing', 'covers and books together');
  const inputs = books === null ? files : [books, ...files];
  if (inputs.length !== 1)
    throw badWord('(files)', inputs.length === 0 ? 'no file' : `${inputs.length} files`, 'one table or folder, or -');
  return { input: inputs[0]!, covers };
}
