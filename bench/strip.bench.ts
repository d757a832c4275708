import { Bench } from 'tinybench';
import { releasedOpening } from '../src/core/fold/elastic/releasedOpening.ts';
import { solveSection } from '../src/core/fold/elastic/solveSection.ts';
import { createStripSolver, solveStrip } from '../src/core/strip/solveStrip.ts';
import { stripSettings } from '../src/core/strip/stripSettings.ts';
import { LEDGER, sectionOf } from '../tests/core/fold/elastic/sampleSections.ts';
import { blockWrapGuess, blockWrapProblem } from '../tests/external/elasticaCases.ts';
import { nth } from '../tests/nth.ts';
import { calibrationMs } from './calibration.ts';
import { printTable } from './table.ts';

// Stretch stiffness of 1.8 mm leather round a 28 mm book.
const LEATHER = 12 * (28 / 1.8) ** 2;
const FRAMES = 200;

/** Slack of frame i: a slider drawn from 0.1 to 0.4 and back. */
const slackAt = (i: number): number => 0.25 - 0.15 * Math.cos((2 * Math.PI * i) / FRAMES);

function sweep(segments: number, stretch: number) {
  const solver = createStripSolver({ ...stripSettings, segments });
  const times: number[] = [];
  let iterations = 0;
  solveStrip(solver, blockWrapProblem(0.5, slackAt(0), stretch), blockWrapGuess(0.5, slackAt(0)));
  for (let i = 1; i <= FRAMES; i++) {
    const problem = blockWrapProblem(0.5, slackAt(i), stretch);
    const began = performance.now();
    const solution = solveStrip(solver, problem);
    times.push(performance.now() - began);
    iterations += solution.iterations;
    if (solution.status !== 'converged') throw new Error(`frame ${i}: ${solution.status}`);
  }
  times.sort((a, b) => a - b);
  return {
    median: nth(times, FRAMES / 2),
    p95: nth(times, Math.floor(0.95 * FRAMES)),
    iterations: iterations / FRAMES,
  };
}

function cold(segments: number, stretch: number): number {
  const solver = createStripSolver({ ...stripSettings, segments });
  const times = Array.from({ length: 21 }, (_, i) => {
    const slack = 0.1 + 0.015 * i;
    const problem = blockWrapProblem(0.5, slack, stretch);
    const began = performance.now();
    const { status } = solveStrip(solver, problem, blockWrapGuess(0.5, slack));
    if (status !== 'converged') throw new Error(`cold at ${slack}: ${status}`);
    return performance.now() - began;
  });
  return nth(
    times.sort((a, b) => a - b),
    10,
  );
}

sweep(200, LEATHER); // warm the compiler up
const ms = (value: number): string => `${value.toFixed(2)} ms`;
console.log(`calibration loop ${ms(calibrationMs())}`);
for (const [name, stretch] of [
  ['leather', LEATHER],
  ['inextensible', 1e6],
] as const) {
  const run = sweep(200, stretch);
  console.log(
    `${name}, N 200, ${FRAMES} frames: median ${ms(run.median)} (target 2), p95 ${ms(run.p95)} (target 4), ` +
      `${run.iterations.toFixed(1)} iterations a frame; cold ${ms(cold(200, stretch))} (target 20)`,
  );
}
for (const segments of [100, 200, 400, 800, 1600]) {
  const run = sweep(segments, LEATHER);
  const perNode = (1e3 * run.median) / (run.iterations * segments);
  console.log(
    `N ${segments}: median ${ms(run.median)}, ${run.iterations.toFixed(1)} iterations, ${perNode.toFixed(3)} us a node and iteration`,
  );
}

const sections = createStripSolver();
const tight = sectionOf(LEDGER, 0, 1);
const closed = solveSection(tight, sections);
const bench = new Bench({ time: 300 });
bench.add('section of a cover, cold start', () => solveSection(tight, sections));
bench.add('released opening of a cover', () =>
  releasedOpening(
    {
      sectionAt: (opening) => ({ ...sectionOf(LEDGER, opening, 1), crease: { angles: closed.angles, set: 0.8 } }),
      closingMoment: (opening) => LEDGER.width * Math.cos(opening / 2),
      most: Math.PI,
      lever: LEDGER.width,
      slip: 0.5,
    },
    [{ stiffness: 1, friction: 0 }],
    sections,
  ),
);
await bench.run();
printTable(bench);
