import { expect, test } from 'vitest';
import { writtenOut } from '../../../src/app/panel/writtenOut.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { type Patch, patched } from '../../../src/core/job/jobDocument.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { patternDrawing } from '../../../src/core/pattern/patternDrawing.ts';
import { nth } from '../../nth.ts';

function sumsOf(patches: readonly Patch[]) {
  const parsed = parseJob(patched(EXAMPLE_JOBS[0].document, patches));
  if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
  return writtenOut(patternDrawing(coverDesign(parsed.job)));
}

test('every sum is written out once: the height of pockets and lining is the outside’s', () => {
  expect(sumsOf([{ path: 'leather.lining', value: { min_mm: 0.6, max_mm: 0.8 } }]).map(({ name }) => name)).toEqual([
    'Outside, width',
    'Outside, height',
    'Pocket, width',
    'Centre lining, width',
  ]);
});

test('the lines of a sum add up to what is cut, a size given by the maker too', () => {
  const given: readonly Patch[] = [{ path: 'pattern.outsideWidth_mm', value: 370 }];
  const cases: readonly (readonly Patch[])[] = [
    [],
    given,
    [{ path: 'construction.strap', value: {} }],
    [{ path: 'construction.ribbon', value: {} }],
  ];
  for (const patches of cases)
    for (const { sum } of sumsOf(patches))
      expect(sum.parts.reduce((total, { each, times }) => total + each * times, 0)).toBeCloseTo(sum.total, 9);
  expect(nth(sumsOf(given), 0).sum.total).toBe(370);
});
