import { spawnSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The script of a command, as npm runs it. */
export const script = (name: string): string => join(import.meta.dirname, '../../scripts', `${name}.mjs`);

/** Builds the bundle of a command once, so that no test waits for it. */
export const build = (name: string): void => {
  spawnSync(process.execPath, [script(name), '--help']);
};

export const run = (name: string, words: readonly string[], input?: string | Uint8Array) =>
  spawnSync(process.execPath, [script(name), ...words], { input, encoding: 'utf8', maxBuffer: 1e9 });

/** Runs a command with its standard output in the file at `path`. */
export function runInto(path: string, name: string, words: readonly string[], input?: string) {
  const file = openSync(path, 'w');
  try {
    return spawnSync(process.execPath, [script(name), ...words], {
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
