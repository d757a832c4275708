import type { Compared } from '../core/index.ts';
import { comparisonPicture } from '../output/comparison/comparisonPicture.ts';
import { comparisonSvg } from '../output/comparison/comparisonSvg.ts';
import { COMPARISON_COLUMNS, comparisonRows, comparisonText } from '../output/comparison/comparisonTable.ts';
import {
  COVER_COLUMNS,
  isCoversTable,
  madeJobs,
  plainCovers,
  type ReadCover,
} from '../output/comparison/coversTable.ts';
import { BadInput, badWord } from './badInput.ts';
import { batchWork, table } from './catalogue/batchWork.ts';
import { batches } from './catalogue/inOrder.ts';
import { isFolder, jobHeader, openInput, openTable } from './catalogue/openInput.ts';
import type { RowSupply } from './catalogue/rowSupply.ts';
import { EXIT } from './exitCode.ts';
import { readJob } from './readJob.ts';
import { command } from './runCommand.ts';
import type { Terminal } from './terminal.ts';

const USAGE = `Checks job documents without computing their fit, and covers that were made against what the tool predicts of them.

  npm run --silent validate -- job.json [more.json ...]      - is standard input
  npm run --silent validate -- jobs.csv [folder ...]         every row of a table, every job of a folder
  npm run --silent validate -- covers.csv [--to text|csv|svg]   a table of covers that were made
  npm run --silent validate -- --template > covers.csv       an empty table of them

A name that ends in .csv or .tsv is a table, as catalogue reads it (see catalogue --help). It is one of covers that were made if it has
the columns outcome.front_mm, outcome.back_mm, outcome.head_mm and outcome.tail_mm, or any of them, of a table of jobs; or the plain
columns of the template, of which none is required:

  id                                    name of the cover
  binding                               hardback (usual), paperback or limp
  book_height, book_width, book_thickness   of the closed book, over the boards
  unit                                  of all lengths of the row: mm (usual) or in
  leather                               its weight, as 4-5 oz (usual) or 1.5 mm
  pockets                               two (usual), or turned and how far, as turned 60
  cut_width, cut_height                 of the outside as it was cut, turned ends in it; 270-275 where it varied
  gap_front, gap_back, gap_head, gap_tail   read on the finished cover, the book closed and pushed home; minus for an overrun
  kind, judged, note, source            what else is written down; not used

Where the gaps of both fore-edges, or of head and tail, and the size cut are given, their sum is compared with what that cut leaves; else
the cut size with what the tool would cut. Text and csv give each length, bias, RMS and how many are within the stated 95 in 100, by edge and by
leather; svg is a picture of measured over predicted.

  --to text|csv|svg   what is written of covers that were made; text if not given
  --template          the empty table
  --table    every file named is a table, whatever its name; with - for a table from standard input
  --help     this text

Says nothing of sound jobs. Exit code: 0 all are sound, 2 bad input (each error on standard error as "path: message", in a
table after its line), 3 internal failure, 4 the output or the errors could not be written whole.
`;

const OPTIONS = { table: { type: 'boolean' }, template: { type: 'boolean' }, to: { type: 'string' } } as const;

const FORMS = ['text', 'csv', 'svg'] as const;

/** Covers that were made, of all tables of a run. */
interface Made {
  readonly compared: Compared[];
  readonly leftOut: string[];
  /** Whether any table was one of covers. */
  isAsked: boolean;
}

