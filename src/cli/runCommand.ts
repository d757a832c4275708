import process from 'node:process';
import { BadInput } from './badInput.ts';
import { EXIT } from './exitCode.ts';
import { complain, say, WriteError } from './output.ts';

/** Runs a command and ends the process with its exit code; what the command throws is said on standard error. */
export async function runCommand(command: (words: readonly string[]) => Promise<number>): Promise<never> {
  const code = await command(process.argv.slice(2)).catch(failure);
  // All output has been waited for; an input that never ends would keep the process alive.
  process.exit(code);
}

async function failure(error: unknown): Promise<number> {
  if (error instanceof BadInput) return complain(error.issues).then(() => EXIT.badInput, failure);
  if (error instanceof WriteError) {
    if (error.isClosedPipe) return EXIT.noneFails;
    // Where standard error is what cannot be written, the exit code is all there is to say.
    await say([`(output): ${error.message}`]).catch(() => {});
    return EXIT.outputCut;
  }
  const message = error instanceof Error ? error.message : String(error);
  return say([`internal failure: ${message}`]).then(() => EXIT.internal, failure);
}
