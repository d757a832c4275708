import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import type { Fit } from '../../../src/core/fold/coverFit.ts';
import { patched } from '../../../src/core/job/jobDocument.ts';
import type { JobInput } from '../../../src/core/job/jobSchema.ts';
import type { RangePoint } from '../../../src/core/leather/leatherModel.ts';
import type { CheckContext } from '../../../src/core/report/check.ts';
import { pocketHolds, pocketLoads } from '../../../src/core/report/checks/pocketChecks.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { radians } from '../../../src/core/units/radians.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { contextOf, designOf, doubtful, fitted } from './madeUp.ts';

/** Normal quantile of 0.95: Abramowitz and Stegun (1964), table 26.5. */
const Z95 = 1.644854;

/** Board that clears the mouth bent back by 60 degrees: 165 (1 - 1/2) = 82.5 mm. */
const book = { width_mm: 165, height_mm: 240, thickness_mm: 28, boardThickness_mm: 2.5, foldBack_deg: 60 };
const designWith = (rest: Partial<JobInput> = {}) => designOf({ book, pockets: { depth_mm: 50 }, ...rest });
const of = (
  lengths: Parameters<typeof doubtful>[1],
  rest: Partial<JobInput> = {},
  fits: Partial<Record<RangePoint, Partial<Fit>>> = {},
) => {
  const design = designWith(rest);
  return contextOf(fitted(design, fits), doubtful(design, lengths));
};
const pocket = (held: number): Partial<Fit> => ({
  pocket: { depth: mm(50), held: mm(held), loadingAngle: radians(1), loads: true },
});

describe('the hold of the pockets', () => {
  test('fits where the wished share of boards stays as far in as is wanted', () => {
    const fits = { thin: pocket(44), nominal: pocket(42), thick: pocket(40) };
    expect(pocketHolds(of({ held: [42, 1] }, {}, fits))).toEqual({
      verdict: 'fits',
      value: 42,
      limit: expect.closeTo(40 + Z95, 5),
      bound: 'atLeast',
      message: '40.0 to 44.0 mm of each board stays in its pocket; 40 mm is wanted.',
      remedy: '',
      change: [],
    });
    expect(pocketHolds(of({ held: [40 + Z95 + 1e-5, 1] })).verdict).toBe('fits');
    expect(pocketHolds(of({ held: [40 + Z95 - 1e-5, 1] })).verdict).toBe('tight');
    expect(pocketHolds(of({ held: [40, 1] })).verdict).toBe('tight');
    expect(pocketHolds(of({ held: [39.99, 1] })).verdict).toBe('fails');
  });

  test('that lacks asks for what is wanted and the doubt of it, up to the cut step', () => {
    // 50 + 40 + 1.645 - 36.3 = 55.345, up to half a millimetre.
    expect(pocketHolds(of({ held: [36.3, 1] }))).toMatchObject({
      verdict: 'fails',
      remedy: 'Make the pockets 55.5 mm deep, 5.5 mm more.',
      change: [{ path: 'pockets.depth_mm', value: 55.5 }],
    });
    expect(pocketHolds(of({ held: [36.3, 1] }, { work: { units: 'in' } })).remedy).toMatch(
      /^Make the pockets 2 3\/16 in/,
    );
  });

  test('of turned ends of a given outside is mended with the outside; of one that the tool sizes, alone', () => {
    const turned = { pockets: { construction: 'turned', depth_mm: 50 } } as const;
    const given = { ...turned, pattern: { outsideWidth_mm: 480 } };
    expect(pocketHolds(of({ held: [36, 1] }, given))).toMatchObject({
      remedy: expect.stringMatching(/ mm more, and the outside wider or narrower by twice that\.$/),
      change: [],
    });
    expect(pocketHolds(of({ held: [36, 1] }, turned)).change).toHaveLength(1);
    expect(pocketHolds(of({ held: [36, 1] }, { pattern: { outsideWidth_mm: 400 } })).change).toHaveLength(1);
  });
});

