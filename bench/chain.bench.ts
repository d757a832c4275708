import { solveStrip } from '../src/core/strip/solveStrip.ts';
import { defined } from '../tests/defined.ts';
import { blockWrap, blockWrapGuess, blockWrapProblem, solverWith } from '../tests/external/elasticaCases.ts';
import reference from '../tests/external/reference-values.json' with { type: 'json' };
import { nth } from '../tests/nth.ts';
import { calibrationMs } from './calibration.ts';
import { runChain } from './engineChain.ts';

// The block wrap by the strip and by a jointed chain in a rigid-body engine: how long, and how near the published elastica.
const published = defined(reference.blockWrap.rows.find((row) => row[0] === 0.5 && row[1] === 0.2));
const [a, slack, bow, bulge] = [nth(published, 0), nth(published, 1), nth(published, 2), nth(published, 3)];
const REPEATS = 15;
/** Most time one chain may take, ms. */
const BUDGET = Number(process.env.CHAIN_BUDGET_MS ?? 20_000);

const percent = (value: number, expected: number): string => `${(100 * (value / expected - 1)).toFixed(3)} %`;
const rows: Record<string, object> = {};

for (const segments of [25, 50, 100, 200, 400]) {
  const solver = solverWith(segments);
  const found = blockWrap(solver, a, slack);
  const times = Array.from({ length: REPEATS }, () => {
    const began = performance.now();
    solveStrip(solver, blockWrapProblem(a, slack), blockWrapGuess(a, slack));
    return performance.now() - began;
  }).sort((p, q) => p - q);
  rows[`strip, N ${segments}`] = {
    'time ms': nth(times, (REPEATS - 1) / 2).toFixed(1),
    'spine bow': percent(found.bow, bow),
    'face bulge': percent(found.bulge, bulge),
    ended: `${found.solution.iterations} iterations, converged`,
  };
}

for (const [segments, perPeriod, iterations] of [
  [10, 150, 10],
  [20, 600, 10],
  [40, 2400, 10],
  [80, 2400, 10],
  [80, 9600, 10],
  [160, 7680, 10],
  [160, 7680, 50],
  [160, 1280, 50],
  [320, 30720, 50],
] as const) {
  const run = runChain(a, slack, { segments, stepsPerPeriod: perPeriod, iterations, budget: BUDGET });
  rows[`chain, N ${segments}, ${perPeriod} steps a period, ${iterations} iterations`] = {
    'time ms': run.milliseconds.toFixed(1),
    'spine bow': percent(run.bow, bow),
    'face bulge': percent(run.bulge, bulge),
    ended: `${run.steps} steps, ${run.settled ? 'at rest' : 'still moving when its time was up'}`,
  };
}
console.table(rows);
console.log(`calibration loop ${calibrationMs().toFixed(1)} ms`);
