import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { lines, run, scratch } from '../commandLine.ts';
import { jobTable } from './jobTable.ts';

const ROWS = 60;
const table = jobTable(ROWS);

describe('a catalogue in parts', () => {
  const { folder, file, remove } = scratch('spread-');
  const jobs = file('jobs.csv', table);
  const covers = file('covers.json', '{"format": "coverwright-covers", "version": 1, "covers": []}');
  const half = file('half.json.part', '{"format": "coverwright-covers", "version": 1, "covers": []}');
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

  test.each([
    ['the table', (own: string) => [own, '--out', join(own, '../../own/jobs.csv')]],
    ['a job of the folder', (own: string) => [join(own, '..'), '--out', join(own, '../job.json')]],
    ['the books', (own: string) => ['--covers', covers, '--books', own, '--out', own]],
    ['the covers', (own: string) => ['--covers', covers, '--books', own, '--out', covers]],
    [
      'the covers, as the part of an output',
      (own: string) => ['--covers', half, '--books', own, '--out', half.slice(0, -5)],
    ],
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
    expect(told.pop()).toBe('51 sound, 9 bad, nothing computed');
    expect(told).toEqual(lines((await run('catalogue', [jobs])).stderr).slice(0, -1));
  });

  test('the template is a table that is computed as the examples are', async () => {
    for (const separator of [',', ';', 'tab']) {
      const { status, stdout } = await run('catalogue', ['--template', '--separator', separator]);
      expect(status).toBe(0);
      const computed = await run('catalogue', ['-', '--to', 'csv'], stdout);
      expect(computed.stderr).toBe('3 done, 0 bad, output complete\n');
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