describe('slipping the boards in', () => {
  test('is judged by the angle that the middle case asks, and by the one that keeps the share', () => {
    // 82.5 mm may be covered; 10 of them are spare: acos(1 - 72.5 / 165) = 55.9 degrees.
    const degrees = (clear: number) => (Math.acos(1 - clear / 165) * 180) / Math.PI;
    expect(pocketLoads(of({ loading: [10, 2] }))).toEqual({
      verdict: 'fits',
      value: expect.closeTo(degrees(72.5), 9),
      limit: expect.closeTo(degrees(82.5 - 2 * Z95), 4),
      bound: 'atMost',
      message: 'The second board goes in with the boards bent back 55 degrees past flat; this book allows 60 degrees.',
    });
    expect(pocketLoads(of({ loading: [2 * Z95 + 1e-5, 2] })).verdict).toBe('fits');
    expect(pocketLoads(of({ loading: [2 * Z95 - 1e-5, 2] })).verdict).toBe('tight');
    expect(pocketLoads(of({ loading: [0, 2] })).verdict).toBe('tight');
    // acos(1 - 84.5 / 165) = 60.8 degrees, up.
    expect(pocketLoads(of({ loading: [-2, 2] }))).toMatchObject({
      verdict: 'fails',
      message: expect.stringContaining('bent back 61 degrees'),
    });
  });

  test('that lacks asks for a shallower pocket, down to the cut step, and no deeper than the board', () => {
    const at = (loading: number, depth_mm = 100) =>
      pocketLoads(of({ loading: [loading, 1], held: [depth_mm - 10, 1] }, { pockets: { depth_mm } }));
    // 100 - 2 - 1.645 = 96.355.
    expect(at(-2)).toMatchObject({
      remedy: 'Make the pockets 96 mm deep, 4.0 mm less.',
      change: [{ path: 'pockets.depth_mm', value: 96 }],
    });
    const { seat } = designWith().needs.nominal.foreEdge;
    expect(at(1.6, 300).change).toEqual([{ path: 'pockets.depth_mm', value: Math.floor(2 * (seat + 165)) / 2 }]);
  });

  test('has to hold the boards too, and to be a pocket at all', () => {
    const lacking = of({ held: [30, 1], loading: [-8, 1] });
    const stiff =
      'The book hardly bends back. Leave one pocket open at head or tail, ask for less hold, or check how far the boards bend back.';
    expect(pocketLoads(lacking)).toMatchObject({ verdict: 'fails', remedy: stiff });
    expect(pocketLoads(lacking)).not.toHaveProperty('change');
    expect(pocketHolds(lacking)).toMatchObject({
      verdict: 'fails',
      remedy: 'No depth both holds 40 mm of board and lets the boards in: ask for less hold.',
      change: [],
    });
    const flat = (loading: number) =>
      pocketLoads(of({ held: [70, 1], loading: [loading, 1] }, { pockets: { depth_mm: 50, hold_mm: 5 } }));
    // 50 - 43.3 - 1.645 = 5.055 mm is still one, and 4.955 is not.
    expect(flat(-43.3).change).toEqual([{ path: 'pockets.depth_mm', value: 5 }]);
    expect(flat(-43.4)).toMatchObject({ remedy: stiff });
  });
});

test('a depth that a row asks for makes that row fit', () => {
  const document = (depth_mm: number, foldBack_deg: number) => ({
    format: 'coverwright-job' as const,
    version: 2 as const,
    book: { ...book, foldBack_deg },
    leather: { outside: { min_mm: 1.5, max_mm: 2 } },
    seam: { method: 'lacing' as const },
    pockets: { depth_mm },
  });
  const tried = (ask: (context: CheckContext) => ReturnType<typeof pocketHolds>, job: ReturnType<typeof document>) => {
    const row = (of: object) => ask(contextOf(coverDesign(soundJob(of))));
    const { verdict, change } = row(job);
    expect(verdict).not.toBe('fits');
    expect(row(patched(job, defined(change))).verdict).toBe('fits');
  };
  tried(pocketHolds, document(30, 90));
  tried(pocketHolds, document(43, 90));
  tried(pocketLoads, document(100, 60));
  tried(pocketLoads, document(87, 60));
});
