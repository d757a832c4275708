import { describe, expect, test } from 'vitest';
import { type CoverDesign, coverDesign } from '../../src/core/fold/coverDesign.ts';
import { shareCovered } from '../../src/core/pattern/pocketDepth.ts';
import { designReport } from '../../src/core/report/designReport.ts';
import { defined } from '../defined.ts';
import { soundJob } from '../jobArbitrary.ts';

/**
 * A fact of the trade (common practice, no source): 6 x 8 1/2 x 1 in, margin 1/4 in. A pocket five inches deep from the cut edge
 * covers three quarters of the board ((5 - 1/2) / 6), the upper end of the trade's two thirds to three quarters; it loads and
 * holds. Share means board covered over board width.
 *
 * The fact names neither board nor leather; those below are ours.
 */
const INCH = 25.4;
const MARGIN = INCH / 4;
const TRADE_SHARE = (5 - 1 / 2) / 6;
const TRADE_CUT = 5 * INCH;

const coverWith = (pockets: object, boardThickness_mm: number, ounces: readonly [number, number]): CoverDesign =>
  coverDesign(
    soundJob({
      format: 'coverwright-job',
      version: 3,
      work: { units: 'in' },
      book: { width_mm: 6 * INCH, height_mm: 8.5 * INCH, thickness_mm: INCH, boardThickness_mm },
      leather: { outside: { min_mm: (ounces[0] * INCH) / 64, max_mm: (ounces[1] * INCH) / 64 } },
      seam: { method: 'lacing', edgeMargin_mm: MARGIN },
      pockets,
    }),
  );

const verdicts = (design: CoverDesign) =>
  designReport(design)
    .checks.filter(({ id }) => id === 'pocketHolds' || id === 'pocketLoads')
    .map(({ verdict }) => verdict);

/** Leather that the model takes for the pocket to rise from the seam over the board edge, where the trade takes 1/4 in, mm. */
const rise = ({ needs }: CoverDesign): number => defined(needs.thick.foreEdgeSeat).curve.length;

describe.each([
  [2, [2, 3]],
  [2.5, [3, 4]],
  [3, [4, 5]],
] as const)('a book of 6 x 8 1/2 x 1 in, margin 1/4 in, with boards of %d mm, in leather of %j oz', (board, ounces) => {
  test('in a pocket cut 5 in deep has three quarters of its board covered, but for how the leather rises over its edge', () => {
    expect(TRADE_SHARE).toBe(0.75);
    const { needs } = coverWith({}, board, ounces);
    const { seat } = needs.thick.foreEdge;
    const depth_mm = TRADE_CUT - MARGIN - rise(coverWith({}, board, ounces)) + seat;
    const design = coverWith({ depth_mm }, board, ounces);
    expect(design.pieces.pocket.width).toBeCloseTo(TRADE_CUT, 9);
    const share = shareCovered(design.pieces.pocketDepth, design.needs.thick);
    // The model has less leather there than the trade, so that more of the board is covered by what is left over.
    expect(share - TRADE_SHARE).toBeCloseTo((INCH / 4 - rise(design)) / (6 * INCH), 9);
    expect(INCH / 4 - rise(design)).toBeGreaterThan(0);
    expect(share).toBeLessThan(TRADE_SHARE + 0.025);
    expect(verdicts(design)).toEqual(['fits', 'fits']);
  });

  test('with three quarters asked for has pockets of 5 in, and at most 1/8 in less', () => {
    const design = coverWith({ share: 0.75 }, board, ounces);
    expect(TRADE_CUT - design.pieces.pocket.width).toBeGreaterThanOrEqual(0);
    expect(TRADE_CUT - design.pieces.pocket.width).toBeLessThanOrEqual(INCH / 8);
    expect(verdicts(design)).toEqual(['fits', 'fits']);
  });

  test('with nothing asked for has pockets between the two shares of the trade', () => {
    const design = coverWith({}, board, ounces);
    const share = shareCovered(design.pieces.pocketDepth, design.needs.thick);
    expect(share).toBeGreaterThanOrEqual(2 / 3);
    expect(share).toBeLessThanOrEqual(3 / 4);
    expect(verdicts(design)).toEqual(['fits', 'fits']);
  });
});
