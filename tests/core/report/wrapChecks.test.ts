import { describe, expect, test } from 'vitest';
import type { Fit } from '../../../src/core/fold/coverFit.ts';
import type { JobInput } from '../../../src/core/job/jobSchema.ts';
import type { RangePoint } from '../../../src/core/leather/leatherModel.ts';
import { closes, edgeGap, ifBoardsGoIn, leastWrap, opens } from '../../../src/core/report/checks/wrapChecks.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { radians } from '../../../src/core/units/radians.ts';
import { contextOf, designOf, fitted, shortBy } from './madeUp.ts';

type Fits = Partial<Record<RangePoint, Partial<Fit>>>;

const sized = designOf();
const of = (fits: Fits = {}, design = sized) => contextOf(fitted(design, fits));
const closed = (thin: number, nominal: number, thick: number): Fits => ({
  thin: { closedSlack: mm(thin) },
  nominal: { closedSlack: mm(nominal) },
  thick: { closedSlack: mm(thick) },
});
const height = (gap: number): Partial<Fit> => ({ head: mm(gap), tail: mm(gap) });
const given = (rest: Partial<JobInput> = {}) =>
  designOf({ pattern: { outsideWidth_mm: 400, outsideHeight_mm: 270 }, ...rest });
const estimated = (rest: Partial<JobInput> = {}) =>
  designOf({
    book: { width_mm: 165, height_mm: 240, thickness_mm: 28, boardThickness_mm: 2.5, spine: { shape: 'rounded' } },
    ...rest,
  });

describe('closing', () => {
  test('fits where the least spare wrap is beyond what the measures may take at both fore-edges', () => {
    expect(closes(of(closed(6, 5, 1.6)))).toEqual({
      verdict: 'fits',
      value: 1.6,
      bound: 'atLeast',
      message: '1.6 to 6.0 mm of spare wrap over the weight range.',
    });
  });

  test('is close where they may take it all', () => {
    const flat = { flatSlack: mm(4) };
    const found = closes(of({ thick: { closedSlack: mm(1.5), ...flat } }));
    expect(found).toMatchObject({ verdict: 'tight', value: 1.5 });
    expect(found.message).toBe('1.5 to 4.0 mm of spare wrap over the weight range; the measures may take 1.6 mm away.');
  });

  test('that fails says how short it is, at which leather, and how far the book stays open', () => {
    expect(closes(of({ thick: shortBy(2) }))).toMatchObject({
      verdict: 'fails',
      value: -2,
      message: 'The wrap is 2.0 mm short at 2 mm: the book stays open 29 degrees, its fore-edges 12.0 mm apart.',
    });
    expect(closes(of({ thin: shortBy(2) })).message).toMatch(/^The wrap is 2\.0 mm short at 1\.5 mm: /);
    expect(closes(of({ thick: { ...shortBy(9), staysOpen: null } })).message).toBe(
      'The wrap is 9.0 mm short at 2 mm; even with the book flat the boards do not go in.',
    );
  });

  test('never fits a spine whose rise is an estimate, and asks for no size where only the measure helps', () => {
    expect(closes(of({}, estimated()))).toMatchObject({
      verdict: 'tight',
      message: expect.stringMatching(/; the measures may take 1\.6 mm away\.$/),
    });
    expect(closes(of({}, estimated()))).not.toHaveProperty('remedy');
    expect(closes(of({ thick: shortBy(2) }, estimated()))).toHaveProperty('remedy');
    expect(closes(of({ thick: shortBy(2) }, estimated())).verdict).toBe('fails');
  });

  test('is judged where the wrap has least to spare', () => {
    expect(leastWrap(fitted(sized, closed(4, 3, 2)))).toBe('thick');
    expect(leastWrap(fitted(sized, closed(2, 3, 4)))).toBe('thin');
    expect(leastWrap(fitted(sized, closed(4, 2, 2)))).toBe('nominal');
  });
});

describe('opening flat', () => {
  test('names the spare wrap and what each board moves', () => {
    expect(opens(of({ thick: { flatSlack: mm(2), boardTravel: mm(1) } }))).toEqual({
      verdict: 'fits',
      value: 2,
      bound: 'atLeast',
      message: 'Lies flat with 2.0 to 5.0 mm spare; each board moves 0.5 to 1.0 mm in its pocket.',
    });
    expect(opens(of({ nominal: { flatSlack: mm(0) } }))).toMatchObject({ verdict: 'tight', value: 0 });
    expect(opens(of({ nominal: { flatSlack: mm(0) } })).message).toMatch(/^Lies flat with 0\.0 to /);
  });

  test('that fails names the opening that the wrap allows, rounded down', () => {
    expect(opens(of({ thick: { flatSlack: mm(-2), opensTo: radians(2.5) } }))).toMatchObject({
      verdict: 'fails',
      message: 'The wrap is 2.0 mm short with the book flat: it opens to 143 degrees.',
    });
    expect(opens(of({ thick: { flatSlack: mm(-2), opensTo: null } })).message).toBe(
      'The wrap is 2.0 mm short with the book flat, and short closed too.',
    );
  });

  test('never fits a spine whose rise is an estimate', () => {
    expect(opens(of({}, estimated())).verdict).toBe('tight');
  });
});

