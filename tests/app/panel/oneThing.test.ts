import { expect, test } from 'vitest';
import { oneThing } from '../../../src/app/panel/oneThing.ts';
import { coverDesign, designReport, EXAMPLE_JOBS, type Patch, parseJob, patched } from '../../../src/core/index.ts';
import { defined } from '../../defined.ts';

const reportOf = (...patches: readonly Patch[]) => {
  const parsed = parseJob(patched(EXAMPLE_JOBS[1].document, patches));
  if (!parsed.ok) throw new Error('the job does not parse');
  return designReport(coverDesign(parsed.job));
};

test('of a cover that fits it is the measurement that saves the most', () => {
  const report = reportOf();
  expect(report.verdict).toBe('fits');
  const [first] = report.doubt.measureNext;
  expect(oneThing(report)).toEqual({ kind: 'measure', words: first?.words, path: first?.path });
});

test('of a cover that does not fit it is the change that mends the worst check', () => {
  const report = reportOf(
    { path: 'pattern.outsideWidth_mm', value: 440 },
    // Too loose at the fore-edges and too shallow in the pockets: the latter is worse.
  );
  const worst = defined(report.checks.find(({ id }) => id === 'pocketHolds'));
  expect(worst.verdict).toBe('fails');
  expect(oneThing(report)).toEqual({ kind: 'change', words: worst.remedy, patches: worst.change });
});

test('where nothing would help there is nothing to do', () => {
  expect(oneThing({ checks: [], doubt: { ...reportOf().doubt, measureNext: [] } })).toBeNull();
});
