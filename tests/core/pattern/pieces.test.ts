import { describe, expect, test } from 'vitest';
import { needsOverRange } from '../../../src/core/allowance/needs.ts';
import type { Job, JobInput } from '../../../src/core/job/jobSchema.ts';
import { type Pieces, piecesAt, seatToSeat } from '../../../src/core/pattern/pieces.ts';
import { depthAt, depthSteps, pocketDepths, shareCovered } from '../../../src/core/pattern/pocketDepth.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { easeOf } from '../../easeOf.ts';
import { soundJob } from '../../jobArbitrary.ts';

/**
 * 150 x 220 x 30 mm, boards b = 2.5 mm, leather t = 2 mm with K = 2/pi and bend ratio 0.2, lining 1 mm with K = 2/pi, margin
 * 4 mm, ease 1 mm. By hand: R = 1.4 mm; seat 2.8 sin a and curve 2.8 a with a = acos(1 - 2.5/2.8); a turn takes 2.5 + 4 mm.
 */
const base: JobInput = {
  format: 'coverwright-job',
  version: 1,
  book: { width_mm: 150, height_mm: 220, thickness_mm: 30, boardThickness_mm: 2.5, jointDip_mm: 0, foldBack_deg: 180 },
  leather: {
    outside: { min_mm: 2, max_mm: 2, neutral: 2 / Math.PI, bendRatio: 0.2 },
    lining: { min_mm: 1, max_mm: 1, neutral: 2 / Math.PI },
  },
  seam: { method: 'stitching', edgeMargin_mm: 4, pitch_mm: 4 },
  ease: { foreEdge_mm: 1, head_mm: 1, tail_mm: 1 },
  pockets: { hold_mm: 40 },
  pattern: { rounding_mm: 0 },
};
const SEAT = 2.783882;
const CURVE = 4.097652;

const jobOf = (change: object = {}): Job => soundJob({ ...base, ...change });
const at = (depth: number, change: object = {}): Pieces => {
  const job = jobOf(change);
  return piecesAt(job, needsOverRange(job), mm(depth), easeOf(job, needsOverRange(job)));
};

describe('pieces for pockets 50 mm deep', () => {
  const turned = { pockets: { construction: 'turned', depth_mm: 50 } };
  const rounded = { pattern: { rounding_mm: 0.5 } };

  test('have a pocket of margin, curve and depth beyond the seat, as high as the outside', () => {
    const { pocket, outside, pocketDepth } = at(50);
    expect(pocket.width).toBeCloseTo(4 + CURVE + 50 - SEAT, 5);
    expect(pocket).toMatchObject({ count: 2, height: outside.height });
    expect(pocketDepth).toBe(50);
    // 55.313770 goes up to 55.5.
    expect(at(50, rounded).pocket.width).toBe(55.5);
  });

  test('have no pocket where the ends are turned: an end is as deep as the pocket would be', () => {
    expect(at(50, turned).pocket).toMatchObject({ count: 0, width: 50 });
  });

  test('have an outside of the book and twice what each end and edge takes', () => {
    // An end: margin, seat, ease, half the folds pi (2 K + 1). Head and tail: margin, ease and the curve over half a board.
    const { outside } = at(50);
    expect(outside.width).toBeCloseTo(330 + 2 * (4 + SEAT + 1) + 4 + Math.PI, 5);
    expect(outside.height).toBeCloseTo(220 + 2 * (4 + 1 + 2.8 * Math.acos(1 - 1.25 / 2.8)), 9);
  });

  test('take a width and a height that the job gives', () => {
    expect(at(50, { pattern: { outsideWidth_mm: 301, outsideHeight_mm: 202 } }).outside).toEqual({
      width: 301,
      height: 202,
    });
  });

  test('have a centre lining that is tucked 10 mm under both mouths', () => {
    // The lining's way round the closed book is 330 + pi 2/pi; in the pockets 50 - seat - 1 of each board is covered.
    expect(at(50).lining!.width).toBeCloseTo(332 - 2 * (49 - SEAT) + 20, 5);
    expect(at(50, rounded).lining!.width).toBe(260);
    // Pockets that overlap leave nothing to line.
    expect(at(190).lining!.width).toBe(0);
    // With joints that open by 4 mm each the way over the flat book is the longer one.
    expect(at(50, { book: { ...base.book, jointDip_mm: 4 } }).lining!.width).toBeCloseTo(338 - 2 * (49 - SEAT) + 20, 5);
  });

  test('have a full lining like the outside, and between turned ends one that lies between the turns', () => {
    const full = { construction: { lining: 'full' } };
    const { lining, outside } = at(50, full);
    expect(lining).toEqual(outside);
    // 330 + 4 + pi for the folds and 2 of ease, the ends and turns of 56.5 mm taken off again.
    expect(at(50, { ...full, ...turned }).lining!.width).toBeCloseTo(336 + Math.PI, 9);
    // 452.14 is cut as 452.5; of a width of 452.3 mm 339.3 are left, cut down to 339.
    expect(at(50, { ...full, ...turned, ...rounded }).lining!.width).toBe(339.5);
    const given = { pattern: { rounding_mm: 0.5, outsideWidth_mm: 452.3 } };
    expect(at(50, { ...full, ...turned, ...given }).lining!.width).toBe(339);
    expect(at(50, { ...full, ...turned, pattern: { outsideWidth_mm: 110 } }).lining!.width).toBeCloseTo(0, 9);
  });

  test('have no lining where the job has none', () => {
    expect(at(50, { leather: { outside: base.leather.outside } }).lining).toBeNull();
  });
});

