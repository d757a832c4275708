import { requireFiles } from './arguments.ts';
import { EXIT } from './exitCode.ts';
import { complain, print } from './output.ts';
import { readJob } from './readJob.ts';
import { runCommand } from './runCommand.ts';
import { Words } from './words.ts';

const USAGE = `Checks job documents without computing their fit.

  npm run --silent validate -- job.json [more.json ...]      - is standard input

Says nothing of sound jobs. Exit code: 0 all are sound, 2 bad input (each error on standard error as "path: message"),
3 internal failure, 4 the errors could not be written whole.
`;

async function validate(args: readonly string[]): Promise<number> {
  const words = new Words(args, { help: { type: 'boolean', short: 'h' } });
  if (words.has('help')) {
    await print(USAGE);
    return EXIT.noneFails;
  }
  requireFiles(words.files);
  let exit: number = EXIT.noneFails;
  for (const file of words.files) {
    const parsed = await readJob(file, null);
    if (parsed.ok) continue;
    await complain(parsed.issues, words.files.length > 1 ? `${file}: ` : '');
    exit = EXIT.badInput;
  }
  return exit;
}

await runCommand(validate);
