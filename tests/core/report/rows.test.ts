import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { designReport } from '../../../src/core/report/designReport.ts';
import type { CheckId, Report } from '../../../src/core/report/reportSchema.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';

const book = { width_mm: 165, height_mm: 240, thickness_mm: 28, boardThickness_mm: 2.5 };
const reportOf = (rest: object = {}): Report =>
  designReport(
    coverDesign(
      soundJob({
        format: 'coverwright-job',
        version: 1,
        book,
        leather: { outside: { min_mm: 1.5, max_mm: 2 } },
        seam: { method: 'lacing' },
        ...rest,
      }),
    ),
  );
const row = ({ checks }: Report, id: CheckId) => defined(checks.find((check) => check.id === id));
const sized = reportOf().pattern.outside;

describe('the edge margin', () => {
  const margin = (edgeMargin_mm: number, method = 'lacing', max_mm = 2) =>
    row(reportOf({ seam: { method, edgeMargin_mm }, leather: { outside: { min_mm: 1.5, max_mm } } }), 'seamMargin');

  test('is at least the thickness of the outside and never under 1.5 mm', () => {
    expect(margin(2)).toMatchObject({ verdict: 'fits', value: 2, limit: 2, bound: 'atLeast', remedy: '', change: [] });
    expect(margin(1.9)).toMatchObject({ verdict: 'fails', state: 'too narrow', limit: 2 });
    expect(margin(1.6, 'stitching', 1.5)).toMatchObject({ verdict: 'fits', limit: 1.5 });
    expect(margin(1.4, 'stitching', 1.5)).toMatchObject({ verdict: 'fails', limit: 1.5 });
  });

  test('is asked to be the usual one, or wider in half millimetres where the leather wants more', () => {
    expect(margin(1.9)).toMatchObject({
      change: [{ path: 'seam.edgeMargin_mm', value: 6.35 }],
      remedy: 'Set the seam 6.35 mm from the edge, as is usual for lacing.',
    });
    expect(margin(3, 'stitching', 3.3)).toMatchObject({
      change: [{ path: 'seam.edgeMargin_mm', value: 3.5 }],
      remedy: 'Set the seam 3.5 mm from the edge.',
    });
  });

  test('narrower than usual is said so, and what may tear out is named', () => {
    expect(margin(3).message).toBe(
      '3 mm from seam to cut edge; under 2 mm the lace may tear out. Narrower than the usual 6.35 mm for lacing.',
    );
    expect(margin(6.35).message).toBe('6.35 mm from seam to cut edge; under 2 mm the lace may tear out.');
    expect(margin(4, 'stitching').message).toBe('4 mm from seam to cut edge; under 2 mm the thread may tear out.');
    expect(margin(1.9).message).not.toMatch(/usual/);
  });
});

describe('pockets', () => {
  const shallow = reportOf({ pockets: { depth_mm: 30 } });

  test('too shallow are asked to be as deep as they lack of the hold, up to the next step', () => {
    const { value, limit, change, remedy, message } = row(shallow, 'pocketHolds');
    expect(row(shallow, 'pocketHolds')).toMatchObject({ verdict: 'fails', state: 'too shallow', bound: 'atLeast' });
    // 40 mm are wanted; the rest is what the wished chance asks for.
    expect(limit).toBeGreaterThan(40);
    expect(limit).toBeLessThan(43);
    const wanted = Math.ceil((30 + limit - value) * 2 - 1e-9) / 2;
    expect(change).toEqual([{ path: 'pockets.depth_mm', value: wanted }]);
    expect(remedy).toBe(`Make the pockets ${wanted} mm deep, ${(wanted - 30).toFixed(1)} mm more.`);
    expect(message).toMatch(/ of each board stays in its pocket; 40 mm is wanted\.$/);
    expect(row(reportOf({ pockets: { depth_mm: wanted } }), 'pocketHolds').verdict).toBe('fits');
    expect(shallow.headline).toContain(', but the pockets are too shallow');
  });

  test('of turned ends in a given outside are mended with it, which the maker must do', () => {
    const report = reportOf({
      pockets: { construction: 'turned', depth_mm: 30 },
      pattern: {
        outsideWidth_mm: reportOf({ pockets: { construction: 'turned', depth_mm: 30 } }).pattern.outside.width_mm,
      },
    });
    expect(row(report, 'pocketHolds')).toMatchObject({ verdict: 'fails', change: [] });
    expect(row(report, 'pocketHolds').remedy).toMatch(/ more, and the outside wider or narrower by twice that\.$/);
  });

  test('too deep for the boards to pass the mouth are asked to be shallower', () => {
    const report = reportOf({ book: { ...book, foldBack_deg: 60 }, pockets: { depth_mm: 150 } });
    const loads = row(report, 'pocketLoads');
    expect(loads).toMatchObject({ verdict: 'fails', state: 'too deep to load', bound: 'atMost', unit: 'deg' });
    expect(loads.limit).toBeLessThan(60);
    expect(loads.limit).toBeGreaterThan(58);
    expect(loads.value).toBeGreaterThan(60);
    const { value } = nth(loads.change, 0);
    // Board that the second board can still be loaded past: 165 (1 - cos 60 deg) = 82.5, and the seat and the gap.
    expect(value).toBeGreaterThan(82.5);
    expect(value).toBeLessThan(90);
    expect(loads.remedy).toMatch(/ deep, [\d.]+ mm less\.$/);
    const mended = reportOf({ book: { ...book, foldBack_deg: 60 }, pockets: { depth_mm: value } });
    expect(row(mended, 'pocketLoads')).toMatchObject({ verdict: 'fits', remedy: '', change: [] });
    expect(report.headline).toContain(', but the pockets are too deep to load');
  });

  test('that no depth mends ask for less hold, or how far the boards bend back', () => {
    const stiff = { book: { ...book, foldBack_deg: 10 } };
    const holds = row(reportOf({ ...stiff, pockets: { depth_mm: 20 } }), 'pocketHolds');
    expect(holds).toMatchObject({ verdict: 'fails', change: [] });
    expect(holds.remedy).toBe('No depth both holds 40 mm of board and lets the boards in: ask for less hold.');
    const loads = row(reportOf({ ...stiff, pockets: { depth_mm: 60 } }), 'pocketLoads');
    expect(loads).toMatchObject({ verdict: 'fails', change: [] });
    expect(loads.remedy).toMatch(/^The book hardly bends back\. /);
  });
});

