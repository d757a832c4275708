import { createElasticSolvers, documentSchema, fitReport } from '../core/index.ts';
import { EXIT } from './exitCode.ts';
import { readJob } from './readJob.ts';
import { command } from './runCommand.ts';

const USAGE = `Computes how a leather cover fits its book.

  npm run --silent fit -- job.json            report of one job, as JSON
  npm run --silent fit -- a.json b.json       one report a line (JSON Lines)
  npm run --silent fit -- - < job.json        job from standard input

  --units in    a job that names no unit is worked in inches: cut sizes are multiples of 1/16 in, and messages
                are in inches; numbers of the report stay in mm
  --units mm    the same in mm (usual)
  --quick       without the springy model and without trials: quicker, and nothing on how far the cover springs
                open or on what the trials make of the chances; the verdict is the same
                (--no-strip, as it was called before, is still taken)
  --schema      the JSON Schema of job and report instead of a report
  --help        this text

Exit code: 0 none fails (fits, tight, loose, unknown), 1 at least one job fails, 2 bad input (each error on
standard error as "path: message"), 3 internal failure, 4 the output could not be written whole.
Example jobs are in public/jobs.
`;

const OPTIONS = {
  units: { type: 'string' },
  quick: { type: 'boolean' },
  'no-strip': { type: 'boolean' },
  schema: { type: 'boolean' },
} as const;

export const fitCommand = command(USAGE, OPTIONS, async (words, terminal) => {
  if (words.has('schema')) {
    await terminal.print(`${JSON.stringify(documentSchema(), null, 2)}\n`);
    return EXIT.noneFails;
  }
  const files = words.someFiles();
  const units = words.choice('units', ['mm', 'in']);
  const isQuick = words.has('quick') || words.has('no-strip');
  const options = isQuick ? {} : { solvers: createElasticSolvers(), trials: {} };
  const isMany = files.length > 1;
  let exit: number = EXIT.noneFails;
  for (const file of files) {
    const parsed = await readJob(file, units, terminal.input);
    if (!parsed.ok) {
      await terminal.complain(parsed.issues, isMany ? `${file}: ` : '');
      exit = EXIT.badInput;
      continue;
    }
    const report = fitReport(parsed.job, options);
    await terminal.print(`${JSON.stringify(report, null, isMany ? undefined : 2)}\n`);
    if (report.verdict === 'fails') exit = Math.max(exit, EXIT.fails);
  }
  return exit;
});
