import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';

const root = join(import.meta.dirname, '../../..');
const copy = mkdtempSync(join(tmpdir(), 'strip-'));
afterAll(() => rmSync(copy, { recursive: true }));

test('the strip solver passes its tests where there is nothing else of the project', () => {
  const copied = ['src/core/strip', 'tests/core/strip', 'tests/laws.ts', 'tests/laws.json'];
  const published = ['elastica.test.ts', 'elasticaCases.ts', 'reference-values.json'];
  for (const path of [...copied, ...published.map((file) => `tests/external/${file}`)])
    cpSync(join(root, path), join(copy, path), { recursive: true, filter: (from) => from !== import.meta.filename });
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));
  const vitest = [join(root, 'node_modules/vitest/vitest.mjs'), 'run', '--root', copy, '--reporter=json'];
  const { stdout, stderr } = spawnSync(process.execPath, vitest, { cwd: copy, encoding: 'utf8' });
  const { numTotalTests, numPassedTests } = JSON.parse(stdout.slice(stdout.indexOf('{"numTotal'))) as Record<
    string,
    number
  >;
  expect(numPassedTests, stderr).toBe(numTotalTests);
  expect(numTotalTests).toBeGreaterThan(50);
});
