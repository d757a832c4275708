import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import type { Check } from '../../src/core/report/check.ts';
import { designReport } from '../../src/core/report/designReport.ts';
import { jobDocument, seeded, soundJob } from '../jobArbitrary.ts';

const SEED = 20261203;
console.info(`check laws: fast-check seed ${SEED}`);

const NOISE = 1e-9;

/** How far a number lies inside its limit; negative past it. */
const room = ({ value, limit, bound }: Pick<Check, 'value' | 'limit' | 'bound'>): number => {
  if (bound === 'atLeast') return value - limit;
  return limit - (bound === 'within' ? Math.abs(value) : value);
};

test('a check that fits lies on the asked side of its limit, and one that fails on the other', () => {
  const seen = { fits: 0, fails: 0 };
  const tape = fc.double({ min: -12, max: 12, noNaN: true });
  fc.assert(
    fc.property(jobDocument, tape, fc.double({ min: -6, max: 6, noNaN: true }), (document, off, cut) => {
      const job = soundJob(document);
      const sized = coverDesign(job);
      const closedWrap_mm = 2 * job.book.width_mm + job.book.thickness_mm + off;
      const written = soundJob({
        ...document,
        book: { ...document.book, measured: { closedWrap_mm } },
        pattern: { outsideWidth_mm: sized.pieces.outside.width + cut },
      });
      const report = designReport(coverDesign(written));
      for (const check of report.checks) {
        if (check.bound === null) continue;
        if (check.verdict === 'fits') expect(room(check), check.id).toBeGreaterThanOrEqual(-NOISE);
        if (check.verdict === 'fails') expect(room(check), check.id).toBeLessThan(NOISE);
        if (check.verdict !== 'tight') seen[check.verdict]++;
      }
    }),
    seeded(SEED, 200),
  );
  expect(seen.fits).toBeGreaterThan(100);
  expect(seen.fails).toBeGreaterThan(100);
});
