import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { patched } from '../../../src/core/job/jobDocument.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { designReport } from '../../../src/core/report/designReport.ts';
import type { Report } from '../../../src/core/report/reportSchema.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';
import { job, LEATHER, LEDGER, row } from './lacedLedger.ts';

const reportOf = (rest: object = {}): Report => designReport(coverDesign(job(rest)));
/** The ledger with 8 mm of ease everywhere, as a document. */
const openDocument = {
  format: 'coverwright-job',
  version: 2,
  book: LEDGER,
  leather: LEATHER,
  seam: { method: 'lacing' },
  ease: { foreEdge_mm: 8, head_mm: 8, tail_mm: 8 },
};
const sized = designReport(coverDesign(job())).pattern.outside;

describe('a cover that is too large', () => {
  const large = reportOf({
    pattern: { outsideWidth_mm: sized.width_mm + 40, outsideHeight_mm: sized.height_mm + 49 },
  });

  test('is too loose, at each edge whose gap is over the loosest', () => {
    expect(large.verdict).toBe('loose');
    for (const id of ['foreEdge', 'head', 'tail']) {
      const check = row(large, id);
      expect(check.verdict, id).toBe('loose');
      expect(check.bound).toBe('atMost');
      // A gap of 4 mm is the loosest; the wished chance asks for less.
      expect(check.limit).toBeLessThan(4);
      expect(check.limit).toBeGreaterThan(2);
      expect(check.value).toBeGreaterThan(4);
    }
    expect(large.headline).toMatch(/too loose/i);
  });

  test('is offered a size at which nothing is too loose and everything fits', () => {
    for (const id of ['foreEdge', 'head']) {
      const { change, remedy } = row(large, id);
      expect(remedy).not.toBe('');
      expect(change).toHaveLength(1);
    }
    const [width, height] = [nth(row(large, 'foreEdge').change, 0), nth(row(large, 'head').change, 0)];
    const mended = reportOf({
      pattern: { outsideWidth_mm: width.value, outsideHeight_mm: height.value },
    });
    expect(mended.verdict).toBe('fits');
  });

  test('is judged by the middle of its leather and by a limit that the maker sets', () => {
    const gap = large.fit.nominal.closed.slack_mm / 2;
    expect(row(large, 'foreEdge').value).toBeCloseTo(gap, 9);
    const width = { pattern: { outsideWidth_mm: sized.width_mm + 40 } };
    expect(reportOf({ ...width, loosest: { foreEdge_mm: gap - 0.1 } }).verdict).toBe('loose');
    expect(reportOf({ ...width, loosest: { foreEdge_mm: gap + 0.1 } }).verdict).toBe('tight');
    expect(reportOf({ ...width, loosest: { foreEdge_mm: gap + 3 } }).verdict).toBe('fits');
  });

  test('with more ease than the loosest gap says so, and asks to leave the ease to the tool', () => {
    const report = reportOf({ ease: { foreEdge_mm: 8, head_mm: 8, tail_mm: 8 } });
    expect(report.verdict).toBe('loose');
    const changes = ['foreEdge', 'head', 'tail'].flatMap((id) => row(report, id).change);
    expect(changes.map(({ path }) => path)).toContain('ease.foreEdge_mm');
    expect(changes.every(({ value }) => value === null)).toBe(true);
    expect(designReport(coverDesign(soundJob(patched(openDocument, changes)))).verdict).toBe('fits');
  });
});

