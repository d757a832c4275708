import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { closeSync, createReadStream, createWriteStream, mkdtempSync, openSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { nth } from '../tests/nth.ts';
import { calibrationMs } from './calibration.ts';

/**
 * The catalogue command as a maker runs it: a table of jobs on disk, start of the program included. `ROWS` is how many jobs, `TO`
 * the format, `REPEATS` how often all is measured in turn; medians are shown. `AGAINST=DIR` measures the program of another checkout in
 * turn with this one, and fails where they write other bytes. Memory is the whole process's, threads and all.
 */
const ROWS = Number(process.env.ROWS ?? 100_000);
const FORMATS = (process.env.TO ?? 'csv,jsonl').split(',');
const REPEATS = Number(process.env.REPEATS ?? 3);
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

/** Of the run's time, when its memory is shown. */
const SHARES = [0.1, 0.5, 0.99];

/** Prints resident memory at these shares of the run and its peak, bytes, and the processor's time, microseconds, on standard error. */
const PRINT_USE = `const seen = [];
setInterval(() => seen.push(process.memoryUsage.rss()), 50).unref();
process.on('exit', () => {
  const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
  const at = ${JSON.stringify(SHARES)}.map((share) => seen[Math.ceil(share * seen.length) - 1]);
  process.stderr.write(JSON.stringify({ at, peak: 1024 * maxRSS, cpu: userCPUTime + systemCPUTime }) + '\\n');
})`;

interface Use {
  readonly at: readonly number[];
  readonly peak: number;
  readonly cpu: number;
}

const folder = mkdtempSync(join(tmpdir(), 'catalogue-'));
const here = join(import.meta.dirname, '..', '..');
const roots = process.env.AGAINST === undefined ? [here] : [process.env.AGAINST, here];
const output = join(folder, 'output');

function run(script: string, words: readonly string[]) {
  const to = openSync(output, 'w');
  const use = `data:text/javascript,${encodeURIComponent(PRINT_USE)}`;
  const { status, stderr } = spawnSync(process.execPath, ['--import', use, script, 'catalogue', ...words], {
    stdio: ['ignore', to, 'pipe'],
    encoding: 'utf8',
    maxBuffer: 1e9,
  });
  closeSync(to);
  if (status === 3) throw new Error(stderr.slice(0, 1000));
  return stderr.trimEnd().split('\n');
}

async function hashOf(path: string): Promise<string> {
  const hash = createHash('sha256');
  await pipeline(createReadStream(path), hash);
  return hash.digest('hex');
}

const median = (values: readonly number[]): number =>
  nth(
    values.toSorted((a, b) => a - b),
    values.length >> 1,
  );

// Builds the bundles, untimed; the runs start the bundle itself, for the build would count in the peak.
for (const root of roots) run(join(root, 'scripts', 'command.mjs'), ['--help']);
const input = join(folder, 'jobs.csv');
await pipeline(Readable.from(rows(ROWS)), createWriteStream(input));

interface Run extends Use {
  readonly seconds: number;
}
const runs = new Map<string, Run[]>();
const bytes = new Map<string, string>();
for (let repeat = 0; repeat < REPEATS; repeat++)
  for (const to of FORMATS)
    for (const cores of CORES)
      for (const root of roots) {
        const start = performance.now();
        const lines = run(join(root, 'dist-cli', 'main.js'), [input, '--to', to, '--cores', String(cores)]);
        const seconds = (performance.now() - start) / 1000;
        const key = [...(roots.length > 1 ? [root === here ? 'this' : 'other'] : []), to, `${cores} cores`].join(', ');
        const hash = await hashOf(output);
        if (hash !== (bytes.get(to) ?? hash)) throw new Error(`${key} writes other bytes than the run before`);
        bytes.set(to, hash);
        runs.set(key, [...(runs.get(key) ?? []), { seconds, ...(JSON.parse(nth(lines, -1)) as Use) }]);
      }
rmSync(folder, { recursive: true });

const table: Record<string, object> = {};
for (const [key, of] of runs) {
  const seconds = median(of.map((each) => each.seconds));
  const cpu = median(of.map((each) => each.cpu / 1e6));
  const memory = SHARES.map((share, i): [string, number] => [
    `MB at ${100 * share} %`,
    Math.round(median(of.map(({ at }) => nth(at, i))) / 2 ** 20),
  ]);
  table[key] = {
    'jobs/s': Math.round(ROWS / seconds),
    // Where other programs want the cores too, fewer are used than asked for, and jobs/s says nothing of two cores.
    'cores used': (cpu / seconds).toFixed(2),
    'CPU ms a job': ((1000 * cpu) / ROWS).toFixed(3),
    ...Object.fromEntries(memory),
    'peak MB': Math.round(median(of.map(({ peak }) => peak)) / 2 ** 20),
  };
}
console.table(table);
const speed = (key: string): number => ROWS / median((runs.get(key) ?? []).map(({ seconds }) => seconds));
for (const key of runs.keys())
  if (key.endsWith('2 cores'))
    console.log(`${key}: ${(speed(key) / speed(key.replace('2 cores', '1 cores'))).toFixed(2)} times one core`);
for (const key of runs.keys())
  if (key.startsWith('this'))
    console.log(`${key}: ${(speed(key) / speed(key.replace('this', 'other'))).toFixed(2)} times the other`);
console.log(
  `load ${loadavg()
    .map((load) => load.toFixed(1))
    .join(' ')}, calibration loop ${calibrationMs().toFixed(1)} ms`,
);
