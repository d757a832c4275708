import { write } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import { promisify } from 'node:util';
import type { JobIssue } from '../core/index.ts';

const writeSome = promisify(write);

/** A write that failed, as on a full disk, and how far the output got before. */
export class WriteError extends Error {
  /** Whether the reader has closed the pipe, as `head` does once it has enough: no failure of the command. */
  readonly isClosedPipe: boolean;

  constructor(cause: NodeJS.ErrnoException, bytes: number, lines: number) {
    const why = cause.message.replace(/, write$/, '');
    const whole = `${lines} whole ${lines === 1 ? 'line' : 'lines'}`;
    super(`got ${why}, after ${bytes} bytes (${whole}); allowed: the whole output; make room and run it again`);
    this.isClosedPipe = cause.code === 'EPIPE';
  }
}

/**
 * Writes to an open file, every byte or a `WriteError`, and waits for a slow reader.
 *
 * Node's own streams pass over a write that the disk took only part of, which is what the last write before a full disk is.
 */
class Output {
  readonly #file: number;
  #bytes = 0;
  #lines = 0;

  constructor(file: number) {
    this.#file = file;
  }

  async write(content: string | Uint8Array): Promise<void> {
    let rest = Buffer.from(content as Uint8Array);
    while (rest.length > 0) {
      const written = await this.#writeSome(rest);
      for (let at = rest.indexOf('\n'); at !== -1 && at < written; at = rest.indexOf('\n', at + 1)) this.#lines++;
      this.#bytes += written;
      rest = rest.subarray(written);
    }
  }

  async #writeSome(bytes: Uint8Array): Promise<number> {
    try {
      return (await writeSome(this.#file, bytes)).bytesWritten;
    } catch (error) {
      const cause = error as NodeJS.ErrnoException;
      if (cause.code !== 'EAGAIN') throw new WriteError(cause, this.#bytes, this.#lines);
      // A full pipe that another program has set not to wait.
      await setTimeout(5);
      return 0;
    }
  }
}

const standardOutput = new Output(1);
const standardError = new Output(2);

/** Writes to standard output. */
export const print = (content: string | Uint8Array): Promise<void> => standardOutput.write(content);

/** Writes lines to standard error; paths and values of a broken file may hold line breaks and control characters. */
export const say = (lines: readonly string[]): Promise<void> =>
  standardError.write(lines.map((line) => `${line.replace(/\p{Cc}+/gu, ' ')}\n`).join(''));

/** Says each issue in a line of its own, as `path: message`. */
export const complain = (issues: readonly JobIssue[], prefix = ''): Promise<void> =>
  say(issues.map(({ path, message }) => `${prefix}${path}: ${message}`));
