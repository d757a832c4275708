import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { randomDraws } from '../../src/core/math/randomDraws.ts';
import { jobTable } from '../cli/catalogue/jobTable.ts';
import { build, lines, processWords, runProcess, scratch } from '../cli/commandLine.ts';
import { proofSize } from './proofSize.ts';

const CORES = [1, 2, 4].slice(0, proofSize(3, 1));
const RUNS = proofSize(6, 1);
/** Most times that one run is killed. */
const KILLS = proofSize(3, 1);
const ROWS = proofSize(1500, 600);

const { folder, file, remove } = scratch('resume-proof-');
beforeAll(build);
afterAll(remove);

/** Starts a run and kills it so long after its output has so many bytes; false where it was done before. */
async function killedAt(words: readonly string[], part: string, bytes: number, ms: number): Promise<boolean> {
  const child = spawn(process.execPath, processWords('catalogue', words), { stdio: 'ignore' });
  let isOver = false;
  const over = once(child, 'close').then(() => {
    isOver = true;
  });
  while (!isOver && (!existsSync(part) || (statSync(part, { throwIfNoEntry: false })?.size ?? 0) < bytes))
    await setTimeout(1);
  if (!isOver) await Promise.race([over, setTimeout(ms)]);
  const isKilled = child.kill('SIGKILL');
  await over;
  return isKilled;
}

test(
  `${RUNS} runs on each of ${CORES.join(', ')} workers, each killed up to ${KILLS} times at random bytes, end as one never killed`,
  async () => {
    const jobs = file('jobs.csv', jobTable(ROWS));
    const draw = randomDraws(20261128);
    const table: Record<string, object> = {};
    for (const to of ['jsonl', 'csv'].slice(0, proofSize(2, 1))) {
      const whole = runProcess('catalogue', [jobs, '--to', to]);
      const size = Buffer.byteLength(whole.stdout);
      for (const cores of CORES) {
        const counts = { runs: 0, kills: 0, 'gone on after a mark': 0 };
        for (let index = 0; index < RUNS; index++) {
          const out = join(folder, `${to}-${cores}-${index}`);
          const words = [jobs, '--to', to, '--cores', String(cores), '--out', out, '--resume'];
          for (let kill = 0; kill < KILLS; kill++) {
            if (!(await killedAt(words, `${out}.part`, Math.floor(draw() * size), 1000 * draw()))) break;
            counts.kills++;
            // A quick run may have put its output into place before it was killed: whole or not at all.
            if (existsSync(out)) expect(readFileSync(out, 'utf8') === whole.stdout).toBe(true);
            if (existsSync(`${out}.run`) && readFileSync(`${out}.run`, 'utf8').split('\n').length > 2)
              counts['gone on after a mark']++;
          }
          const { status, stdout, stderr } = runProcess('catalogue', words);
          expect({ status, stdout, last: lines(stderr).at(-1), isSame: stderr === whole.stderr }).toEqual({
            status: whole.status,
            stdout: '',
            last: lines(whole.stderr).at(-1),
            isSame: true,
          });
          expect(readFileSync(out, 'utf8') === whole.stdout).toBe(true);
          expect(existsSync(`${out}.part`)).toBe(false);
          for (const end of ['', '.run']) rmSync(out + end);
          counts.runs++;
        }
        table[`${to}, ${cores} ${cores === 1 ? 'worker' : 'workers'}`] = counts;
      }
    }
    console.table(table);
  },
  proofSize(7_200_000, 120_000),
);
