import { spawn } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { build, lines, processWords, scratch } from '../commandLine.ts';

const HEADER = 'name,book.width_mm,book.height_mm,book.thickness_mm,leather.outside.min_mm,leather.outside.max_mm';

/** Starts the command, interrupts it once it has written something, and gives what it said. */
async function interrupted(words: readonly string[], input?: string, signal: 'SIGINT' | 'SIGTERM' = 'SIGINT') {
  const child = spawn(process.execPath, processWords('catalogue', words));
  // The command may end before it has taken all.
  child.stdin.on('error', () => {});
  if (input === undefined) child.stdin.end();
  else child.stdin.write(input); // and never ended: the table goes on, as from another program
  const said = { stdout: '', stderr: '' };
  const first = new Promise<void>((resolve) => {
    child.stdout.on('data', (text) => {
      said.stdout += text;
      resolve();
    });
  });
  child.stderr.on('data', (text) => {
    said.stderr += text;
  });
  await first;
  child.kill(signal);
  const status = await new Promise((resolve) => child.on('close', (code, signal) => resolve(code ?? signal)));
  return { ...said, status };
}

describe('an interrupted catalogue', () => {
  beforeAll(build);

  test.each(['1', '2'])(
    'on %s core(s) finishes the rows that it has read, says how far it came, and exits 130',
    async (cores) => {
      const row = (i: number) => `Book ${i},${i % 10 === 0 ? 'x' : 165},240,28,1,2\n`;
      const rows = Array.from({ length: 2000 }, (_, i) => row(i)).join('');
      const { stdout, stderr, status } = await interrupted(
        ['-', '--cores', cores, '--to', 'jsonl'],
        `${HEADER}\n${rows}`,
      );
      expect(status).toBe(130);
      expect(stdout.endsWith('\n')).toBe(true);
      const done = lines(stdout).map((line) => JSON.parse(line).source);
      // Every row up to the last, the bad ones left out.
      expect(done.length).toBeGreaterThan(0);
      expect(done).toEqual(
        Array.from({ length: 2000 }, (_, i) => i)
          .filter((i) => i % 10 !== 0)
          .slice(0, done.length)
          .map((i) => `line ${i + 2}`),
      );
      const complaints = lines(stderr);
      const count = `${done.length} done, ${complaints.length - 1} bad`;
      const where = `line ${done.length + complaints.length}`;
      expect(complaints.pop()).toBe(
        `${count}, output not complete: interrupted after ${where}; with --out, --resume can go on from there`,
      );
    },
  );

  test('of a folder stops between two jobs', async () => {
    const { folder, file, remove } = scratch('interrupt-');
    mkdirSync(folder, { recursive: true });
    const job = { format: 'coverwright-job', version: 1, book: { width_mm: 165, height_mm: 240, thickness_mm: 28 } };
    const text = JSON.stringify({ ...job, leather: { outside: { min_mm: 1, max_mm: 2 } } });
    for (let i = 0; i < 3000; i++) file(`${i}.json`, text);
    const { stdout, stderr, status } = await interrupted([folder, '--cores', '1'], undefined, 'SIGTERM');
    remove();
    expect(status).toBe(143);
    const { length } = lines(stdout);
    expect(length).toBeLessThan(3000);
    expect(stderr).toMatch(
      new RegExp(`^${length} done, 0 bad, output not complete: interrupted after \\d+\\.json; with --out, .*\n$`),
    );
  });
});
