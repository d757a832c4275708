import { BadInput } from './badInput.ts';
import { EXIT } from './exitCode.ts';
import { type Terminal, WriteError } from './terminal.ts';
import { type Options, Words } from './words.ts';

/** A command: takes the words after its name, gives its exit code. */
export type Command = (words: readonly string[], terminal: Terminal) => Promise<number>;

/**
 * Makes a command that answers `--help`.
 * @param options those that it takes beside `--help`
 * @param run throws `BadInput` for input that stops the whole run
 */
export const command =
  <O extends Options>(
    usage: string,
    options: O,
    run: (words: Words<O>, terminal: Terminal) => Promise<number>,
  ): Command =>
  async (args, terminal) => {
    const words = new Words(args, { ...options, help: { type: 'boolean', short: 'h' } });
    if (!words.has('help')) return run(words, terminal);
    await terminal.print(usage);
    return EXIT.noneFails;
  };

/** Runs a command and gives its exit code; what the command throws goes to standard error. */
export async function runCommand(run: Command, words: readonly string[], terminal: Terminal): Promise<number> {
  const failure = async (error: unknown): Promise<number> => {
    if (error instanceof BadInput) return terminal.complain(error.issues).then(() => EXIT.badInput, failure);
    if (error instanceof WriteError) {
      if (error.isClosedPipe) return EXIT.noneFails;
      // Where standard error itself cannot be written, the exit code is the only message.
      await terminal.say([`(output): ${error.message}`]).catch(() => {});
      return EXIT.outputCut;
    }
    const message = error instanceof Error ? error.message : String(error);
    return terminal.say([`internal failure: ${message}`]).then(() => EXIT.internal, failure);
  };
  return run(words, terminal).catch(failure);
}