describe('the two board edges may seat', () => {
  test('as far apart as the outside is wide, less margin and seat at both ends, or turned end and turn', () => {
    const between = (change: object) => {
      const job = jobOf({ pattern: { outsideWidth_mm: 400 }, ...change });
      const needs = needsOverRange(job);
      return seatToSeat(piecesAt(job, needs, mm(50), easeOf(job, needs)), needs.thick);
    };
    expect(between({})).toBeCloseTo(400 - 2 * (4 + SEAT), 5);
    expect(between({ pockets: { construction: 'turned', depth_mm: 50 } })).toBeCloseTo(400 - 2 * (50 + 6.5), 9);
  });
});

describe('the depth that the tool chooses for pockets', () => {
  const depths = (change: object = {}) => {
    const job = jobOf({ leather: { outside: base.leather.outside }, ...change });
    return pocketDepths(job, needsOverRange(job).thick, easeOf(job, needsOverRange(job)));
  };
  const closeTo = (least: number, usual: number, most: number) => ({
    least: expect.closeTo(least, 5),
    usual: expect.closeTo(usual, 9),
    most: expect.closeTo(most, 5),
  });
  const foldBack = (foldBack_deg: number) => ({ book: { ...base.book, foldBack_deg } });
  const hold = (hold_mm: number) => ({ pockets: { hold_mm } });

  test('is half a board beyond the seat, up to the next half mm; it holds 40 mm after a travel of 2 mm, and ends with the board', () => {
    expect(depths()).toEqual(closeTo(SEAT + 1 + 2 + 40, 78, SEAT + 150));
  });

  test('leaves room for half a cut step', () => {
    expect(depths({ pattern: { rounding_mm: 2 } }).least).toBeCloseTo(SEAT + 1 + 1 + 2 + 40, 5);
  });

  test('counts no travel where the flat book needs more than the closed one', () => {
    expect(depths({ book: { ...base.book, jointDip_mm: 4 } }).least).toBeCloseTo(SEAT + 1 + 40, 5);
  });

  test('lets the second board be loaded: the first folds back by 45 degrees, 150 (1 - cos 45)', () => {
    const loading = SEAT + 150 * (1 - Math.SQRT1_2);
    expect(depths(foldBack(45))).toEqual(closeTo(SEAT + 43, 47, loading));
  });

  test('holds the board even where it cannot be loaded, but is never deeper than the board', () => {
    expect(depths({ ...foldBack(45), ...hold(60) }).usual).toBeCloseTo(66, 9);
    expect(depths(hold(200)).usual).toBeCloseTo(152.5, 9);
  });

  test('is a share of the board beyond the seat where the job asks for one, and two thirds in a new job', () => {
    const asked = (pockets: object, version = 3) => depths({ version, pockets }).usual;
    expect(asked({})).toBeCloseTo(103, 9);
    expect(asked({ share: 0.75 })).toBeCloseTo(115.5, 9);
    expect(asked({ share: 0.5 })).toBeCloseTo(78, 9);
    // 40 mm are to be held, so a fifth of the board is too little.
    expect(asked({ share: 0.2 })).toBeCloseTo(46, 9);
  });

  test('covers the board beyond the seat: a share gives a depth on the step, and a depth its share', () => {
    const job = jobOf({ leather: { outside: base.leather.outside } });
    const { thick } = needsOverRange(job);
    expect(depthAt(job, thick, 0.25)).toBeCloseTo(40.5, 9);
    expect(depthAt(job, thick, 1)).toBeCloseTo(152.5, 9);
    expect(shareCovered(SEAT + 60, thick)).toBeCloseTo(0.4, 7);
  });

  test('is a multiple of 0.5 or 0.1 mm, or of the cut step in a job worked in inches', () => {
    expect(depthSteps(jobOf())).toEqual([0.5, 0.1]);
    expect(depthSteps(jobOf({ work: { units: 'in' } }))).toEqual([1.5875]);
  });
});
