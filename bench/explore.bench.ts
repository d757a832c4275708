import { Bench } from 'tinybench';
import { exploreFields } from '../src/core/explore/exploreField.ts';
import { EXPLORE_RESULTS } from '../src/core/explore/exploreResult.ts';
import { mustChangeList } from '../src/core/explore/mustChangeList.ts';
import { sweep } from '../src/core/explore/sweep.ts';
import { whatMustChange } from '../src/core/explore/whatMustChange.ts';
import { coverDesign, EXAMPLE_JOBS, parseJob } from '../src/core/index.ts';
import { defined } from '../tests/defined.ts';
import { printTable } from './table.ts';

const designOf = (document: unknown) => {
  const parsed = parseJob(document);
  if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
  return coverDesign(parsed.job);
};

const bench = new Bench({ time: 500 });
for (const { id, document: written } of EXAMPLE_JOBS) {
  const document = written;
  const design = designOf(document);
  const fields = exploreFields(document, design);
  const weight = defined(fields.find((field) => field.id === 'leather.outside'));
  const range = { from: Math.max(0.2, weight.present - 1.2), to: weight.present + 1.2, count: 81 };
  bench.add(`81 points of leather weight, one result, ${id}`, () =>
    sweep(document, weight, EXPLORE_RESULTS.slice(0, 1), range),
  );
  bench.add(`81 points of leather weight, every result, ${id}`, () => sweep(document, weight, EXPLORE_RESULTS, range));

  const narrow = { ...document, pattern: { outsideWidth_mm: design.pieces.outside.width - 6 } };
  const short = designOf(narrow);
  const width = defined(exploreFields(narrow, short).find((field) => field.id === 'pattern.outsideWidth_mm'));
  bench.add(`width that must change, 6 mm short, ${id}`, () => whatMustChange(narrow, width, 'all'));
  bench.add(`all that could change, 6 mm short, ${id}`, () => mustChangeList(narrow, short, 'all'));
}
await bench.run();
printTable(bench);
