import { describe, expect, test } from 'vitest';
import type { Allowance } from '../../../src/core/allowance/allowances.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import type { JobInput } from '../../../src/core/job/jobSchema.ts';
import { soundJob } from '../../jobArbitrary.ts';

/**
 * 150 x 220 x 30 mm, boards 2.5 mm, leather 2 mm with its neutral line at 2/pi and bend ratio 0.2, margin 4 mm. By hand:
 * half the folds pi (4/pi) / 2 = 2; R = 1.4, so the fore-edge seat is 2.8 sin(acos(1 - 2.5/2.8)) = 2.783882, and at head
 * and tail, with half the board each, the run is 2.331845 and L - d = 2.8 acos(1 - 1.25/2.8) - 2.331845 = 0.423774.
 */
const base: JobInput = {
  format: 'coverwright-job',
  version: 1,
  book: { width_mm: 150, height_mm: 220, thickness_mm: 30, boardThickness_mm: 2.5, jointDip_mm: 0 },
  leather: { outside: { min_mm: 2, max_mm: 2, neutral: 2 / Math.PI, bendRatio: 0.2 } },
  seam: { method: 'stitching', edgeMargin_mm: 4 },
  ease: { foreEdge_mm: 1, head_mm: 2, tail_mm: 3 },
  pattern: { rounding_mm: 0 },
};
const SEAT = 2.783882;
const RUN = 2.331845;
const DRAWN_IN = 0.423774;

const designOf = (change: object = {}) => coverDesign(soundJob({ ...base, ...change }));
const expectParts = ({ parts, total }: Allowance, lengths: readonly number[]): void => {
  expect(parts.map(({ length }) => length)).toEqual(lengths.map((length) => expect.closeTo(length, 5)));
  expect(total).toBeCloseTo(
    lengths.reduce((sum, length) => sum + length, 0),
    5,
  );
};

describe('the allowances', () => {
  test('of a plain book are margin, seat, folds and ease; margin, run, what the curve draws in and ease', () => {
    const { allowances, outside } = designOf().pieces;
    expectParts(allowances.foreEdge, [4, SEAT, 2, 1]);
    expectParts(allowances.head, [4, RUN, DRAWN_IN, 2]);
    expectParts(allowances.tail, [4, RUN, DRAWN_IN, 3]);
    expect(allowances.head.parts.map(({ isGiven = false }) => isGiven)).toEqual([true, false, false, true]);
    expect(outside.width).toBeCloseTo(330 + 2 * 9.783882, 5);
    expect(outside.height).toBeCloseTo(220 + 2 * 6.755619 + 5, 5);
  });

  test('share what brings the size up to the next step between the two edges', () => {
    const { allowances, outside } = designOf({ pattern: { rounding_mm: 0.5 } }).pieces;
    // 349.567764 goes up to 350, 238.511238 to 239.
    expect([outside.width, outside.height]).toEqual([350, 239]);
    expectParts(allowances.foreEdge, [4, SEAT, 2, 1, 0.216118]);
    expectParts(allowances.head, [4, RUN, DRAWN_IN, 2, 0.244381]);
    expectParts(allowances.tail, [4, RUN, DRAWN_IN, 3, 0.244381]);
  });

  test('make up for leather that shrinks or grows, half at each edge, and then for the step', () => {
    const made = { width: 349.567764, height: 238.511238 };
    const making = { changeAcross: -0.02, changeAlong: 0.01 };
    const [across, along] = [made.width / 0.98, made.height / 1.01];
    const exact = designOf({ making }).pieces;
    expectParts(exact.allowances.foreEdge, [4, SEAT, 2, 1, (across - made.width) / 2]);
    expectParts(exact.allowances.tail, [4, RUN, DRAWN_IN, 3, (along - made.height) / 2]);
    expect([exact.outside.width, exact.outside.height]).toEqual([expect.closeTo(across, 5), expect.closeTo(along, 5)]);
    // 356.7018 goes up to 357, 236.1497 to 236.5.
    const cut = designOf({ making, pattern: { rounding_mm: 0.5 } }).pieces;
    expect([cut.outside.width, cut.outside.height]).toEqual([357, 236.5]);
    expectParts(cut.allowances.foreEdge, [4, SEAT, 2, 1, (across - made.width) / 2, (357 - across) / 2]);
    expectParts(cut.allowances.head, [4, RUN, DRAWN_IN, 2, (along - made.height) / 2, (236.5 - along) / 2]);
  });

  test('hold half a turn round a lining of 1 mm, pi/2', () => {
    const lining = { min_mm: 1, max_mm: 1 };
    expectParts(designOf({ leather: { ...base.leather, lining } }).pieces.allowances.foreEdge, [
      4,
      SEAT,
      2,
      Math.PI / 2,
      1,
    ]);
  });

  test('count leather and lining as they are skived at the folds, and leave what they count as spare wrap of 2 mm', () => {
    const leather = {
      outside: { ...base.leather.outside, foldThickness_mm: 1.2 },
      lining: { min_mm: 1, max_mm: 1, foldThickness_mm: 0.4 },
    };
    const { pieces, fits } = designOf({ leather });
    // Folds pi (2/pi) 1.2 / 2 and pi 0.4 / 2; an ease of 1 mm at either side.
    expectParts(pieces.allowances.foreEdge, [4, SEAT, 1.2, 0.2 * Math.PI, 1]);
    expect(fits.thick.closedSlack).toBeCloseTo(2, 9);
  });

  test('lose what an edge of radius 3 mm saves, 2 r tan(pi/4) - r pi/2', () => {
    const book = { ...base.book, cornerRadius_mm: 3 };
    expectParts(designOf({ book }).pieces.allowances.foreEdge, [4, SEAT, 2, -(6 - (3 * Math.PI) / 2), 1]);
  });

  test('grow by half of what lying flat asks for beyond the closed book, 8 mm of joints less 4 mm of folds', () => {
    const book = { ...base.book, jointDip_mm: 4 };
    expectParts(designOf({ book }).pieces.allowances.foreEdge, [4, SEAT, 2, 2, 1]);
  });

  test('of a turned end are its depth and its way round the board, 2.5 + pi (2/pi) 2', () => {
    const pockets = { construction: 'turned', depth_mm: 50 };
    expectParts(designOf({ pockets }).pieces.allowances.foreEdge, [50, 6.5, 2, 1]);
  });

  test('are those of the thick end of the weight range at every edge', () => {
    const leather = { outside: { ...base.leather.outside, min_mm: 1.2 } };
    const { allowances } = designOf({ leather }).pieces;
    expectParts(allowances.foreEdge, [4, SEAT, 2, 1]);
    expectParts(allowances.head, [4, RUN, DRAWN_IN, 2]);
  });

  test('at head and tail are those of the thin end where that asks for more, 3.097284 with a pocket of 0.6 mm', () => {
    const leather = { ...base.leather, pocket: { min_mm: 0.6, max_mm: 1.4, bendRatio: 0.2 } };
    const { outside } = designOf({ leather }).pieces;
    expect(outside.height).toBeCloseTo(220 + 2 * (4 + 3.097284) + 5, 5);
  });
});
