import { spawn, spawnSync } from 'node:child_process';
import { EventEmitter, once } from 'node:events';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { defined } from '../../defined.ts';
import { build, lines, processWords, run, runProcess, scratch } from '../commandLine.ts';
import { jobTable } from './jobTable.ts';

const table = jobTable(600);

describe('a catalogue that is gone on with', () => {
  const { folder, file, remove } = scratch('resume-');
  const jobs = file('jobs.csv', table);
  const [out, part, record] = ['', '.part', '.run'].map((end) => join(folder, `out${end}`)) as [string, string, string];
  const words = [jobs, '--out', out];
  const resumed = (more: readonly string[] = []) => run('catalogue', [...words, '--resume', ...more]);

  beforeAll(build);
  beforeEach(() => {
    for (const path of [out, part, record]) rmSync(path, { recursive: true, force: true });
  });
  afterEach(() => vi.restoreAllMocks());
  afterAll(remove);

  /** Lets ever more time pass, so that each batch is marked, however long the mark before took. */
  const markEachBatch = () => {
    let now = 1;
    vi.spyOn(performance, 'now').mockImplementation(() => {
      now *= 30;
      return now;
    });
  };

  test('reads a named pipe once, for the run itself, and does not count its rows', async ({ skip }) => {
    const pipe = join(folder, 'jobs.pipe');
    skip(spawnSync('mkfifo', [pipe]).status !== 0, 'no named pipes here');
    const fill = () => spawn('sh', ['-c', 'cat "$0" > "$1"', jobs, pipe]);
    const filling = fill();
    const piped = await run('catalogue', [pipe, '--out', out]);
    filling.kill();
    expect(piped).toEqual(await run('catalogue', [jobs]).then((whole) => ({ ...whole, stdout: '' })));
    expect(JSON.parse(defined(lines(readFileSync(record, 'utf8'))[0])).inputs).toEqual([
      { name: pipe, bytes: null, changed: null, sha256: null },
    ]);
    expect((await run('catalogue', [pipe, '--part', '1/2'])).stderr).toMatch(/^--part: got .*jobs\.pipe, a pipe; /);
  });

  test.each(['csv', 'jsonl'])('as %s: whatever byte it was killed at, ends as one that was not', async (to) => {
    markEachBatch();
    const whole = await run('catalogue', [...words, '--to', to]);
    expect(whole).toMatchObject({ status: 2, stdout: '' });
    const [rows, marks] = [readFileSync(out), readFileSync(record, 'utf8')];
    expect(rows.toString()).toBe((await run('catalogue', [jobs, '--to', to])).stdout);
    expect(existsSync(part)).toBe(false);
    const told = lines(marks);
    expect(told).toHaveLength(6); // the head, the columns, three batches, and the end
    /** The record up to a whole line or into the next, and the output up to what that says or beyond. */
    const states = [0, 1, 2, 3, 4, 5].flatMap((whole) => {
      const { bytes = 0 } = whole === 0 ? {} : JSON.parse(defined(told[whole]));
      const ends = [...new Set([bytes, Math.min(rows.length, bytes + 777), rows.length])];
      return ends.map((end) => ({
        kept: `${told.slice(0, whole + 1).join('\n')}\n`,
        torn: told[whole + 1] ?? '',
        end,
      }));
    });
    for (const [i, { kept, torn, end }] of states.entries()) {
      rmSync(out, { force: true });
      writeFileSync(record, kept + torn.slice(0, (i % 3) * Math.floor(torn.length / 3)));
      writeFileSync(part, rows.subarray(0, end));
      markEachBatch();
      expect(await resumed(['--to', to])).toEqual(whole);
      expect(readFileSync(out).equals(rows)).toBe(true);
      expect(existsSync(part)).toBe(false);
      // And once more, with nothing left to do.
      expect(await resumed(['--to', to])).toEqual(whole);
      expect(readFileSync(out).equals(rows)).toBe(true);
    }
  });

  test('begins where nothing was begun, and where the part is gone', async () => {
    const first = await resumed();
    const { stdout } = await run('catalogue', [jobs]);
    expect(readFileSync(out, 'utf8')).toBe(stdout);
    writeFileSync(record, lines(readFileSync(record, 'utf8')).slice(0, -1).join('\n').concat('\n'));
    rmSync(out);
    expect(await resumed()).toEqual(first);
    expect(readFileSync(out, 'utf8')).toBe(stdout);
  });

  test('a process killed at once, whatever it had done, leaves an older file whole, and can be gone on with', async () => {
    writeFileSync(out, 'an older output');
    const child = spawn(process.execPath, processWords('catalogue', [...words, '--cores', '2']), { stdio: 'ignore' });
    await expect
      .poll(() => existsSync(record) && lines(readFileSync(record, 'utf8')).length, { timeout: 60_000 })
      .toBeGreaterThan(1);
    child.kill('SIGKILL');
    await once(child, 'close');
    // A quick machine may have been done.
    const older = readFileSync(out, 'utf8');
    if (existsSync(part)) expect(older).toBe('an older output');
    const { status, stderr } = runProcess('catalogue', [...words, '--resume']);
    const whole = await run('catalogue', [jobs]);
    expect({ status, stderr }).toEqual({ status: whole.status, stderr: whole.stderr });
    expect(readFileSync(out, 'utf8')).toBe(whole.stdout);
    expect(
      readdirSync(folder)
        .filter((name) => /^out/.test(name))
        .sort(),
    ).toEqual(['out', 'out.run']);
  });

  test('one ended by Ctrl-C says where it stopped, and goes on', async () => {
    const many = file('many.csv', jobTable(2000));
    const told = [many, '--out', out, '--cores', '1'];
    const child = spawn(process.execPath, processWords('catalogue', told));
    let stderr = '';
    child.stderr.on('data', (text) => {
      stderr += text;
    });
    await once(child.stderr, 'data');
    child.kill('SIGINT');
    const [status] = await once(child, 'close');
    expect(status).toBe(130);
    expect(lines(stderr).at(-1)).toMatch(
      /^\d+ done, \d+ bad, output not complete: interrupted after line \d+; the same command with --resume goes on from there$/,
    );
    expect(existsSync(out)).toBe(false);
    const rest = runProcess('catalogue', [...told, '--resume']);
    expect(rest.stderr.startsWith(stderr.slice(0, stderr.lastIndexOf('\n', stderr.length - 2)))).toBe(true);
    expect(lines(rest.stderr).at(-1)).toMatch(/^\d+ done, \d+ bad, output complete$/);
    expect(readFileSync(out, 'utf8') === runProcess('catalogue', [many]).stdout).toBe(true);
  });

  describe('refuses', () => {
    const broken = async () => {
      markEachBatch();
      await run('catalogue', words);
      writeFileSync(record, `${lines(readFileSync(record, 'utf8')).slice(0, 3).join('\n')}\n`);
      writeFileSync(part, readFileSync(out));
      rmSync(out);
    };
    const left = () => [part, record, out].map((path) => (existsSync(path) ? readFileSync(path, 'utf8') : null));

    test.each([
      [
        'another table',
        () => [file('other.csv', table.replace('Book 599,', 'Book 5999,')), '--out', out],
        'other.csv, which is not',
      ],
      ['another unit', () => [...words, '--units', 'in'], '--units in where the run broken off had nothing'],
      ['another format', () => [...words, '--to', 'csv'], '--to csv where the run broken off had jsonl'],
      ['another part', () => [...words, '--part', '1/2'], '--part 1/2 where'],
      [
        'a folder',
        () => [join(import.meta.dirname, '../../../public/jobs'), '--out', out],
        'public/jobs, which is not',
      ],
    ])('%s, and leaves all as it is', async (_what, other, got) => {
      await broken();
      const before = left();
      const { status, stdout, stderr } = await run('catalogue', [...other(), '--resume']);
      expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
      expect(lines(stderr)).toHaveLength(1);
      expect(stderr).toMatch(
        /^--resume: got .+; allowed: the same run as the one broken off; leave out --resume to begin it anew\n$/,
      );
      expect(stderr).toContain(got);
      expect(left()).toEqual(before);
    });

    test('other rows from standard input, of which nothing is known before', async () => {
      markEachBatch();
      const from = (text: string, more: readonly string[] = []) => run('catalogue', ['-', '--out', out, ...more], text);
      await from(table);
      const [rows, marks] = [readFileSync(out), lines(readFileSync(record, 'utf8'))];
      const breakOff = () => {
        rmSync(out, { force: true });
        writeFileSync(part, rows);
        writeFileSync(record, `${marks.slice(0, 4).join('\n')}\n`);
      };
      for (const other of [
        table.replace('Book 2,', 'Book two,'),
        table.slice(0, 9000),
        table.replace('name', 'rates.maker'),
      ]) {
        breakOff();
        const { status, stderr } = await from(other, ['--resume']);
        expect(status).toBe(2);
        expect(stderr).toMatch(/^--resume: got (other rows up to line \d+|fewer rows than were done, \d+); /m);
        expect(existsSync(out)).toBe(false);
      }
      breakOff();
      expect((await from(table, ['--resume'])).status).toBe(2);
      expect(readFileSync(out).equals(rows)).toBe(true);
    });

    test('an output of which nothing is known, or that was changed', async () => {
      writeFileSync(out, 'my notes\nmore of them\n');
      expect((await resumed()).stderr).toMatch(/^--resume: got .*out without .*out\.run, /);
      expect(readFileSync(out, 'utf8')).toBe('my notes\nmore of them\n');
      await run('catalogue', words);
      writeFileSync(out, 'changed');
      expect((await resumed()).stderr).toMatch(/^--resume: got .*out, which is not as the run left it; /);
      await broken();
      writeFileSync(part, 'short');
      expect((await resumed()).stderr).toMatch(/^--resume: got .*out\.part, which is shorter than .*out\.run says; /);
      if (existsSync('/dev/null'))
        expect((await run('catalogue', [jobs, '--out', '/dev/null', '--resume'])).stderr).toMatch(
          /^--resume: got \/dev\/null, /,
        );
    });

    test('to put its own files in the place of others', async () => {
      for (const taken of [part, record]) {
        writeFileSync(taken, 'a letter\nto a friend\n');
        for (const more of [[], ['--resume']]) {
          const { status, stderr } = await run('catalogue', [...words, ...more]);
          expect(status).toBe(2);
          expect(stderr).toMatch(/^--out: got .*, which no run has left there; allowed: that name free: move it away/);
        }
        expect(readFileSync(taken, 'utf8')).toBe('a letter\nto a friend\n');
        rmSync(taken);
      }
    });
  });

  test('begun anew it takes nothing from the run before', async () => {
    markEachBatch();
    await run('catalogue', [...words, '--to', 'csv']);
    copyFileSync(out, part);
    writeFileSync(record, `${lines(readFileSync(record, 'utf8')).slice(0, 3).join('\n')}\n`);
    await run('catalogue', words);
    expect(readFileSync(out, 'utf8')).toBe((await run('catalogue', [jobs])).stdout);
    expect((await resumed()).status).toBe(2);
  });

  test('writes where a link leads, and straight into what is no file', async () => {
    const real = join(folder, 'real');
    writeFileSync(real, 'older');
    symlinkSync(real, out);
    await run('catalogue', words);
    expect(readlinkSync(out)).toBe(real);
    expect(readFileSync(real, 'utf8')).toBe((await run('catalogue', [jobs])).stdout);
    if (existsSync('/dev/null')) expect((await run('catalogue', [jobs, '--out', '/dev/null'])).status).toBe(2);
    expect(existsSync('/dev/null.run')).toBe(false);
    expect((await run('catalogue', [jobs, '--out', folder])).stderr).toMatch(/^--out: got /);
  });

  describe('while the one before it, which only seemed to be killed, still writes,', () => {
    const [head = '', ...rows] = jobTable(600).split(/(?<=\n)(?=Book|")/);
    /** More rows than are worked at a time, the rest at a signal. */
    const halting = (runs: EventEmitter, name: string, signal: string): Readable =>
      Readable.from(
        (async function* () {
          // A chunk each, for a stream reads a chunk ahead.
          for (const row of [head, ...rows.slice(0, 300)]) yield Buffer.from(row);
          const signalled = once(runs, signal);
          runs.emit(`${name} is so far`);
          await signalled;
          yield Buffer.from(rows.slice(300).join(''));
        })(),
        { highWaterMark: 1 },
      );
    const begun = async () => {
      const runs = new EventEmitter();
      const isFar = once(runs, 'first is so far');
      const first = run('catalogue', ['-', '--out', out], halting(runs, 'first', 'go on'));
      await isFar;
      await expect.poll(() => existsSync(part), { timeout: 60_000 }).toBe(true);
      return { runs, first };
    };
    const whole = () => run('catalogue', ['-'], jobTable(600));

    test('ends as it would alone', async () => {
      markEachBatch();
      const { runs, first } = await begun();
      runs.on('second is so far', () => runs.emit('go on'));
      const second = run('catalogue', ['-', '--out', out, '--resume'], halting(runs, 'second', 'first is done'));
      const ended = await first;
      runs.emit('first is done');
      const { stdout, ...told } = await whole();
      expect([ended, await second]).toEqual([
        { ...told, stdout: '' },
        { ...told, stdout: '' },
      ]);
      expect(readFileSync(out, 'utf8') === stdout).toBe(true);
    });

    test('begun anew it is the one that counts', async () => {
      const { runs, first } = await begun();
      const second = await run('catalogue', [jobs, '--out', out, '--to', 'csv']);
      runs.emit('go on');
      const { status, stderr } = await first;
      expect([second.status, status]).toEqual([2, 4]);
      expect(lines(stderr).at(-1)).toMatch(/output not complete: another run has begun .*out anew/);
      expect(readFileSync(out, 'utf8')).toBe((await run('catalogue', [jobs, '--to', 'csv'])).stdout);
    });
  });

  test('goes on after a full disk', ({ skip }) => {
    const disk = join(folder, 'disk');
    mkdirSync(disk);
    const mount = (size: string, more = '') =>
      spawnSync('mount', ['-t', 'tmpfs', '-o', `${more}size=${size}`, 'tmpfs', disk], { stdio: 'ignore' }).status === 0;
    skip(!mount('64k'), 'no small disk may be mounted here');
    try {
      const told = [jobs, '--to', 'csv', '--out', join(disk, 'rows.csv'), '--cores', '2'];
      writeFileSync(join(disk, 'rows.csv'), 'older');
      const { status, stderr } = runProcess('catalogue', told);
      expect(status).toBe(4);
      expect(lines(stderr).at(-1)).toMatch(
        /^\d+ done, \d+ bad, output not complete: no space left on device.*--resume goes on from there$/,
      );
      expect(readFileSync(join(disk, 'rows.csv'), 'utf8')).toBe('older');
      expect(mount('4m', 'remount,')).toBe(true);
      const whole = runProcess('catalogue', [jobs, '--to', 'csv']);
      expect(runProcess('catalogue', [...told, '--resume'])).toMatchObject({
        status: whole.status,
        stderr: whole.stderr,
      });
      expect(readFileSync(join(disk, 'rows.csv'), 'utf8') === whole.stdout).toBe(true);
    } finally {
      spawnSync('umount', [disk]);
    }
  });
});
