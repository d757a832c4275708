import { EXIT } from './exitCode.ts';
import { readJob } from './readJob.ts';
import { command } from './runCommand.ts';

const USAGE = `Checks job documents without computing their fit.

  npm run --silent validate -- job.json [more.json ...]      - is standard input

Says nothing of sound jobs. Exit code: 0 all are sound, 2 bad input (each error on standard error as "path: message"),
3 internal failure, 4 the errors could not be written whole.
`;

export const validateCommand = command(USAGE, {}, async (words, terminal) => {
  const files = words.someFiles();
  let exit: number = EXIT.noneFails;
  for (const file of files) {
    const parsed = await readJob(file, null, terminal.input);
    if (parsed.ok) continue;
    await terminal.complain(parsed.issues, files.length > 1 ? `${file}: ` : '');
    exit = EXIT.badInput;
  }
  return exit;
});
