import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { validateBytes } from 'gltf-validator';
import { afterAll, describe, expect, test } from 'vitest';
import { lines, run, runProcess, scratch } from './commandLine.ts';

const JOB = join(import.meta.dirname, '../../public/jobs/tide-ledger.json');

/** Time for a model on a loaded machine, ms. */
const SLOW = 120_000;

describe('the model command', () => {
  const { folder, remove } = scratch('model-');
  afterAll(remove);
  const out = (name: string): string => join(folder, name);

  test(
    'writes a GLB that the validator passes in place of an older file, and nothing else',
    async () => {
      writeFileSync(out('cover.glb'), 'older');
      // As a process: the bundle finds the parts that are fetched later.
      expect(runProcess('model', [JOB, '--out', out('cover.glb')])).toMatchObject({
        status: 0,
        stdout: '',
        stderr: '',
      });
      const { issues, info } = await validateBytes(new Uint8Array(readFileSync(out('cover.glb'))));
      expect(issues).toMatchObject({ numErrors: 0, numWarnings: 0 });
      expect(info.animationCount).toBe(1);
      expect(readdirSync(folder)).toEqual(['cover.glb']);
    },
    SLOW,
  );

  test(
    'writes USDZ by the ending, from standard input',
    async () => {
      const { status } = await run('model', ['-', '--out', out('cover.usdz')], readFileSync(JOB));
      expect(status).toBe(0);
      expect(Object.keys(unzipSync(readFileSync(out('cover.usdz'))))[0]).toBe('cover.usda');
    },
    SLOW,
  );

  test.each([
    [[JOB], '--out: got nothing'],
    [[JOB, '--out', 'cover.obj'], '--out: got cover.obj'],
    [[JOB, JOB, '--out', 'cover.glb'], '(files): got 2 files'],
    [[JOB, '--plain', '--out', 'cover.usdz'], '--plain: got a file in USDZ'],
    [['--out', 'cover.glb'], '(files): got no file'],
  ])('refuses the words %j with exit 2', async (words, told) => {
    const { status, stderr } = await run('model', words);
    expect(status).toBe(2);
    expect(stderr.startsWith(told)).toBe(true);
  });

  test('says of a bad job what fit says, and writes nothing', async () => {
    const bad = ['-', '--out', out('bad.glb')];
    const { status, stderr } = await run('model', bad, '{"format": "coverwright-job", "version": 1, "colour": 1}');
    expect(status).toBe(2);
    expect(lines(stderr).length).toBeGreaterThan(1);
    expect(existsSync(out('bad.glb'))).toBe(false);
  });

  test(
    'leaves no part of a file where it cannot be put in its place',
    async () => {
      for (const place of ['no/such/folder/cover.usdz', 'taken.usdz']) {
        if (place === 'taken.usdz') mkdirSync(out(place));
        const before = readdirSync(folder);
        const { status, stderr } = await run('model', [JOB, '--out', out(place)]);
        expect(status).toBe(2);
        expect(stderr).toMatch(/^--out: got .*; allowed: a file/);
        expect(readdirSync(folder)).toEqual(before);
      }
    },
    SLOW,
  );
});