describe('a gap', () => {
  test('at the fore-edges is half of the spare wrap', () => {
    expect(edgeGap('foreEdge')(of(closed(6, 5, 4)))).toEqual({
      verdict: 'fits',
      value: 2,
      bound: 'atLeast',
      message: 'Gap of 2.0 to 3.0 mm at each fore-edge; the measures may shift it by 0.8 mm.',
    });
    expect(edgeGap('head')(of({ thin: height(2), thick: height(1) }))).toMatchObject({
      verdict: 'fits',
      value: 1,
      message: 'Gap of 1.0 to 2.0 mm at the head; the measures may shift it by 0.2 mm.',
    });
    expect(edgeGap('tail')(of()).message).toMatch(/^Gap of 1\.5 mm at the tail; /);
  });

  test('is said to be shared evenly where the boards sit to one side', () => {
    const front = of({}, designOf({ seating: 'front' }));
    expect(edgeGap('foreEdge')(front).message).toMatch(
      /^Gap of 2\.0 mm at each fore-edge, shared evenly; the boards sit to the front; the measures/,
    );
    expect(edgeGap('head')(front).message).not.toMatch(/shared/);
  });

  test('under 0 is an overrun', () => {
    const over = of({ thick: { ...shortBy(1.1), ...height(-0.4) } });
    expect(edgeGap('foreEdge')(over)).toMatchObject({
      verdict: 'fails',
      value: -0.55,
      message: 'Overrun of 0.6 mm at each fore-edge in the heaviest leather.',
    });
    expect(edgeGap('head')(over)).toMatchObject({
      verdict: 'fails',
      message:
        'Overrun of 0.4 mm at the head in the heaviest leather: the board runs past the place where its edge comes to rest.',
    });
    expect(edgeGap('tail')(of({ thick: height(0) })).message).toMatch(/^Gap of 0\.0 to 1\.5 mm at the tail/);
  });

  test('over the loosest is too loose in the thinnest leather, unless the thickest fails', () => {
    expect(edgeGap('head')(of({ thin: height(4.5) }))).toMatchObject({
      verdict: 'loose',
      value: 4.5,
      limit: 4,
      bound: 'atMost',
      message: 'Gap of 1.5 to 4.5 mm at the head; over 4 mm it is too loose, and the cover shifts on the book.',
    });
    expect(edgeGap('head')(of({ thin: height(4) })).verdict).toBe('fits');
    expect(edgeGap('head')(of({ thin: height(4 + 1e-10) })).verdict).toBe('fits');
    expect(edgeGap('head')(of({ thin: height(4.5), thick: height(-1) })).verdict).toBe('fails');
  });

  test('that may go is printed with a shift no smaller than it, and never as nothing', () => {
    expect(edgeGap('head')(of({ thick: height(0.2) }))).toMatchObject({
      verdict: 'tight',
      message: 'Gap of 0.2 to 1.5 mm at the head; the measures may shift it by 0.3 mm.',
    });
    const shift = (error: number, units: 'mm' | 'in') => {
      const context = of({}, designOf({ work: { units } }));
      const head = { worst_mm: error, spread_mm: error, ruler_mm: error };
      return edgeGap('head')({ ...context, uncertainty: { ...context.uncertainty, head } }).message;
    };
    expect(shift(0.05, 'mm')).toMatch(/ by under 0\.1 mm\.$/);
    expect(shift(0.05, 'in')).toMatch(/ by under 1\/64 in\.$/);
    expect(shift(0, 'mm')).toMatch(/ by 0\.0 mm\.$/);
    expect(shift(0.5, 'in')).toMatch(/ by 1\/64 in\.$/);
  });

  test('of an estimated rise never fits at the fore-edges; head and tail may', () => {
    expect(edgeGap('foreEdge')(of({}, estimated())).verdict).toBe('tight');
    expect(edgeGap('head')(of({}, estimated())).verdict).toBe('fits');
  });
});

