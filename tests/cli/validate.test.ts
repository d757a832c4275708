import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { nth } from '../nth.ts';
import { lines, run, scratch } from './commandLine.ts';

const jobs = join(import.meta.dirname, '../../public/jobs');
const JOBS = ['tide-ledger', 'choir-book', 'shore-guide'].map((name) => join(jobs, `${name}.json`));

describe('the validate command', () => {
  const { file, remove } = scratch('validate-');
  afterAll(remove);

  test('says nothing of sound jobs', async () => {
    expect(await run('validate', JOBS)).toMatchObject({ status: 0, stdout: '', stderr: '' });
  });

  test('says of a bad job what fit says, with the same exit code', async () => {
    const bad = [file('bad.json', '{"format": "coverwright-job", "version": 1, "colour": 1}'), file('worse.json', '{')];
    for (const words of [[nth(bad, 0)], bad, [nth(JOBS, 0), ...bad]]) {
      const { status, stdout, stderr } = await run('validate', words);
      expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
      expect(lines(stderr).length).toBeGreaterThan(1);
      expect(stderr).toBe((await run('fit', ['--quick', ...words])).stderr);
    }
  });

  test('does not ask whether a cover fits', async () => {
    const fails = { ...tideLedger(), pattern: { outsideWidth_mm: 340 } };
    expect((await run('fit', ['--quick', '-'], JSON.stringify(fails))).status).toBe(1);
    expect((await run('validate', ['-'], JSON.stringify(fails))).status).toBe(0);
  });

  test.each([
    [[], '(files)'],
    [['--nonsense', 'x.json'], '--nonsense'],
    [['--units', 'in', 'x.json'], '--units'],
  ])('refuses the words %j with exit 2', async (words, path) => {
    const { status, stderr } = await run('validate', words);
    expect(status).toBe(2);
    expect(stderr.startsWith(`${path}: got `)).toBe(true);
  });
});

const tideLedger = () => ({
  format: 'coverwright-job',
  version: 1,
  book: { width_mm: 165, height_mm: 240, thickness_mm: 28 },
  leather: { outside: { min_mm: 1.5875, max_mm: 1.984375 } },
});
