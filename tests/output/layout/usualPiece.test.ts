import { expect, test } from 'vitest';
import { EXAMPLE_JOBS, parseJob, polygonArea } from '../../../src/core/index.ts';
import { usualPiece } from '../../../src/output/layout/usualPiece.ts';
import { defined } from '../../defined.ts';

const parsed = parseJob(defined(EXAMPLE_JOBS[0]).document);
if (!parsed.ok) throw new Error('the example does not parse');
const { hides } = parsed.job;

test.each([
  [0, 0, 600],
  // 1.5 times 0.3 m2 is a square of 671 mm.
  [300_000, 100, 900],
  // 890 mm and 5 mm off either edge are 900 mm.
  [100_000, 890, 900],
  [100_000, 891, 1200],
])('%d mm2 with a piece of %d mm are laid on a square of %d mm', (gross, longest, side) => {
  const usual = usualPiece(gross, longest, hides);
  expect(hides.edge_mm).toBe(5);
  expect(usual.side).toBe(side);
  expect(polygonArea(usual.hide.outline)).toBeCloseTo(side * side, 6);
});