describe('the headline', () => {
  test('of a cover that fits names both ends of the weight range and the gaps at head and tail', () => {
    const { head_mm } = reportOf().fit.thick;
    expect(head_mm).toBeGreaterThanOrEqual(1);
    expect(reportOf().headline).toMatch(
      /^Closes in 9\d of 100 at 1\.5 to 2 mm, fits in 9\d of 100; head and tail gap .* mm\.$/,
    );
    const one = reportOf({ leather: { outside: { min_mm: 2, max_mm: 2 } } }).headline;
    expect(one).toMatch(/^Closes in \d\d of 100 at 2 mm, fits in \d\d of 100; /);
  });

  test('names the thickness at which a short cover still closes, and how far it stays open at the other', () => {
    const short = (by: number) => reportOf({ pattern: { outsideWidth_mm: sized.width_mm - by } }).headline;
    expect(short(60)).toMatch(/^Does not go on at 2 mm: the wrap is [\d.]+ mm short; the boards do not go in\.$/);
    const over = (leather: object): string => {
      const { width_mm } = reportOf({ leather }).pattern.outside;
      const lines = Array.from(
        { length: 40 },
        (_, i) => reportOf({ leather, pattern: { outsideWidth_mm: width_mm - i / 10 } }).headline,
      );
      return lines.join('\n');
    };
    const range = over({ outside: { min_mm: 1.5, max_mm: 2 } });
    expect(range).toMatch(
      /^Closes in 5\d of 100 at 1\.5 to 2 mm, fits in [45]\d of 100; .*; close to the limit: closing/m,
    );
    expect(range).toMatch(
      /^Closes at 1\.5 mm but not at 2 mm: the wrap is [\d.]+ mm short; the book stays open \d+ degrees\.$/m,
    );
    const one = over({ outside: { min_mm: 2, max_mm: 2 } });
    expect(one).toMatch(/^Does not close at 2 mm: the wrap is [\d.]+ mm short; the book stays open \d+ degrees\.$/m);
  });

  test('tells an overrun at head and tail, every failure in turn, what is close and what is too loose', () => {
    const low = reportOf({ pattern: { outsideHeight_mm: sized.height_mm - 10 }, seam: { method: 'lacing' } });
    expect(low.headline).toMatch(/; head and tail overrun up to [\d.]+ mm/);
    expect(low.verdict).toBe('fails');
    expect(low.state).toBe('too small');
    const two = reportOf({ seam: { method: 'lacing', edgeMargin_mm: 1.9 }, pockets: { depth_mm: 30 } });
    expect(two.headline).toContain(', but the pockets are too shallow, and the edge margin is too narrow');
    const strained = reportOf({ leather: { outside: { min_mm: 2, max_mm: 2, strainLimit: 0.1 } } });
    expect(strained.headline).toMatch(/; close to the limit: .*grain at the folds\.$/);
    expect(strained.state).toBe('close fit');
    const loose = reportOf({ pattern: { outsideHeight_mm: sized.height_mm + 20 } });
    expect(loose.headline).toMatch(/; too loose: head [\d.]+ mm, tail [\d.]+ mm\.$/);
    expect(loose.state).toBe('too loose');
    expect(reportOf().state).toBe('fits');
  });
});
