import { spawnSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { catalogueCommand } from '../../src/cli/catalogue/catalogueCommand.ts';
import { fitCommand } from '../../src/cli/fitCommand.ts';
import { modelCommand } from '../../src/cli/modelCommand.ts';
import { type Command, runCommand } from '../../src/cli/runCommand.ts';
import { sheetsCommand } from '../../src/cli/sheets/sheetsCommand.ts';
import { type Sink, Terminal } from '../../src/cli/terminal.ts';
import { validateCommand } from '../../src/cli/validateCommand.ts';
import { defined } from '../defined.ts';

const COMMANDS: Readonly<Record<string, Command>> = {
  fit: fitCommand,
  validate: validateCommand,
  model: modelCommand,
  sheets: sheetsCommand,
  // Without threads: only a real process has the bundle that they run.
  catalogue: (words, terminal) =>
    catalogueCommand(new URL('no-threads:'))(
      [...words, ...(words.includes('--cores') ? [] : ['--cores', '1'])],
      terminal,
    ),
};

/** What a process would have written and ended with. */
export interface Ended {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs a command in this process, the catalogue on one core unless the words say otherwise. */
export async function run(
  name: string,
  words: readonly string[],
  input: string | Uint8Array | Readable = '',
): Promise<Ended> {
  const output = new MemorySink();
  const errors = new MemorySink();
  const given = input instanceof Readable ? input : Readable.from([Buffer.from(input)]);
  const terminal = new Terminal(given, output, errors);
  const status = await runCommand(defined(COMMANDS[name]), words, terminal);
  return { status, stdout: output.text, stderr: errors.text };
}

class MemorySink implements Sink {
  readonly isTerminal = false;
  readonly #chunks: Buffer[] = [];

  async write(content: string | Uint8Array): Promise<void> {
    this.#chunks.push(Buffer.from(content));
  }

  get text(): string {
    return Buffer.concat(this.#chunks).toString();
  }
}

const script = join(import.meta.dirname, '../../scripts/command.mjs');

/** What to start Node with for a command in a process of its own, as npm does. */
export const processWords = (name: string, words: readonly string[]): string[] => [script, name, ...words];

/** Builds the command line once, so that no test waits for it. */
export const build = (): void => {
  spawnSync(process.execPath, processWords('fit', ['--help']));
};

/** Runs a command in a process of its own. */
export const runProcess = (name: string, words: readonly string[], input?: string | Uint8Array, cwd?: string) =>
  spawnSync(process.execPath, processWords(name, words), { input, cwd, encoding: 'utf8', maxBuffer: 1e9 });

/** Runs a command in a process of its own with its standard output in the file at `path`. */
export function runInto(path: string, name: string, words: readonly string[], input?: string) {
  const file = openSync(path, 'w');
  try {
    return spawnSync(process.execPath, processWords(name, words), {
      input,
      encoding: 'utf8',
      stdio: ['pipe', file, 'pipe'],
    });
  } finally {
    closeSync(file);
  }
}

/** A folder of files for one test file. */
export function scratch(prefix: string) {
  const folder = mkdtempSync(join(tmpdir(), prefix));
  return {
    folder,
    file(name: string, content: string | Uint8Array): string {
      const path = join(folder, name);
      writeFileSync(path, content);
      return path;
    },
    remove: () => rmSync(folder, { recursive: true }),
  };
}

export const lines = (text: string): string[] => text.trimEnd().split('\n');

/** The text in UTF-16 with its mark, as some programs save it. */
export function utf16(text: string, order: 'little' | 'big'): Buffer {
  const bytes = Buffer.from(`\uFEFF${text}`, 'utf16le');
  return order === 'little' ? bytes : bytes.swap16();
}
