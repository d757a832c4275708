import { Bench } from 'tinybench';
import { createSettleSolver, settledCover } from '../src/core/fold/elastic/settledCover.ts';
import { coverDesign, EXAMPLE_JOBS, parseJob } from '../src/core/index.ts';
import { foldedCover } from '../src/core/solid/foldedCover.ts';
import { printTable } from './table.ts';

const bench = new Bench({ time: 1000 });
for (const { id, document } of EXAMPLE_JOBS) {
  const parsed = parseJob(document);
  if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
  const design = coverDesign(parsed.job);
  const settle = settledCover(design, 'nominal', createSettleSolver());
  bench.add(`${id}, closed`, () => foldedCover(design, { kind: 'opening', angle: 0 }));
  bench.add(`${id}, half open`, () => foldedCover(design, { kind: 'opening', angle: 1.5 }));
  bench.add(`${id}, book set in`, () => foldedCover(design, { kind: 'sequence', at: 0.6 }));
  bench.add(`${id}, half open, settled`, () => foldedCover(design, { kind: 'opening', angle: 1.5 }, 'nominal', settle));
}
await bench.run();
printTable(bench);
