import { Bench } from 'tinybench';
import { coverDesign, EXAMPLE_JOBS, filmSteps, foldedCover, parseJob } from '../src/core/index.ts';
import { printTable } from './table.ts';

/** One frame of the film in the middle of each step that moves book or cover, of the example with the thickest book. */
const bench = new Bench({ time: 500 });
const parsed = parseJob(EXAMPLE_JOBS.find(({ id }) => id === 'choir-book')?.document);
if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
const design = coverDesign(parsed.job);
for (const { id, from, to } of filmSteps(design, 'nominal'))
  for (const share of id === 'secondBoard' ? [0.2, 0.5, 0.8] : [0.5])
    bench.add(`${id}, at ${share}`, () =>
      foldedCover(design, { kind: 'sequence', at: from + (to - from) * share }, 'nominal'),
    );
await bench.run();
printTable(bench);