describe('a rounded spine', () => {
  const book = { width_mm: 162, height_mm: 241, thickness_mm: 61, spine: { shape: 'rounded' } };

  test('whose rise is not typed is worked out with a third of a circle, and never fits', () => {
    const estimated = reportOf({ book });
    // Chord 61, arc of 120 degrees: 61/2 tan(30 deg) = 17.61 rise, arc (2 pi / 3) (61 / 2 / sin 60 deg) = 73.76.
    const flat = reportOf({ book: { ...book, spine: { shape: 'flat' } } });
    const typed = reportOf({ book: { ...book, spine: { shape: 'rounded', rise_mm: 17.609 } } });
    expect(estimated.wrap.closed_mm).toBeCloseTo(typed.wrap.closed_mm, 2);
    expect(estimated.wrap.closed_mm - flat.wrap.closed_mm).toBeCloseTo(73.76 - 61, 1);
    expect(estimated.verdict).toBe('tight');
    expect(estimated.headline).toMatch(/not measured/);
    expect(row(estimated, 'measures')).toMatchObject({ verdict: 'tight', state: 'rise not measured' });
    expect(row(estimated, 'measures').message).toMatch(/17\.6 mm/);
  });

  test('that rises by 0 was not measured either; with the rise typed the same cover may fit', () => {
    expect(reportOf({ book: { ...book, spine: { shape: 'rounded', rise_mm: 0 } } }).verdict).toBe('tight');
    expect(reportOf({ book: { ...book, spine: { shape: 'rounded', rise_mm: 12 } } }).verdict).toBe('fits');
  });

  test('cut for a flat one stays open, and says so', () => {
    const outsideWidth_mm = 409.5;
    const report = reportOf({ book, pattern: { outsideWidth_mm } });
    // Short by 10 mm with the likeliest rise: likelier too small than not, though the rise is only estimated.
    expect(report.verdict).toBe('fails');
    const real = reportOf({
      book: { ...book, spine: { shape: 'rounded', rise_mm: 12 } },
      pattern: { outsideWidth_mm },
    });
    expect(real.verdict).toBe('fails');
  });
});

describe('a cover into which the boards do not go', () => {
  const short = reportOf({ pattern: { outsideWidth_mm: sized.width_mm - 60 } });
  const low = reportOf({ pattern: { outsideHeight_mm: sized.height_mm - 20 } });

  test('is not asked how its pockets hold or load', () => {
    for (const report of [short, low]) {
      expect(report.verdict).toBe('fails');
      for (const id of ['pocketHolds', 'pocketLoads']) {
        const check = row(report, id);
        expect(check.verdict, id).toBe('none');
        expect(check.remedy).toBe('');
        expect(check.bound).toBeNull();
      }
    }
  });

  test('is offered the one width that mends closing, lying open and both fore-edges', () => {
    for (const by of [60, 14, 5, 2]) {
      const pattern = { outsideWidth_mm: sized.width_mm - by };
      const report = reportOf({ pattern });
      const changes = ['closes', 'opens', 'foreEdge'].flatMap((id) => row(report, id).change);
      expect(new Set(changes.map(({ value }) => value)).size, `${by} mm narrower`).toBe(1);
      const mended = reportOf({ pattern: { outsideWidth_mm: nth(changes, 0).value } });
      for (const id of ['closes', 'opens', 'foreEdge']) expect(row(mended, id).verdict, `${id}, ${by} mm`).toBe('fits');
    }
  });
});

describe('one figure for one thing', () => {
  test('the shortage in the headline is the one of the row that it comes from', () => {
    for (const by of [5, 9, 14, 40]) {
      const report = reportOf({ pattern: { outsideWidth_mm: sized.width_mm - by } });
      const short = /([\d.]+ mm) (too )?short/;
      const inRow = short.exec(row(report, 'closes').message)?.[1];
      expect(inRow, report.headline).toBeDefined();
      expect(short.exec(report.headline)?.[1]).toBe(inRow);
    }
  });
});

test('an ease or a loosest gap out of range is refused by its path', () => {
  const parsed = parseJob({
    format: 'coverwright-job',
    version: 1,
    book: LEDGER,
    leather: LEATHER,
    loosest: { head_mm: -1 },
  });
  expect(parsed.ok).toBe(false);
  expect(!parsed.ok && parsed.issues.map(({ path }) => path)).toEqual(['loosest.head_mm']);
});
