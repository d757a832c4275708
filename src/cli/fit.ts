import { createElasticSolvers, fitReport } from '../core/index.ts';
import { parseArguments, USAGE } from './arguments.ts';
import { EXIT } from './exitCode.ts';
import { complain, print } from './output.ts';
import { readJob } from './readJob.ts';
import { runCommand } from './runCommand.ts';

async function fit(words: readonly string[]): Promise<number> {
  const { files, units, help, quick } = parseArguments(words);
  if (help) {
    await print(USAGE);
    return EXIT.noneFails;
  }
  const isMany = files.length > 1;
  const solvers = quick ? undefined : createElasticSolvers();
  let exit: number = EXIT.noneFails;
  for (const file of files) {
    const parsed = await readJob(file, units);
    if (!parsed.ok) {
      await complain(parsed.issues, isMany ? `${file}: ` : '');
      exit = EXIT.badInput;
      continue;
    }
    const report = fitReport(parsed.job, { solvers });
    await print(`${JSON.stringify(report, null, isMany ? undefined : 2)}\n`);
    if (report.verdict === 'fails') exit = Math.max(exit, EXIT.fails);
  }
  return exit;
}

await runCommand(fit);
