import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import * as core from '../../src/core/index.ts';
import * as strip from '../../src/core/strip/index.ts';
import { soundJob } from '../jobArbitrary.ts';

const root = join(import.meta.dirname, '../..');
const packed = 'node_modules/coverwright';

/** Prints the report of an example, and what each door exports. */
const PROGRAM = `
import * as core from 'coverwright';
import * as strip from 'coverwright/strip';
const parsed = core.parseJob(core.EXAMPLE_JOBS[0].document);
const report = core.fitReport(parsed.job);
console.log(JSON.stringify({ report, core: Object.keys(core), strip: Object.keys(strip) }));
`;

const TYPED = `
import { fitReport, parseJob, type Report } from 'coverwright';
import { createStripSolver, solveStrip } from 'coverwright/strip';
const parsed = parseJob({ format: 'coverwright-job' });
const report: Report | null = parsed.ok ? fitReport(parsed.job) : null;
export const gap: number | undefined = report?.fit.thick.head_mm;
const ends = { kind: 'free' } as const;
export const status: string = solveStrip(createStripSolver(), { length: 4, stretchStiffness: 1e4, start: ends, end: ends }).status;
`;

describe('the packed library', () => {
  const folder = mkdtempSync(join(tmpdir(), 'library-'));
  const file = (name: string, text: string) => writeFileSync(join(folder, name), text);
  const node = (...words: string[]) => execFileSync(process.execPath, words, { cwd: folder, encoding: 'utf8' });

  beforeAll(() => {
    execFileSync('npm', ['pack', '--silent', '--pack-destination', folder], { cwd: root, stdio: 'ignore' });
    mkdirSync(join(folder, packed), { recursive: true });
    const [archive] = readdirSync(folder).filter((name) => name.endsWith('.tgz'));
    execFileSync('tar', ['-xzf', archive!, '-C', packed, '--strip-components=1'], { cwd: folder });
    // All that an installation would put beside it.
    for (const name of ['zod', 'clipper2-ts'])
      symlinkSync(join(root, 'node_modules', name), join(folder, 'node_modules', name));
  }, 180_000);
  afterAll(() => rmSync(folder, { recursive: true }));

  test('computes in plain Node what the sources compute, and exports the same', () => {
    file('program.mjs', PROGRAM);
    const printed = JSON.parse(node('program.mjs'));
    const job = soundJob(core.EXAMPLE_JOBS[0].document);
    const report = core.fitReport(job);
    expect(printed.report).toEqual(JSON.parse(JSON.stringify(report)));
    expect(printed.core).toEqual(Object.keys(core).sort());
    expect(printed.strip).toEqual(Object.keys(strip).sort());
  });

  test('is typed, and refuses a wrong type', () => {
    const tsc = join(root, 'node_modules/typescript/bin/tsc');
    const options = ['--strict', '--noEmit', '--module', 'nodenext', '--target', 'es2022', '--lib', 'es2023,dom'];
    file('typed.mts', TYPED);
    expect(node(tsc, ...options, 'typed.mts')).toBe('');
    file('wrong.mts', TYPED.replace('gap: number', 'gap: string'));
    expect(() => node(tsc, ...options, 'wrong.mts')).toThrow();
  });

  test('carries its reference, with every export in it', () => {
    const reference = readFileSync(join(folder, packed, 'dist-lib/REFERENCE.md'), 'utf8');
    const headings = new Set(reference.match(/^#### \w+$/gm)?.map((line) => line.slice(5)));
    for (const name of [...Object.keys(core), ...Object.keys(strip)]) expect(headings).toContain(name);
    // A type that only the signature of an export names.
    expect(headings).toContain('Opening');
    expect(reference).toContain('K = (L / A - r) / t');
  });
});
