import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** Where a program is; undefined where this machine has none of that name. */
export const programPath = (name: string): string | undefined =>
  (process.env.PATH ?? '')
    .split(delimiter)
    .map((folder) => join(folder, name))
    .find(existsSync);

/** Ends a program that still runs, with its whole group; gives whether it did. */
function end(child: ChildProcess): boolean {
  if (child.pid === undefined || child.exitCode !== null || child.signalCode !== null) return false;
  return process.kill(-child.pid, 'SIGKILL');
}

/** Programs that are ended together, with all that they started. */
export class Programs {
  private readonly running: ChildProcess[] = [];

  start(command: string, args: readonly string[], env: Record<string, string> = {}): ChildProcess {
    // A group of its own, so that whatever it starts ends with it.
    const child = spawn(command, args, {
      detached: true,
      stdio: ['ignore', 'pipe', 'ignore'],
      env: { ...process.env, ...env },
    });
    this.running.push(child);
    // A run of the tests that is broken off leaves none behind.
    process.once('exit', () => end(child));
    return child;
  }

  /** A screen that nobody sees; gives its name. */
  async screen(): Promise<string> {
    const { stdout } = this.start('Xvfb', ['-displayfd', '1', '-screen', '0', '1600x1200x24', '-nolisten', 'tcp']);
    return `:${await firstLine(stdout)}`;
  }

  async end(): Promise<void> {
    for (const child of this.running.reverse()) {
      const gone = new Promise((resolve) => child.once('exit', resolve));
      if (end(child)) await gone;
    }
  }
}

const firstLine = (stream: ChildProcess['stdout']): Promise<string> =>
  new Promise((resolve, reject) => {
    stream?.once('data', (chunk) => resolve(String(chunk).trim()));
    stream?.once('close', () => reject(new Error('Xvfb ended before it named its screen.')));
  });
