import { write } from 'node:fs';
import type { Readable } from 'node:stream';
import { setTimeout } from 'node:timers/promises';
import { isatty } from 'node:tty';
import { promisify } from 'node:util';
import type { JobIssue } from '../core/index.ts';

const writeSome = promisify(write);

/** What the system says where a disk takes no more, in plain words; the system's own message elsewhere. */
const REASONS: Readonly<Record<string, string>> = {
  ENOSPC: 'no space left on device',
  EDQUOT: 'disk quota exceeded',
  EFBIG: 'file too large',
  EIO: 'the device failed',
};

/** Error number of a full quota in Linux, for which Node has no name. */
const EDQUOT = -122;

/** A write that failed, as on a full disk. */
export class WriteError extends Error {
  /** Why, and how far the output got. */
  readonly reason: string;
  /** Whether the reader has closed the pipe, as `head` does once it has enough: no failure of the command. */
  readonly isClosedPipe: boolean;

  constructor(cause: NodeJS.ErrnoException, howFar = '') {
    const code = cause.errno === EDQUOT ? 'EDQUOT' : (cause.code ?? '');
    const reason = `${REASONS[code] ?? cause.message.replace(/, (write|open)\b.*$/, '')}${howFar}`;
    super(`got ${reason}; allowed: the whole output; make room and run it again`);
    this.reason = reason;
    this.isClosedPipe = code === 'EPIPE';
  }

  /** Whether an error of the system says that there is no room, as against a place where nothing may be written. */
  static isFull({ code = '', errno }: NodeJS.ErrnoException): boolean {
    return Object.hasOwn(REASONS, code) || errno === EDQUOT;
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
      const whole = `${this.#lines} whole ${this.#lines === 1 ? 'line' : 'lines'}`;
      if (cause.code !== 'EAGAIN') throw new WriteError(cause, `, after ${this.#bytes} bytes (${whole})`);
      // The pipe is full, and another program has set it not to wait.
      await setTimeout(5);
      return 0;
    }
  }
}

/** Back to the beginning of the line on the screen, and empties it. */
const CLEAR = '\r\u001b[K';

/** Where a command reads and writes: the three standard streams, or those of a test. */
export class Terminal {
  /** What `-` reads. */
  readonly input: Readable;
  readonly #output: Sink;
  readonly #errors: Sink;
  #hasStatus = false;

  constructor(input: Readable, output: Sink, errors: Sink) {
    this.input = input;
    this.#output = output;
    this.#errors = errors;
  }

  /** Writes to standard output. */
  print(content: string | Uint8Array): Promise<void> {
    return this.#output.write(content);
  }

  /**
   * Writes lines to standard error; paths and values of a broken file may hold line breaks and control characters. Where
   * nobody reads standard error any more the run goes on: it has its output yet to write, and its exit code.
   */
  async say(lines: readonly string[]): Promise<void> {
    if (lines.length === 0) return;
    await this.#tell(lines.map((line) => `${line.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ')}\n`).join(''));
  }

  /** Writes each issue to standard error in a line of its own, as `path: message`. */
  complain(issues: readonly JobIssue[], prefix = ''): Promise<void> {
    return this.say(issues.map(({ path, message }) => `${prefix}${path}: ${message}`));
  }

  /**
   * Whether a status can be shown: standard error is a screen.
   * @param isOutputApart whether the output goes elsewhere than to standard output; where that is a screen too, it is status enough
   */
  canShowStatus(isOutputApart: boolean): boolean {
    return this.#errors.isTerminal && (isOutputApart || !this.#output.isTerminal);
  }

  /** Shows a short line on the screen in place of the last one; the next that is said takes its place. */
  async showStatus(line: string): Promise<void> {
    await this.#tell(line);
    this.#hasStatus = true;
  }

  /** Takes the status from the screen. */
  async clearStatus(): Promise<void> {
    await this.#tell('');
  }

  async #tell(text: string): Promise<void> {
    const cleared = this.#hasStatus ? CLEAR + text : text;
    this.#hasStatus = false;
    await this.#errors.write(cleared).catch((error) => {
      if (!(error instanceof WriteError && error.isClosedPipe)) throw error;
    });
  }
}
