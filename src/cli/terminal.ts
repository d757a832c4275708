import { write } from 'node:fs';
import type { Readable } from 'node:stream';
import { setTimeout } from 'node:timers/promises';
import { isatty } from 'node:tty';
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

/** What takes bytes in the order in which they are written. */
export interface Sink {
  /** @throws WriteError unless every byte was taken */
  write(content: string | Uint8Array): Promise<void>;
  /** Whether it is a screen. */
  readonly isTerminal: boolean;
}

/**
 * An open file. Waits for a slow reader.
 *
 * Node's own streams ignore a write of which the disk took only part, as happens to the last write before the disk is full.
 */
export class FileSink implements Sink {
  readonly isTerminal: boolean;
  readonly #file: number;
  readonly #start: number | null;
  #bytes = 0;
  #lines = 0;

  /**
   * @param file descriptor: 1 is standard output, 2 standard error
   * @param start byte of the file at which the output begins; null where it stands
   */
  constructor(file: number, start: number | null = null) {
    this.#file = file;
    this.#start = start;
    this.isTerminal = isatty(file);
  }

  /** Bytes written so far. */
  get bytes(): number {
    return this.#bytes;
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
      const at = this.#start === null ? null : this.#start + this.#bytes;
      return (await writeSome(this.#file, bytes, 0, bytes.length, at)).bytesWritten;
    } catch (error) {
      const cause = error as NodeJS.ErrnoException;
      if (cause.code !== 'EAGAIN') throw new WriteError(cause, this.#bytes, this.#lines);
      // The pipe is full, and another program has set it not to wait.
      await setTimeout(5);
      return 0;
    }
  }
}

/** Where a command reads and writes: the three standard streams, or those of a test. */
export class Terminal {
  /** What `-` reads. */
  readonly input: Readable;
  readonly #output: Sink;
  readonly #errors: Sink;

  constructor(input: Readable, output: Sink, errors: Sink) {
    this.input = input;
    this.#output = output;
    this.#errors = errors;
  }

  /** Whether a person reads standard error as it comes. */
  get isWatched(): boolean {
    return this.#errors.isTerminal;
  }

  /** Writes to standard output. */
  print(content: string | Uint8Array): Promise<void> {
    return this.#output.write(content);
  }

  /** Writes lines to standard error; paths and values of a broken file may hold line breaks and control characters. */
  say(lines: readonly string[]): Promise<void> {
    return this.#errors.write(lines.map((line) => `${line.replace(/\p{Cc}+/gu, ' ')}\n`).join(''));
  }

  /** Writes each issue to standard error in a line of its own, as `path: message`. */
  complain(issues: readonly JobIssue[], prefix = ''): Promise<void> {
    return this.say(issues.map(({ path, message }) => `${prefix}${path}: ${message}`));
  }
}
