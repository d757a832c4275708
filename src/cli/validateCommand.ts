import { BadInput } from './badInput.ts';
import { batchWork } from './catalogue/batchWork.ts';
import { batches } from './catalogue/inOrder.ts';
import { isFolder, openInput } from './catalogue/openInput.ts';
import { EXIT } from './exitCode.ts';
import { readJob } from './readJob.ts';
import { command } from './runCommand.ts';
import type { Terminal } from './terminal.ts';

const USAGE = `Checks job documents without computing their fit.

  npm run --silent validate -- job.json [more.json ...]      - is standard input
  npm run --silent validate -- jobs.csv [folder ...]         every row of a table, every job of a folder

A name that ends in .csv or .tsv is a table, as catalogue reads it (see catalogue --help).

  --table    every file named is a table, whatever its name; with - for a table from standard input
  --help     this text

Says nothing of sound jobs. Exit code: 0 all are sound, 2 bad input (each error on standard error as "path: message", in a
table after its line), 3 internal failure, 4 the errors could not be written whole.
`;

const OPTIONS = { table: { type: 'boolean' } } as const;

export const validateCommand = command(USAGE, OPTIONS, async (words, terminal) => {
  const files = words.someFiles();
  let exit: number = EXIT.noneFails;
  for (const file of files) {
    const prefix = files.length > 1 ? `${file}: ` : '';
    const isSound = await check(file, prefix, words.has('table'), terminal).catch(async (error) => {
      if (!(error instanceof BadInput)) throw error;
      await terminal.complain(error.issues, prefix);
      return false;
    });
    if (!isSound) exit = EXIT.badInput;
  }
  return exit;
});

/** @throws BadInput where nothing of the file can be checked */
async function check(file: string, prefix: string, isTable: boolean, terminal: Terminal): Promise<boolean> {
  if (isTable || /\.[ct]sv$/i.test(file) || (file !== '-' && (await isFolder(file))))
    return soundRows(file, prefix, terminal);
  const parsed = await readJob(file, null, terminal.input);
  if (!parsed.ok) throw new BadInput(parsed.issues);
  return true;
}

async function soundRows(file: string, prefix: string, terminal: Terminal): Promise<boolean> {
  const never = new AbortController().signal;
  const { supply, header } = await openInput({
    input: file,
    standardInput: terminal.input,
    interrupt: never,
    part: null,
  });
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
