import { spawnSync } from 'node:child_process';
import { EventEmitter, once } from 'node:events';
import { existsSync, mkdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { proofSize } from '../../proof/proofSize.ts';
import { build, lines, processWords, run, scratch } from '../commandLine.ts';

const ROWS = 60;
/** Every 7th row is bad, some names span two lines, some covers fail. */
const table = [
  'name,book.width_mm,book.height_mm,book.thickness_mm,leather.outside,pattern.outsideWidth_mm',
  ...Array.from({ length: ROWS }, (_, i) => {
    const name = i % 5 === 0 ? `"Book ${i}\nin two ""lines"""` : `Book ${i}`;
    return `${name},${i % 7 === 3 ? 'x' : 120 + i},${180 + i},${10 + (i % 20)},4-5 oz,${i % 11 === 0 ? 200 : ''}`;
  }),
].join('\n');

/** Sound rows after the names of the columns, each with its line end. */
const manyRows = [
  `${table.split('\n')[0]}\n`,
  ...Array.from({ length: 600 }, (_, i) => `Book ${i},${120 + (i % 90)},200,20,4-5 oz,\n`),
] as const;

describe('a catalogue in parts', () => {
  const { folder, file, remove } = scratch('spread-');
  const jobs = file('jobs.csv', `${table}\n`);
  const covers = file('covers.json', '{"format": "coverwright-covers", "version": 1, "covers": []}');
  beforeAll(build);
  afterAll(remove);

  test.each([
    ['csv', ','],
    ['csv', ';'],
    ['jsonl', ','],
  ])('as %s with %s: the parts, one after another, are the whole', async (to, separator) => {
    const words = [jobs, '--to', to, '--separator', separator];
    const whole = await run('catalogue', words);
    for (const of of [2, ROWS + 5]) {
      let joined = '';
      const complaints: string[] = [];
      for (let part = 1; part <= of; part++) {
        const { stdout, stderr } = await run('catalogue', [...words, '--part', `${part}/${of}`]);
        joined += stdout;
        complaints.push(...stderr.split('\n').filter((line) => /^line/.test(line)));
      }
      expect(joined).toBe(whole.stdout);
      expect(complaints).toEqual(whole.stderr.split('\n').filter((line) => /^line/.test(line)));
    }
  });

  test('a folder is parted by its files', async () => {
    const whole = await run('catalogue', [join(import.meta.dirname, '../../../public/jobs'), '--to', 'csv']);
    const parts = await Promise.all(
      ['1/2', '2/2'].map((part) =>
        run('catalogue', [join(import.meta.dirname, '../../../public/jobs'), '--to', 'csv', '--part', part]),
      ),
    );
    expect(parts.map(({ stdout }) => stdout).join('')).toBe(whole.stdout);
  });

  test.each(['0/4', '5/4', '1', 'a/b', '1/2/3', '1.5/2', ''])('refuses the part "%s"', async (part) => {
    const { status, stderr } = await run('catalogue', [jobs, '--part', part]);
    expect(status).toBe(2);
    expect(stderr).toMatch(/^--part: got /);
  });

  test('refuses a part of standard input, whose rows it cannot count', async () => {
    const { status, stderr } = await run('catalogue', ['-', '--part', '1/2'], table);
    expect(status).toBe(2);
    expect(stderr).toMatch(/^--part: got standard input; allowed: a table or a folder/);
  });

  describe.each(['csv', 'jsonl'])('broken off while it wrote %s', (to) => {
    const out = join(folder, `half.${to}`);
    const words = [jobs, '--to', to, '--out', out];
    const resumed = () => run('catalogue', [...words, '--resume']);

    test('at any byte goes on to the same output, with the same exit code', async () => {
      const once = await run('catalogue', words);
      expect(once.stdout).toBe('');
      const whole = readFileSync(out);
      for (let at = 0; at <= whole.length; at += Math.ceil(whole.length / proofSize(200, 7))) {
        writeFileSync(out, whole.subarray(0, at));
        const { status, stderr } = await resumed();
        expect(readFileSync(out).equals(whole)).toBe(true);
        expect(status).toBe(once.status);
        expect(lines(stderr).at(-1)).toMatch(/^51 done, \d+ of them by the run before, 9 bad; output complete$/);
      }
    });

    test('one that has no output yet begins', async () => {
      const { stdout } = await run('catalogue', [jobs, '--to', to]);
      const fresh = join(folder, `fresh.${to}`);
      await run('catalogue', [jobs, '--to', to, '--out', fresh, '--resume']);
      expect(readFileSync(fresh, 'utf8')).toBe(stdout);
    });

    test('does not go on with the output of another table, or of another file', async () => {
      await run('catalogue', words);
      const whole = readFileSync(out, 'utf8');
      const other = file('other.csv', `${table.replaceAll('4-5 oz', '5-6 oz')}\n`);
      for (const changed of [[other], [jobs, '--units', 'in']]) {
        const { status, stderr } = await run('catalogue', [...changed, '--to', to, '--out', out, '--resume']);
        expect(status).toBe(2);
        expect(stderr).toMatch(/^--resume: got .+ with .+; allowed: the output of the same run, broken off; leave out/);
        expect(readFileSync(out, 'utf8')).toBe(whole);
      }
      writeFileSync(out, 'my notes\nmore of them\n');
      expect((await resumed()).stderr).toMatch(/^--resume: got /);
      expect(readFileSync(out, 'utf8')).toBe('my notes\nmore of them\n');
    });

    test('one part of it goes on as well', async () => {
      const part = [...words, '--part', '2/3'];
      await run('catalogue', part);
      const whole = readFileSync(out);
      truncateSync(out, Math.floor(whole.length / 2));
      await run('catalogue', [...part, '--resume']);
      expect(readFileSync(out).equals(whole)).toBe(true);
    });
  });

  test('a run that is killed goes on to the same output', async () => {
    const many = file('many.csv', manyRows.join(''));
    const out = join(folder, 'killed.jsonl');
    const words = [many, '--cores', '1', '--out', out];
    // Killed at once or after some rows, whatever the machine: both must go on.
    spawnSync(process.execPath, processWords('catalogue', words), { timeout: 1000, killSignal: 'SIGKILL' });
    const { status } = await run('catalogue', [...words, '--resume']);
    expect(status).toBe(0);
    expect(readFileSync(out, 'utf8')).toBe((await run('catalogue', [many])).stdout);
  });

  test('a run goes on while the one before it, which only seemed to be killed, still writes', async () => {
    const [head, ...rows] = manyRows;
    const out = join(folder, 'both.jsonl');
    const runs = new EventEmitter();
    /** More rows than are worked at a time, the rest at a signal. */
    const input = (run: string, signal: string): Readable =>
      Readable.from(
        (async function* () {
          // A chunk each, for a stream reads a chunk ahead.
          for (const row of [head, ...rows.slice(0, 300)]) yield Buffer.from(row);
          const signalled = once(runs, signal);
          runs.emit(`${run} is so far`);
          await signalled;
          yield Buffer.from(rows.slice(300).join(''));
        })(),
        { highWaterMark: 1 },
      );
    const first = run('catalogue', ['-', '--out', out], input('first', 'second is so far'));
    await expect.poll(() => existsSync(out) && lines(readFileSync(out, 'utf8')).length, { timeout: 60_000 }).toBe(256);
    const second = run('catalogue', ['-', '--out', out, '--resume'], input('second', 'first is done'));
    const { status } = await first;
    runs.emit('first is done');
    expect([status, (await second).status]).toEqual([0, 0]);
    expect(readFileSync(out, 'utf8') === (await run('catalogue', ['-'], manyRows.join(''))).stdout).toBe(true);
  });

  test.each([
    ['the table', (own: string) => [own, '--out', join(own, '../../own/jobs.csv')]],
    ['a job of the folder', (own: string) => [join(own, '..'), '--out', join(own, '../job.json')]],
    ['the books', (own: string) => ['--covers', covers, '--books', own, '--out', own]],
    ['the covers', (own: string) => ['--covers', covers, '--books', own, '--out', covers]],
  ])('refuses to write over %s that it reads, and leaves it as it is', async (_, words) => {
    const own = join(folder, 'own');
    mkdirSync(own, { recursive: true });
    writeFileSync(join(own, 'jobs.csv'), table);
    writeFileSync(join(own, 'job.json'), '{}');
    const { status, stderr } = await run('catalogue', words(join(own, 'jobs.csv')));
    expect(status).toBe(2);
    expect(stderr).toMatch(/^--out: got .*, which is read; allowed: another file/);
    expect(readFileSync(join(own, 'jobs.csv'), 'utf8')).toBe(table);
    expect(readFileSync(join(own, 'job.json'), 'utf8')).toBe('{}');
    expect(readFileSync(covers, 'utf8')).toContain('coverwright-covers');
  });

  test('--resume needs a file, and a dry run writes none', async () => {
    expect((await run('catalogue', [jobs, '--resume'])).stderr).toMatch(/^--resume: got no --out; /);
    expect((await run('catalogue', [jobs, '--dry-run', '--out', join(folder, 'x')])).stderr).toMatch(/^--out: /);
    const nowhere = join(folder, 'no', 'such', 'folder.csv');
    expect((await run('catalogue', [jobs, '--out', nowhere])).stderr).toMatch(/^--out: got ENOENT/);
  });

  test('a dry run checks every row and computes none', async () => {
    const { status, stdout, stderr } = await run('catalogue', [jobs, '--dry-run']);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    const told = lines(stderr);
    expect(told.pop()).toBe('51 sound, 9 bad; nothing computed');
    expect(told).toEqual(lines((await run('catalogue', [jobs])).stderr).slice(0, -1));
  });

  test('the template is a table that is computed as the examples are', async () => {
    for (const separator of [',', ';', 'tab']) {
      const { status, stdout } = await run('catalogue', ['--template', '--separator', separator]);
      expect(status).toBe(0);
      const computed = await run('catalogue', ['-', '--to', 'csv'], stdout);
      expect(computed.stderr).toBe('');
      expect(lines(computed.stdout).map((line) => line.split(',')[1])).toEqual([
        'name',
        'Tide ledger',
        'Choir book',
        'Shore guide',
      ]);
    }
  });

  test('validate names the bad rows of a table and the bad jobs of a folder', async () => {
    const rows = await run('validate', [jobs]);
    expect(rows.status).toBe(2);
    expect(rows.stderr).toBe(
      `${lines((await run('catalogue', [jobs])).stderr)
        .slice(0, -1)
        .join('\n')}\n`,
    );
    expect(await run('validate', ['-', '--table'], table)).toEqual(rows);
    expect(await run('validate', [join(import.meta.dirname, '../../../public/jobs')])).toMatchObject({ status: 0 });
    const both = await run('validate', [file('empty.csv', ''), jobs, join(folder, 'none.csv')]);
    expect(both.status).toBe(2);
    expect(both.stderr).toContain('empty.csv: (file): got an empty table');
    expect(both.stderr).toContain('jobs.csv: line 6: ');
    expect(both.stderr).toContain('none.csv: (file): got no such file');
  });
});
