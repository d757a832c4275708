import { describe, expect, test } from 'vitest';
import type { Fit } from '../../../src/core/fold/coverFit.ts';
import type { JobInput } from '../../../src/core/job/jobSchema.ts';
import type { RangePoint } from '../../../src/core/leather/leatherModel.ts';
import { pocketHolds, pocketLoads } from '../../../src/core/report/checks/pocketChecks.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { radians } from '../../../src/core/units/radians.ts';
import { contextOf, designOf, fitted } from './madeUp.ts';

const book = { width_mm: 165, height_mm: 240, thickness_mm: 28, boardThickness_mm: 2.5, foldBack_deg: 60 };
const of = (fits: Partial<Record<RangePoint, Partial<Fit>>>, rest: Partial<JobInput> = {}) =>
  contextOf(fitted(designOf({ book, pockets: { depth_mm: 50 }, ...rest }), fits));
const pocket = (held: number, loadingAngle = 1): Partial<Fit> => ({
  pocket: { depth: mm(50), held: mm(held), loadingAngle: radians(loadingAngle), loads: loadingAngle <= Math.PI / 3 },
});

describe('the hold of the pockets', () => {
  test('is the least over the weight range, and enough at its limit', () => {
    expect(pocketHolds(of({ thin: pocket(42), nominal: pocket(41), thick: pocket(40) }))).toEqual({
      verdict: 'fits',
      value: 40,
      limit: 40,
      bound: 'atLeast',
      message: '40.0 to 42.0 mm of each board stays in its pocket; 40 mm is wanted.',
      remedy: '',
      change: [],
    });
  });

  test('that lacks asks for a deeper pocket, up to the next half millimetre', () => {
    expect(pocketHolds(of({ nominal: pocket(36.3) }))).toMatchObject({
      verdict: 'fails',
      value: 36.3,
      remedy: 'Make the pockets 54 mm deep, 4.0 mm more.',
      change: [{ path: 'pockets.depth_mm', value: 54 }],
    });
  });

  test('of turned ends of a given outside is mended with the outside; of one that the tool sizes, alone', () => {
    const turned = { pockets: { construction: 'turned', depth_mm: 50 } } as const;
    const given = { ...turned, pattern: { outsideWidth_mm: 480 } };
    expect(pocketHolds(of({ thick: pocket(36) }, given))).toMatchObject({
      remedy: expect.stringMatching(/ mm more, and the outside wider or narrower by twice that\.$/),
      change: [],
    });
    expect(pocketHolds(of({ thick: pocket(36) }, turned)).change).toHaveLength(1);
    expect(pocketHolds(of({ thick: pocket(36) }, { pattern: { outsideWidth_mm: 400 } })).change).toHaveLength(1);
  });
});

describe('the depth to which the boards still go in', () => {
  // Board that clears the mouth bent back by 60 degrees: 165 (1 - 1/2) = 82.5 mm; with it the seat and the smaller gap.
  const seat = (rest: Partial<JobInput> = {}) => designOf({ book, ...rest }).needs.thick.foreEdge.seat;
  const most = (room: number) => Math.floor(room * 2 + 1e-9) / 2;
  const tight = (front: number, back: number) => ({
    thin: pocket(90),
    nominal: pocket(90),
    thick: { ...pocket(90, 1.2), foreEdge: { front: mm(front), back: mm(back) } },
  });

  test('is what the fold-back leaves, the seat and the smaller gap, down to half a millimetre', () => {
    const depth = (front: number, back: number) => pocketLoads(of(tight(front, back), { pockets: { depth_mm: 100 } }));
    expect(depth(2, 1.2).change).toEqual([{ path: 'pockets.depth_mm', value: most(seat() + 1.2 + 82.5) }]);
    expect(depth(2, -3).change).toEqual([{ path: 'pockets.depth_mm', value: most(seat() + 82.5) }]);
    expect(depth(2, 1.2).remedy).toMatch(/^Make the pockets [\d.]+ mm deep, [\d.]+ mm less\.$/);
  });

  test('is never more than the board', () => {
    const limp = { ...book, foldBack_deg: 90 };
    const found = pocketLoads(of(tight(3, 3), { book: limp, pockets: { depth_mm: 160 } }));
    expect(found.change).toEqual([{ path: 'pockets.depth_mm', value: most(seat({ book: limp }) + 165) }]);
  });

  test('is judged by the largest bend that any weight asks, rounded so that it agrees with the word', () => {
    expect(pocketLoads(of({ thin: pocket(50, 1.03) }))).toEqual({
      verdict: 'fits',
      value: expect.closeTo((1.03 * 180) / Math.PI, 9),
      limit: expect.closeTo(60, 9),
      bound: 'atMost',
      message: 'The second board goes in with the boards bent back 59 degrees past flat; this book allows 60 degrees.',
    });
    expect(pocketLoads(of({ thick: pocket(50, 1.06) })).message).toContain('bent back 61 degrees');
    expect(pocketLoads(of({ thick: pocket(50, 1.06) })).verdict).toBe('fails');
  });

  test('has to hold the boards too, and to be a pocket at all', () => {
    const remedy =
      'The book hardly bends back: leave one pocket open at head or tail, ask for less hold, or check how far the boards bend back.';
    // 165 (1 - cos 10 degrees) = 2.5 mm.
    const stiff = { book: { ...book, foldBack_deg: 10 } };
    const lacking = of({ thick: pocket(30, 1.2) }, stiff);
    expect(pocketLoads(lacking)).toMatchObject({ verdict: 'fails', remedy });
    expect(pocketLoads(lacking)).not.toHaveProperty('change');
    expect(pocketHolds(lacking)).toMatchObject({
      verdict: 'fails',
      remedy: 'No depth both holds 40 mm of board and lets the boards in: ask for less hold.',
      change: [],
    });
    const easy = { ...stiff, pockets: { depth_mm: 50, hold_mm: 5 } };
    const gap = (front: number): Partial<Fit> => ({
      ...pocket(54, 1.2),
      foreEdge: { front: mm(front), back: mm(front) },
    });
    const room = (front: number) =>
      pocketLoads(of({ thin: pocket(54, 1.2), nominal: pocket(54, 1.2), thick: gap(front) }, easy));
    const deep = most(seat(stiff) + 3 + 165 * (1 - Math.cos(Math.PI / 18)));
    expect(deep).toBeGreaterThanOrEqual(5);
    expect(room(3).change).toEqual([{ path: 'pockets.depth_mm', value: deep }]);
  });
});
