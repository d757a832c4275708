import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { progressLine } from '../../../src/cli/catalogue/progress.ts';
import { type Sink, Terminal } from '../../../src/cli/terminal.ts';
import { build, lines, processWords, run, scratch } from '../commandLine.ts';
import { jobTable } from './jobTable.ts';

describe('the progress of a catalogue', () => {
  test('is rows, rows a second, and the time left where the size is known', () => {
    expect(progressLine(12_345, 12_345, 10, null)).toBe('12,345 rows, 1,235 a second');
    expect(progressLine(2000, 2000, 10, 0.25)).toBe('2,000 rows, 200 a second, about 30 s left');
    expect(progressLine(1000, 1000, 100, 0.01)).toBe('1,000 rows, 10 a second, about 3 h left');
    // Rows done by a run before cost this one no time.
    expect(progressLine(2000, 500, 10, 0.5)).toBe('2,000 rows, 50 a second, about 40 s left');
    expect(progressLine(1_000_000, 1_000_000, 1e6, 1 / 9).length).toBeLessThan(60);
    expect(progressLine(0, 0, 0, 0)).toBe('0 rows, 0 a second');
  });

  test('stands on the screen until the next line is said, and nowhere else', async () => {
    const told: string[] = [];
    const sink = (isTerminal: boolean): Sink => ({ isTerminal, write: async (text) => void told.push(String(text)) });
    const terminal = new Terminal(Readable.from([]), sink(false), sink(true));
    expect(terminal.canShowStatus(false)).toBe(true);
    await terminal.showStatus('1 row');
    await terminal.showStatus('2 rows');
    await terminal.say(['line 3: bad']);
    await terminal.say(['done']);
    expect(told).toEqual(['1 row', '\r\u001b[K2 rows', '\r\u001b[Kline 3: bad\n', 'done\n']);
    const both = new Terminal(Readable.from([]), sink(true), sink(true));
    expect([both.canShowStatus(false), both.canShowStatus(true)]).toEqual([false, true]);
    expect(new Terminal(Readable.from([]), sink(false), sink(false)).canShowStatus(true)).toBe(false);
  });

  const { file, remove } = scratch('progress-');
  beforeAll(build);
  afterAll(remove);

  test('is redrawn in one line of a real screen, which the last line takes', async ({ skip }) => {
    skip(spawnSync('script', ['--version']).status !== 0, 'there is no script (bsdutils) here to make a screen');
    const jobs = file('jobs.csv', jobTable(600));
    const words = processWords('catalogue', [jobs, '--cores', '1', '--out', join(jobs, '../out.jsonl')]);
    const command = [process.execPath, ...words].map((word) => `'${word}'`).join(' ');
    const screen = spawnSync('script', ['-qec', command, '/dev/null'], { encoding: 'utf8' }).stdout;
    expect(screen).toMatch(/\d+ rows, \d[\d,]* a second, about \d+ s left\r/);
    // What is left of each line once the screen has gone back and emptied it.
    const seen = screen.split('\r\n').map((line) => line.split('\u001b[K').at(-1));
    expect(seen.join('\n')).toBe((await run('catalogue', [jobs])).stderr);
    expect(lines(seen.join('\n')).at(-1)).toMatch(/^\d+ done, \d+ bad, output complete$/);
  });
});
