import { Bench } from 'tinybench';
import { coverDoubt } from '../src/core/doubt/coverDoubt.ts';
import { coverDesign, coverTrials, EXAMPLE_JOBS, fitReport, parseJob } from '../src/core/index.ts';
import { reportDoubt } from '../src/core/report/reportDoubt.ts';
import { printTable } from './table.ts';

const parsed = (document: unknown) => {
  const result = parseJob(document);
  if (!result.ok) throw new Error(result.issues[0]?.message);
  return result.job;
};

const bench = new Bench({ time: 500 });
for (const { id, document } of EXAMPLE_JOBS) {
  const job = parsed(document);
  bench.add(`report of ${id}`, () => fitReport(job));
  const width = fitReport(job).pattern.outside.width_mm;
  const short = { ...job, pattern: { ...job.pattern, outsideWidth_mm: (width - 7) as typeof job.book.width_mm } };
  bench.add(`report of ${id}, 7 mm short`, () => fitReport(short));
  bench.add(`parse of ${id}`, () => parseJob(document));
  const design = coverDesign(job);
  const first = reportDoubt(design);
  bench.add(`first order of ${id}`, () => coverDoubt(job));
  bench.add(`budgets of ${id}`, () => reportDoubt(design));
  bench.add(`2,000 trials of ${id}`, () => coverTrials(design, first));
}
const tide = parsed(EXAMPLE_JOBS[0].document);
for (const size of [60, 250, 900]) {
  const big = parsed({
    ...(EXAMPLE_JOBS[0].document as object),
    book: { kind: 'hardback', width_mm: size, height_mm: size, thickness_mm: tide.book.thickness_mm },
  });
  bench.add(`report, board ${size} mm square`, () => fitReport(big));
}
await bench.run();
printTable(bench);
