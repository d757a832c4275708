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
    expect(limit).toBe(40);
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
    expect(loads.limit).toBeCloseTo(60, 9);
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
    expect(loads.remedy).toMatch(/^The book hardly bends back: /);
  });
});

describe('the headline', () => {
  test('of a cover that fits names both ends of the weight range and the gaps at head and tail', () => {
    const { head_mm } = reportOf().fit.thick;
    expect(head_mm).toBeGreaterThanOrEqual(1);
    expect(reportOf().headline).toMatch(/^Closes at 1\.5 mm and at 2 mm; head and tail gap .* mm\.$/);
    expect(reportOf({ leather: { outside: { min_mm: 2, max_mm: 2 } } }).headline).toMatch(/^Closes at 2 mm; /);
  });

  test('names the thickness at which a short cover still closes, and how far it stays open at the other', () => {
    const short = (by: number) => reportOf({ pattern: { outsideWidth_mm: sized.width_mm - by } }).headline;
    expect(short(60)).toMatch(/^Does not go on at 2 mm: the wrap is [\d.]+ mm short and the boards do not go in\.$/);
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
      /^Closes at 1\.5 mm, may not close at 2 mm: the wrap is [\d.]+ mm short, less than the measures may be off; /m,
    );
    expect(range).toMatch(
      /^Closes at 1\.5 mm but not at 2 mm: the wrap is [\d.]+ mm short and the book stays open \d+ degrees\.$/m,
    );
    const one = over({ outside: { min_mm: 2, max_mm: 2 } });
    expect(one).toMatch(/^May not close at 2 mm: the wrap is /m);
    expect(one).toMatch(/^Does not close at 2 mm: the wrap is [\d.]+ mm short and the book stays open \d+ degrees\.$/m);
  });

  test('tells an overrun at head and tail, every failure in turn, what is close and what is too loose', () => {
    const low = reportOf({ pattern: { outsideHeight_mm: sized.height_mm - 10 }, seam: { method: 'lacing' } });
    expect(low.headline).toMatch(/; head and tail overrun up to [\d.]+ mm/);
    expect(low.verdict).toBe('fails');
    expect(low.state).toBe('too small');
    const two = reportOf({ seam: { method: 'lacing', edgeMargin_mm: 1.9 }, pockets: { depth_mm: 30 } });
    expect(two.headline).toContain(', but the pockets are too shallow, and the edge margin is too narrow');
    const strained = reportOf({ leather: { outside: { min_mm: 2, max_mm: 2, strainLimit: 0.1 } } });
    expect(strained.headline).toMatch(/; close to the limit: grain at the folds\.$/);
    expect(strained.state).toBe('close fit');
    const loose = reportOf({ pattern: { outsideHeight_mm: sized.height_mm + 20 } });
    expect(loose.headline).toMatch(/; too loose: head up to [\d.]+ mm, tail up to [\d.]+ mm\.$/);
    expect(loose.state).toBe('too loose');
    expect(reportOf().state).toBe('fits');
  });
});

describe('what the measures may be off by', () => {
  test('of a flat book is a whole error of width and half of thickness, and half an error at head and tail', () => {
    const { uncertainty } = reportOf();
    // Closed wrap 2 W + T: shares (2 e) / 2 and e / 2, e = 0.5.
    expect(uncertainty.foreEdge.worst_mm).toBeCloseTo(0.75, 6);
    expect(uncertainty.foreEdge.spread_mm).toBeCloseTo(Math.hypot(0.5, 0.25), 6);
    expect(uncertainty.foreEdge.ruler_mm).toBeCloseTo(0.75, 6);
    expect(uncertainty.head).toEqual({ worst_mm: 0.25, spread_mm: 0.25, ruler_mm: 0.25 });
    expect(uncertainty.tail).toEqual(uncertainty.head);
  });

  test('of a rounded spine takes in its rise, either way as far as there is room', () => {
    const foreEdge = (rise_mm: number | null) =>
      reportOf({ book: { ...book, spine: { shape: 'rounded', rise_mm } } }).uncertainty.foreEdge;
    /** Arc of rise e over the chord T: its radius is (T^2 / 4 + e^2) / 2 e. */
    const arc = (chord: number, rise: number): number => {
      const radius = (chord ** 2 / 4 + rise ** 2) / (2 * rise);
      return 4 * Math.atan((2 * rise) / chord) * radius;
    };
    // Half of what the closed wrap 2 W + arc grows by; the bends stay.
    const fromThickness = (rise: number): number => (arc(28.5, rise) - arc(28, rise)) / 2;
    const fromRise = (from: number, to: number): number => Math.abs(arc(28, to) - arc(28, from)) / 2;
    for (const [rise, farthest] of [
      [8, 8.5],
      [0.2, 0.7],
      // At its limit of half the thickness it can only have been read too large.
      [14, 13.5],
    ] as const) {
      const shares = [0.5, fromThickness(rise), fromRise(rise, farthest)] as const;
      const found = foreEdge(rise);
      expect([rise, found.worst_mm]).toEqual([rise, expect.closeTo(shares[0] + shares[1] + shares[2], 3)]);
      expect(found.spread_mm).toBeCloseTo(Math.hypot(...shares), 3);
      expect(found.ruler_mm).toBe(found.worst_mm);
    }
    // Nobody measured it: a third of a circle, which grows with the thickness; its rise of 0.2887 T may be off by 0.16 T.
    const usual = (28 * Math.tan(Math.PI / 6)) / 2;
    const measured = 0.5 + (arc(28.5, (28.5 / 28) * usual) - arc(28, usual)) / 2;
    const estimated = foreEdge(null);
    expect(estimated.worst_mm).toBeCloseTo(measured + fromRise(usual, usual + 0.16 * 28), 3);
    expect(estimated.ruler_mm).toBeCloseTo(measured + fromRise(usual, usual + 0.5), 3);
  });
});
