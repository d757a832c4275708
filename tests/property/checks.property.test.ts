import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { patched } from '../../src/core/job/jobDocument.ts';
import { severity } from '../../src/core/report/check.ts';
import { designReport } from '../../src/core/report/designReport.ts';
import type { Check } from '../../src/core/report/reportSchema.ts';
import { defined } from '../defined.ts';
import { jobDocument, soundJob } from '../jobArbitrary.ts';
import { checkLaw } from '../laws.ts';

const NOISE = 1e-9;

/** How far a number lies inside its limit; negative past it. */
const room = ({ value, limit, bound }: Pick<Check, 'value' | 'limit' | 'bound'>): number => {
  if (bound === 'atLeast') return value - limit;
  return limit - (bound === 'within' ? Math.abs(value) : value);
};

/** A job with a tape round the book, and its pattern cut by so much off what the tool would decide. */
const cutJob = fc
  .record({
    document: jobDocument,
    off: fc.double({ min: -12, max: 12, noNaN: true }),
    wider: fc.double({ min: -12, max: 24, noNaN: true }),
    higher: fc.double({ min: -12, max: 24, noNaN: true }),
  })
  .map(({ document, off, wider, higher }) => {
    const job = soundJob(document);
    const { outside } = coverDesign(job).pieces;
    const closedWrap_mm = 2 * job.book.width_mm + job.book.thickness_mm + off;
    return {
      ...document,
      book: { ...document.book, measured: { closedWrap_mm } },
      pattern: { outsideWidth_mm: outside.width + wider, outsideHeight_mm: outside.height + higher },
    };
  });

const checked = (document: unknown) => designReport(coverDesign(soundJob(document)));

test('a check that fits lies on the asked side of its limit, and one that fails or is too loose on the other', () => {
  const seen = { fits: 0, loose: 0, fails: 0 };
  checkLaw(
    fc.property(cutJob, (document) => {
      for (const check of checked(document).checks) {
        expect(check.state, check.id).not.toBe('');
        if (check.verdict === 'none' || check.verdict === 'unknown') expect(check.bound, check.id).toBeNull();
        if (check.bound === null) continue;
        if (check.verdict === 'fits') expect(room(check), check.id).toBeGreaterThanOrEqual(-NOISE);
        if (check.verdict === 'fails' || check.verdict === 'loose') expect(room(check), check.id).toBeLessThan(NOISE);
        if (check.verdict in seen) seen[check.verdict as keyof typeof seen]++;
      }
    }),
  );
  expect(seen.fits).toBeGreaterThan(100);
  expect(seen.loose).toBeGreaterThan(20);
  expect(seen.fails).toBeGreaterThan(100);
});

test('nothing fits or is close with a gap over the loosest', () => {
  checkLaw(
    fc.property(cutJob, (document) => {
      const report = checked(document);
      const { loosest } = soundJob(document);
      const { nominal } = report.fit;
      const gaps = [
        [nominal.closed.slack_mm / 2, loosest.foreEdge_mm],
        [nominal.head_mm, loosest.head_mm],
        [nominal.tail_mm, loosest.tail_mm],
      ] as const;
      if (gaps.some(([gap, most]) => gap > most + NOISE)) expect(['loose', 'fails']).toContain(report.verdict);
    }),
  );
});

/** A wider outside may take hold from a pocket, which then has a remedy of its own; edges have none left. */
const EDGE_ROWS = new Set(['closes', 'opens', 'foreEdge', 'head', 'tail', 'seamMargin']);

/** Rows that one width of the outside mends together; one of them may stay tight while another comes out of failing. */
const WIDTH_ROWS: readonly string[] = ['closes', 'opens', 'foreEdge'];

/** Worst verdict of the rows that a row's remedy mends. */
const worstOf = (checks: readonly Check[], row: string): number => {
  const mended = WIDTH_ROWS.includes(row) ? WIDTH_ROWS : [row];
  return Math.max(...checks.filter(({ id }) => mended.includes(id)).map(({ verdict }) => severity(verdict)));
};

test('a remedy that changes the job mends its row, and no other edge that fits fails by it', () => {
  let mended = 0;
  checkLaw(
    fc.property(cutJob, (document) => {
      const before = checked(document);
      for (const { id, verdict, change } of before.checks) {
        if (change.length === 0 || id === 'measures') continue;
        const after = checked(patched(document, change));
        const row = defined(after.checks.find((check) => check.id === id));
        const said = `${id} ${verdict} ${JSON.stringify(change)}`;
        expect(worstOf(after.checks, id), said).toBeLessThan(worstOf(before.checks, id));
        expect(['fails', 'loose'], said).not.toContain(row.verdict);
        for (const was of before.checks) {
          if (was.verdict !== 'fits' || !EDGE_ROWS.has(was.id)) continue;
          const now = defined(after.checks.find((check) => check.id === was.id));
          expect(now.verdict, `${was.id} after the remedy of ${id}: ${JSON.stringify(change)}`).not.toBe('fails');
        }
        mended++;
      }
    }),
  );
  expect(mended).toBeGreaterThan(100);
});
