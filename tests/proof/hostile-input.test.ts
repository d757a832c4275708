import process from 'node:process';
import { expect, test } from 'vitest';
import { lines, run } from '../cli/commandLine.ts';
import { hostileJob, hostileTable } from '../cli/hostileInput.ts';
import { isWholeProof, proofSize } from './proofSize.ts';

const DOCUMENTS = proofSize(10_000, 150);

/** Most processor time of one document, ms; only the whole proof asks, for no ordinary test measures time. */
const MOST_MS = 1000;

const LAST_LINE = /^(\d+) done, (\d+) bad, output (complete|not complete: .+)$/;

/** Runs a command over a document, and sees that it ends as every command must. */
async function ended(name: string, words: readonly string[], document: Buffer, slowest: { ms: number }) {
  const before = process.cpuUsage();
  const result = await run(name, words, document);
  const { user, system } = process.cpuUsage(before);
  slowest.ms = Math.max(slowest.ms, (user + system) / 1000);
  const { status, stdout, stderr } = result;
  expect([0, 1, 2]).toContain(status);
  expect(stderr).not.toMatch(/internal failure|Error:|\n\s+at |\[object|undefined/);
  // No control character reaches the screen, and no line is left open.
  expect(stderr).toMatch(/^([^\p{Cc}]*\n)*$/u);
  expect(stdout.endsWith('\n') || stdout === '').toBe(true);
  return { status, stdout, stderr, told: stderr === '' ? [] : lines(stderr), rows: stdout === '' ? [] : lines(stdout) };
}

const report = (door: string, counts: object, { ms }: { ms: number }) => {
  console.log(`${DOCUMENTS} hostile ${door}: ${JSON.stringify(counts)}, slowest ${ms.toFixed(0)} ms of processor time`);
  if (isWholeProof) expect(ms).toBeLessThan(MOST_MS);
};

test(`${DOCUMENTS} hostile tables: each row is computed or refused by its line, and no table ends the command`, async () => {
  const slowest = { ms: 0 };
  const counts = { refused: 0, done: 0, bad: 0 };
  for (let index = 0; index < DOCUMENTS; index++) {
    const { status, told, rows } = await ended('catalogue', ['-'], hostileTable(index), slowest);
    const [, done, bad] = LAST_LINE.exec(told.at(-1) ?? '') ?? [];
    for (const row of rows) expect(JSON.parse(row).source, `table ${index}`).toMatch(/^line \d+$/);
    for (const line of told.slice(0, done === undefined ? undefined : -1))
      expect(line, `table ${index}`).toMatch(/^.+: got .*; allowed: .+/);
    if (done === undefined) {
      expect([status, rows], `table ${index}`).toEqual([2, []]);
      counts.refused++;
      continue;
    }
    expect(rows.length, `table ${index}`).toBe(Number(done));
    const named = new Set(told.flatMap((line) => /^line \d+/.exec(line) ?? []));
    expect(named.size, `table ${index}`).toBeGreaterThanOrEqual(Number(bad));
    counts.done += Number(done);
    counts.bad += Number(bad);
  }
  expect(Math.min(counts.refused, counts.done, counts.bad)).toBeGreaterThan(DOCUMENTS / 20);
  report('tables', counts, slowest);
});

test(`${DOCUMENTS} hostile jobs: each is computed or refused with the place named, and none ends the command`, async () => {
  const slowest = { ms: 0 };
  const counts = { refused: 0, computed: 0 };
  for (let index = 0; index < DOCUMENTS; index++) {
    const document = hostileJob(index);
    const checked = await ended('validate', ['-'], document, slowest);
    const fitted = await ended('fit', ['--quick', '-'], document, slowest);
    expect(fitted.stderr, `job ${index}`).toBe(checked.stderr);
    if (checked.status === 2) {
      counts.refused++;
      expect(fitted.status, `job ${index}`).toBe(2);
      expect(fitted.stdout).toBe('');
      for (const line of checked.told) expect(line, `job ${index}`).toMatch(/^.+: got .*; allowed: .+; .+/);
    } else {
      counts.computed++;
      expect(JSON.parse(fitted.stdout), `job ${index}`).toHaveProperty('verdict');
    }
  }
  expect(Math.min(counts.refused, counts.computed)).toBeGreaterThan(DOCUMENTS / 20);
  report('jobs', counts, slowest);
});
