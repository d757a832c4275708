import { expect, test } from 'vitest';
import { cutSums } from '../../src/app/panel/cutSums.ts';
import { type JobDocument, type Patch, patched } from '../../src/app/state/jobDocument.ts';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../src/core/job/examples.ts';
import { parseJob } from '../../src/core/job/parseJob.ts';

function sumsOf(document: unknown, patches: readonly Patch[] = []) {
  const parsed = parseJob(patched(document as JobDocument, patches));
  if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
  return cutSums(coverDesign(parsed.job));
}

test('the lines of every sum add up to what is cut, where the tool decides the size', () => {
  const changes: readonly (readonly Patch[])[] = [
    [],
    [{ path: 'pockets.construction', value: 'turned' }],
    [{ path: 'pattern.rounding_mm', value: 0 }],
  ];
  for (const { document } of EXAMPLE_JOBS) {
    for (const patches of changes) {
      for (const { lines, sum, cut } of sumsOf(document, patches)) {
        expect(lines.reduce((total, { each, times }) => total + each * (times ?? 1), 0)).toBeCloseTo(sum, 9);
        expect(sum).toBeCloseTo(cut, 6);
      }
    }
  }
});

test('a size given by the maker stands beside what the tool would cut', () => {
  const sums = sumsOf(EXAMPLE_JOBS[0]!.document, [{ path: 'pattern.outsideWidth_mm', value: 370 }]);
  const width = sums.find(({ name }) => name === 'Outside, width')!;
  expect(width.cut).toBe(370);
  expect(width.sum).toBeGreaterThan(370);
});

test('turned ends need no pocket pieces, so no sum for them', () => {
  const names = sumsOf(EXAMPLE_JOBS[0]!.document, [{ path: 'pockets.construction', value: 'turned' }]).map(
    ({ name }) => name,
  );
  expect(names).toEqual(['Outside, width', 'Outside, height']);
});

test('rounding up a pocket adds less than one step', () => {
  for (const { document } of EXAMPLE_JOBS) {
    const pocket = sumsOf(document).find(({ name }) => name === 'Pockets, width')!;
    const rounding = pocket.lines.find(({ name }) => name === 'rounding up')?.each ?? 0;
    expect(rounding).toBeGreaterThanOrEqual(0);
    expect(rounding).toBeLessThan(0.5);
  }
});