export const validateCommand = command(USAGE, OPTIONS, async (words, terminal) => {
  if (words.has('template')) {
    await terminal.print(table([COVER_COLUMNS], ','));
    return EXIT.noneFails;
  }
  const to = words.choice('to', FORMS);
  const files = words.someFiles();
  const made: Made = { compared: [], leftOut: [], isAsked: false };
  let exit: number = EXIT.noneFails;
  for (const file of files) {
    const prefix = files.length > 1 ? `${file}: ` : '';
    const isSound = await check(file, prefix, words.has('table'), terminal, made).catch(async (error) => {
      if (!(error instanceof BadInput)) throw error;
      await terminal.complain(error.issues, prefix);
      return false;
    });
    if (!isSound) exit = EXIT.badInput;
  }
  if (made.isAsked) await terminal.print(written(made, to ?? 'text'));
  else if (to !== null && exit === EXIT.noneFails)
    throw badWord('--to', `${to}, and no table of covers`, 'a table of covers that were made');
  return exit;
});

function written({ compared, leftOut }: Made, to: (typeof FORMS)[number]): string {
  if (to === 'csv') return table([COMPARISON_COLUMNS, ...comparisonRows(compared)], ',');
  if (to === 'text') return comparisonText(compared, leftOut);
  if (compared.length === 0) throw badWord('--to', 'svg, and no length to compare', 'covers with measured lengths');
  return comparisonSvg(comparisonPicture(compared, 'mm'));
}

/** @throws BadInput where nothing of the file can be checked */
async function check(file: string, prefix: string, isTable: boolean, terminal: Terminal, made: Made): Promise<boolean> {
  const source = { input: file, standardInput: terminal.input, interrupt: new AbortController().signal, part: null };
  if (file !== '-' && (await isFolder(file))) {
    const { supply, header } = await openInput(source);
    return soundRows(supply, header, prefix, terminal);
  }
  if (isTable || /\.[ct]sv$/i.test(file)) {
    const { supply, first } = await openTable(source);
    const cells = first ?? [];
    return isCoversTable(cells)
      ? comparedRows(supply, cells, prefix, terminal, made)
      : soundRows(supply, jobHeader(cells), prefix, terminal);
  }
  const parsed = await readJob(file, null, terminal.input);
  if (!parsed.ok) throw new BadInput(parsed.issues);
  return true;
}

async function soundRows(
  supply: RowSupply,
  header: ReturnType<typeof jobHeader>,
  prefix: string,
  terminal: Terminal,
): Promise<boolean> {
  const work = batchWork({ ...CHECK_ONLY, header });
  let isSound = true;
  for await (const rows of batches(supply.rows, 1)) {
    const { complaints } = work(rows);
    await terminal.say(complaints.map((complaint) => prefix + complaint));
    isSound &&= complaints.length === 0;
  }
  if (supply.fault !== null) await terminal.complain([supply.fault], prefix);
  return isSound && supply.fault === null;
}

const CHECK_ONLY = { covers: null, maxGap: null, to: 'jsonl', units: null, separator: ',', isDry: true } as const;

/** Compares the covers of a table; rows that cannot be read are named and left out. */
async function comparedRows(
  supply: RowSupply,
  first: readonly string[],
  prefix: string,
  terminal: Terminal,
  made: Made,
): Promise<boolean> {
  const read = readerOf(first);
  made.isAsked = true;
  let isSound = true;
  for await (const row of supply.rows) {
    const answer: ReadCover =
      'cells' in row ? read(row.cells) : { ok: false, issues: 'issue' in row ? [row.issue] : [] };
    if (answer.ok) {
      made.compared.push(...answer.compared);
      if (answer.leftOut !== null) made.leftOut.push(`${prefix}${row.source}: ${answer.leftOut}`);
      continue;
    }
    isSound = false;
    await terminal.complain(answer.issues, `${prefix}${row.source}: `);
  }
  if (supply.fault !== null) await terminal.complain([supply.fault], prefix);
  return isSound && supply.fault === null;
}

/** @throws BadInput for columns that are none of a table of covers */
function readerOf(first: readonly string[]): (cells: readonly string[]) => ReadCover {
  if (first.some((cell) => cell.trim().startsWith('outcome.'))) return madeJobs(jobHeader(first));
  const plain = plainCovers(first);
  if (!plain.ok) throw new BadInput(plain.issues);
  return plain.read;
}