describe('the remedy for an edge', () => {
  test('of an outside sized by the tool is an ease', () => {
    // Ease 1 mm at the head: a gap of 0.1 lacks 0.15 of the 0.25 that the measures may take.
    const { ease } = sized.job;
    expect(ease.head_mm).toBe(1);
    expect(edgeGap('head')(of({ thick: height(0.1) }))).toMatchObject({
      remedy: 'Allow 1.5 mm of ease at the head: the measures may take 0.3 mm away.',
      change: [{ path: 'ease.head_mm', value: 1.5 }],
    });
    // 1 + 4 - 4.6 - 0.25 = 0.15 mm, down to a tenth.
    expect(edgeGap('tail')(of({ thin: height(4.6) }))).toMatchObject({
      remedy: 'Ask for 0.1 mm of ease at the tail, or allow a looser gap.',
      change: [{ path: 'ease.tail_mm', value: expect.closeTo(0.1, 9) }],
    });
  });

  test('at the fore-edges counts the flat wrap too, at head and tail not', () => {
    // Ease 1 mm, least gap -3 / 2 mm with the book flat: it lacks 0.8 + 1.5 mm.
    const short = of({ thick: { flatSlack: mm(-3), opensTo: radians(2) } });
    expect(sized.job.ease.foreEdge_mm).toBe(1);
    expect(opens(short)).toMatchObject({ verdict: 'fails', remedy: expect.stringMatching(/^No size is sure/) });
    const near = of({ thick: { flatSlack: mm(0.4), closedSlack: mm(1.4) } });
    // It lacks 0.6 of 0.8: 1.6 mm, up to a half.
    const change = [{ path: 'ease.foreEdge_mm', value: 2 }];
    expect(opens(near)).toMatchObject({ verdict: 'tight', change });
    expect(closes(near)).toMatchObject({ verdict: 'tight', change });
    const both = of({ thick: { flatSlack: mm(-3), opensTo: radians(2), ...height(0.1) } });
    expect(edgeGap('head')(both)).toMatchObject({ change: [{ path: 'ease.head_mm', value: 1.5 }] });
  });

  test('of a given outside is the one size that mends every edge that shares it', () => {
    // Width: 1 mm of ease wished where -1 mm is: 2 x 2 mm wider. Height: the head lacks 1.4 of 1 mm, the tail nothing.
    const short = of({ thick: { ...shortBy(2), head: mm(-0.4) } }, given());
    const wide = [{ path: 'pattern.outsideWidth_mm', value: 404 }];
    expect(closes(short)).toMatchObject({ change: wide, remedy: 'Cut the outside 404 mm wide, 4.0 mm more.' });
    expect(edgeGap('foreEdge')(short)).toMatchObject({ change: wide });
    const high = [{ path: 'pattern.outsideHeight_mm', value: 273 }];
    expect(edgeGap('head')(short)).toMatchObject({
      change: high,
      remedy: 'Cut outside and pockets 273 mm high, 3.0 mm more.',
    });
    // At the tail 1.5 mm of 4 would be 3 mm.
    expect(edgeGap('tail')(short)).not.toHaveProperty('remedy');
  });

  test('of a given outside that is too loose is smaller', () => {
    const thick = { closedSlack: mm(10), flatSlack: mm(10) };
    const wide = of({ thin: thick, nominal: thick, thick }, given());
    expect(edgeGap('foreEdge')(wide)).toMatchObject({
      change: [{ path: 'pattern.outsideWidth_mm', value: 392 }],
      remedy: 'Cut the outside 392 mm wide, 8.0 mm less.',
    });
  });

  test('is none where no size closes in the thickest leather and is not too loose in the thinnest', () => {
    const remedy =
      'No size is sure to close in the thickest leather and no looser than 3 mm in the thinnest: choose leather of a narrower weight range, or allow a looser gap.';
    const thin = { ...height(3.5), closedSlack: mm(8) };
    const loosest = { head_mm: 3, tail_mm: 5, foreEdge_mm: 3 };
    const gap = of({ thin, thick: { ...height(-1), ...shortBy(2) } }, given({ loosest }));
    expect(edgeGap('head')(gap)).toMatchObject({ remedy });
    expect(edgeGap('head')(gap)).not.toHaveProperty('change');
    const byTool = of(
      { thin: { ...thin, ...height(8) }, thick: { ...height(-1), ...shortBy(2) } },
      designOf({ loosest }),
    );
    expect(edgeGap('head')(byTool)).toMatchObject({ remedy });
    expect(closes(byTool)).toMatchObject({ remedy });
  });

  test('is none where the size is right as it is', () => {
    // As much as the measures may take is there, and no more fits under the loosest gap.
    const loosest = { foreEdge_mm: 1, head_mm: 4, tail_mm: 4 };
    const fit = { closedSlack: mm(1.2), flatSlack: mm(4) };
    const context = of({ thin: fit, nominal: fit, thick: { ...fit, closedSlack: mm(0) } }, given({ loosest }));
    expect(closes(context)).toMatchObject({ verdict: 'tight' });
    expect(closes(context).change ?? []).toEqual([]);
  });
});

describe('a row that is asked only where the boards go in', () => {
  const asked = ifBoardsGoIn(() => ({ verdict: 'fits', message: 'Asked.' }));
  const isAsked = (fits: Fits): boolean => asked(of(fits)).message === 'Asked.';

  test('needs room from seam to seam at some opening, and at head and tail, at every weight', () => {
    expect(isAsked({})).toBe(true);
    expect(isAsked({ thick: shortBy(2) })).toBe(true);
    expect(isAsked({ thin: { staysOpen: null } })).toBe(false);
    expect(isAsked({ thick: { staysOpen: null } })).toBe(false);
    expect(isAsked({ thick: { head: mm(-0.25) } })).toBe(true);
    expect(isAsked({ thick: { head: mm(-0.3) } })).toBe(false);
    expect(isAsked({ thin: { tail: mm(-0.3) } })).toBe(false);
    expect(asked(of({ thick: { staysOpen: null } }))).toEqual({
      verdict: 'none',
      state: 'does not apply',
      message: 'The boards do not go in, so this is not asked.',
    });
  });
});
