import { spawnSync } from 'node:child_process';
import { createWriteStream, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { nth } from '../tests/nth.ts';
import { calibrationMs } from './calibration.ts';

/**
 * The catalogue command as a maker runs it: a table of jobs on disk, start of the program included, output thrown away.
 * Peak memory is the whole process's, threads and all.
 */
const SIZES = [10_000, 100_000];
const CORES = [1, 2];

const HEADER = [
  'name',
  'book.kind',
  'book.width_mm',
  'book.height_mm',
  'book.thickness_mm',
  'book.boardThickness_mm',
  'book.spine.shape',
  'book.spine.rise_mm',
  'leather.outside.min_mm',
  'leather.outside.max_mm',
  'seam.method',
].join(',');

/** Every third book has a rounded back, the dearer one to compute; one in a thousand rows is bad. */
function* rows(count: number): Generator<string> {
  yield `${HEADER}\n`;
  for (let i = 0; i < count; i++) {
    const rounded = i % 3 === 0;
    const width = i % 1000 === 999 ? 'wide' : 100 + (i % 131);
    const spine = rounded ? 'rounded,6' : 'flat,0';
    yield `"Book, no. ${i}",hardback,${width},${150 + (i % 97)},${20 + (i % 31)},2.5,${spine},1.6,2,stitching\n`;
  }
}

/** Prints the peak of resident memory, kB, and the processor's time, microseconds, as the last line on standard error. */
const PRINT_USE = `process.on('exit', () => {
  const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
  process.stderr.write(maxRSS + ' ' + (userCPUTime + systemCPUTime) + '\\n');
})`;

const folder = mkdtempSync(join(tmpdir(), 'catalogue-'));
const root = join(import.meta.dirname, '..', '..');
const bundle = join(root, 'dist-cli', 'main.js');
const run = (script: string, words: readonly string[]) =>
  spawnSync(
    process.execPath,
    ['--import', `data:text/javascript,${encodeURIComponent(PRINT_USE)}`, script, 'catalogue', ...words],
    {
      stdio: ['ignore', 'ignore', 'pipe'],
      encoding: 'utf8',
      maxBuffer: 1e9,
    },
  );

// Builds the bundle, untimed; the runs start the bundle itself, for the build would count in the peak.
run(join(root, 'scripts', 'command.mjs'), ['--help']);
const table: Record<string, object> = {};
for (const size of SIZES) {
  const path = join(folder, `${size}.csv`);
  await pipeline(Readable.from(rows(size)), createWriteStream(path));
  for (const to of ['csv', 'jsonl']) {
    for (const cores of CORES) {
      const start = performance.now();
      const { status, stderr } = run(bundle, [path, '--to', to, '--cores', String(cores)]);
      const seconds = (performance.now() - start) / 1000;
      const lines = stderr.trimEnd().split('\n');
      if (status === 3) throw new Error(stderr.slice(0, 1000));
      const [peak, cpu] = nth(lines, -1).split(' ').map(Number) as [number, number];
      table[`${size} jobs to ${to}, ${cores} ${cores === 1 ? 'core' : 'cores'}`] = {
        'jobs/s': Math.round(size / seconds),
        seconds: seconds.toFixed(2),
        // Where other programs want the cores too, fewer are used than asked for, and jobs/s says nothing of two cores.
        'cores used': (cpu / 1e6 / seconds).toFixed(2),
        'CPU s': (cpu / 1e6).toFixed(2),
        'peak MB': Math.round(peak / 1024),
        // Without the last line of the command and that of the figures.
        'bad rows': lines.length - 2,
      };
    }
  }
}
rmSync(folder, { recursive: true });
console.table(table);
console.log(`calibration loop ${calibrationMs().toFixed(1)} ms`);
