import { describe, expect, test } from 'vitest';
import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import type { Fit } from '../../../src/core/fold/coverFit.ts';
import { patched } from '../../../src/core/job/jobDocument.ts';
import type { RangePoint } from '../../../src/core/leather/leatherModel.ts';
import type { Answer } from '../../../src/core/report/check.ts';
import { closes, edgeGap, ifBoardsGoIn, leastWrap, opens } from '../../../src/core/report/checks/wrapChecks.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { radians } from '../../../src/core/units/radians.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';
import { contextOf, designOf, doubtful, fitted, shortBy } from './madeUp.ts';

type Fits = Partial<Record<RangePoint, Partial<Fit>>>;
type Lengths = Parameters<typeof doubtful>[1];

/** Ease left to the tool, so that no row has a remedy. */
const open = designOf({ version: 2 });
const of = (lengths: Lengths = {}, fits: Fits = {}, design = open) =>
  contextOf(fitted(design, fits), doubtful(design, lengths));
const closed = (thin: number, nominal: number, thick: number): Fits => ({
  thin: { closedSlack: mm(thin) },
  nominal: { closedSlack: mm(nominal) },
  thick: { closedSlack: mm(thick) },
});
const height = (gap: number): Partial<Fit> => ({ head: mm(gap), tail: mm(gap) });

/** Normal quantile of 0.95: Abramowitz and Stegun (1964), table 26.5. */
const Z95 = 1.644854;

describe('closing', () => {
  test('fits from the spare wrap on that closes in the wished share, and says the chance', () => {
    // Phi(2) = 0.9772.
    expect(closes(of({ closed: [4, 2] }, closed(6, 4, 2)))).toEqual({
      verdict: 'fits',
      value: 4,
      limit: expect.closeTo(2 * Z95, 5),
      bound: 'atLeast',
      message: 'Spare wrap of 2.0 to 6.0 mm over the weight range; it closes in 97 of 100.',
    });
    const at = (mean: number) => closes(of({ closed: [mean, 2] }));
    expect(at(2 * Z95 + 1e-5).verdict).toBe('fits');
    expect(at(2 * Z95 - 1e-5)).toMatchObject({ verdict: 'tight', message: expect.stringContaining('in 94 of 100.') });
    expect(at(0)).toMatchObject({ verdict: 'tight', value: 0, message: expect.stringContaining('in 50 of 100.') });
    expect(at(-1e-5)).toMatchObject({ verdict: 'fails', message: expect.stringContaining('in 49 of 100.') });
  });

  test('without doubt fits at nothing to spare', () => {
    expect(closes(of({ closed: [0, 0] }))).toMatchObject({
      verdict: 'fits',
      limit: 0,
      message: expect.stringContaining('over 99 of 100'),
    });
    expect(closes(of({ closed: [-0.01, 0] }))).toMatchObject({
      verdict: 'fails',
      message: expect.stringContaining('fewer than 1 of 100'),
    });
  });

  test('in leather that may not close says how short it is, at which, and how far the book stays open', () => {
    // Phi(-1) = 0.1587.
    expect(closes(of({ closed: [-1, 1] }, { thick: shortBy(2) }))).toMatchObject({
      verdict: 'fails',
      message:
        'The wrap is 2.0 mm short at 2 mm: the book stays open 29 degrees, its fore-edges 12.0 mm apart. It closes in 15 of 100.',
    });
    expect(closes(of({}, { thin: shortBy(2) })).message).toMatch(/^The wrap is 2\.0 mm short at 1\.5 mm: /);
    expect(closes(of({}, { thick: { ...shortBy(9), staysOpen: null } })).message).toMatch(
      /^The wrap is 9\.0 mm short at 2 mm; even with the book flat the boards do not go in\. It closes /,
    );
  });

  test('names the weight at which the wrap has least to spare', () => {
    expect(leastWrap(fitted(open, closed(4, 3, 2)))).toBe('thick');
    expect(leastWrap(fitted(open, closed(2, 3, 4)))).toBe('thin');
    expect(leastWrap(fitted(open, closed(4, 2, 2)))).toBe('nominal');
  });
});

describe('opening flat', () => {
  test('is judged by the spare wrap with the book flat, and names what each board moves', () => {
    expect(opens(of({ flat: [2, 1] }, { thick: { flatSlack: mm(2), boardTravel: mm(1) } }))).toEqual({
      verdict: 'fits',
      value: 2,
      limit: expect.closeTo(Z95, 5),
      bound: 'atLeast',
      message:
        'Flat it has 2.0 to 5.0 mm to spare; each board moves 0.5 to 1.0 mm in its pocket; it lies flat in 97 of 100.',
    });
    expect(opens(of({ flat: [1.64, 1] })).verdict).toBe('tight');
    expect(opens(of({ flat: [-0.1, 1] })).verdict).toBe('fails');
  });

  test('that is short names the opening that the wrap allows, rounded down', () => {
    expect(opens(of({}, { thick: { flatSlack: mm(-2), opensTo: radians(2.5) } })).message).toMatch(
      /^The wrap is 2\.0 mm short with the book flat: it opens to 143 degrees; it lies flat in /,
    );
    expect(opens(of({}, { thick: { flatSlack: mm(-2), opensTo: null } })).message).toMatch(
      /^The wrap is 2\.0 mm short with the book flat, and short closed too; /,
    );
  });
});

describe('a gap', () => {
  test('up to half the loosest is judged by whether there is room', () => {
    // Loosest 4 mm: up to 2 mm the limit is the room, Z u with u = 1/2 of the wrap's.
    const found = edgeGap('foreEdge')(of({ closed: [4, 2] }, closed(6, 4, 2)));
    expect(found).toMatchObject({ verdict: 'fits', value: 2, bound: 'atLeast', limit: expect.closeTo(Z95, 5) });
    expect(found.message).toBe('Gap of 1.0 to 3.0 mm at each fore-edge; there is room in 97 of 100.');
    expect(edgeGap('head')(of({ height: [3.2, 2] }))).toMatchObject({ verdict: 'tight', value: 1.6 });
    expect(edgeGap('head')(of({ height: [-0.2, 2] }))).toMatchObject({ verdict: 'fails', value: -0.1 });
  });

  test('over half the loosest is judged by whether it is too much', () => {
    const at = (mean: number) => edgeGap('tail')(of({ height: [2 * mean, 2] }));
    expect(at(2)).toMatchObject({ bound: 'atLeast', verdict: 'fits' });
    expect(at(2.1)).toMatchObject({ bound: 'atMost', verdict: 'fits', limit: expect.closeTo(4 - Z95, 5) });
    expect(at(4 - Z95 + 1e-4)).toMatchObject({ verdict: 'tight' });
    expect(at(4)).toMatchObject({ verdict: 'tight' });
    expect(at(4.01)).toMatchObject({ verdict: 'loose', value: 4.01, bound: 'atMost' });
    // Phi(-0.01) = 0.496.
    expect(at(4.01).message).toBe(
      'Gap of 1.5 mm at the tail; it is at most 4 mm in 49 of 100; looser than that the cover shifts on the book.',
    );
    expect(at(3.9).message).toMatch(/; it is at most 4 mm in 53 of 100\.$/);
  });

  test('that is wished smaller than the one opposite is too small only once both have no room', () => {
    // The wish shifts the gap at the head by -1 mm; the boards go in while head and tail together have room.
    const at = (mean: number) => edgeGap('head')(of({ height: [mean, 2], lean: -1 }));
    expect(at(3.4)).toMatchObject({ verdict: 'fits', value: 0.7, bound: 'atLeast' });
    expect(at(3.4).limit).toBeCloseTo(Z95 - 1, 5);
    expect(at(3.4).message).toMatch(/; there is room in 95 of 100\.$/);
    expect(at(3.2)).toMatchObject({ verdict: 'tight' });
    // From where the loosest gap, 4 mm, is nearer than no room.
    expect(at(5.1)).toMatchObject({ bound: 'atMost', limit: expect.closeTo(4 - Z95, 5) });
  });

  test('is judged by the loosest gap of its own edge', () => {
    const design = designOf({ version: 2, loosest: { head_mm: 1, tail_mm: 6, foreEdge_mm: 3 } });
    const at = (edge: 'head' | 'tail' | 'foreEdge') =>
      edgeGap(edge)(of({ height: [4, 0], closed: [4, 0] }, {}, design));
    expect(at('head')).toMatchObject({ verdict: 'loose', limit: 1 });
    expect(at('tail')).toMatchObject({ verdict: 'fits', limit: 0 });
    expect(at('foreEdge')).toMatchObject({ verdict: 'fits', limit: 3 });
  });

  test('is said to be shared evenly where the boards sit to one side', () => {
    const front = of({}, {}, designOf({ version: 2, seating: 'front' }));
    expect(edgeGap('foreEdge')(front).message).toMatch(
      /^Gap of 2\.0 mm at each fore-edge, shared evenly; the boards sit to the front; there is/,
    );
    expect(edgeGap('head')(front).message).not.toMatch(/shared/);
  });

  test('under 0 at the thick end of the leather is named an overrun', () => {
    const over = of({}, { thick: { ...shortBy(1.1), ...height(-0.4) } });
    expect(edgeGap('foreEdge')(over).message).toMatch(
      /^Overrun of 0\.6 mm at each fore-edge at the thick end of the leather; /,
    );
    expect(edgeGap('head')(over).message).toMatch(
      /^Overrun of 0\.4 mm at the head at the thick end of the leather: the board runs past the place where its edge comes to rest; /,
    );
    expect(edgeGap('tail')(of({}, { thick: height(0) })).message).toMatch(/^Gap of 0\.0 to 1\.5 mm at the tail; /);
  });
});

/** A design with its own doubt, and the design once the remedies of its rows are followed. */
const said = (design: CoverDesign, ask: (context: ReturnType<typeof contextOf>) => Answer) => ask(contextOf(design));
const rest = (outside: object = { min_mm: 1.5, max_mm: 2 }, more: object = {}) => ({
  format: 'coverwright-job' as const,
  version: 2 as const,
  book: { width_mm: 165, height_mm: 240, thickness_mm: 28, boardThickness_mm: 2.5 },
  leather: { outside },
  seam: { method: 'lacing' as const },
  ...more,
});
const worked = (document: object): CoverDesign => coverDesign(soundJob(document));

describe('the remedy for an edge', () => {
  test('of a typed ease is to leave it open, with the size that the tool then cuts', () => {
    const document = rest(undefined, { ease: { foreEdge_mm: 0, head_mm: 0, tail_mm: 0 } });
    const design = worked(document);
    const best = worked(rest()).pieces.outside;
    const wide = said(design, closes);
    expect(wide).toMatchObject({ verdict: 'tight', change: [{ path: 'ease.foreEdge_mm', value: null }] });
    expect(wide.remedy).toMatch(new RegExp(`^Leave the ease open: cut the outside ${best.width} mm wide, .* more\\.$`));
    const high = said(design, edgeGap('head'));
    expect(high.remedy).toContain(`cut outside and pockets ${best.height} mm high`);
    expect(high.change).toEqual(['head', 'tail'].map((edge) => ({ path: `ease.${edge}_mm`, value: null })));
    const mended = worked(patched(document, [...defined(wide.change), ...defined(high.change)]));
    expect(mended.pieces.outside).toEqual(best);
    for (const ask of [closes, opens, edgeGap('foreEdge'), edgeGap('head'), edgeGap('tail')])
      expect(said(mended, ask).verdict).toBe('fits');
  });

  test('of a given size is the size that the tool would cut, larger or smaller, the same for every row that shares it', () => {
    const best = worked(rest()).pieces.outside;
    for (const by of [-9, -3, 14]) {
      const [width, height] = [best.width + by, best.height + by];
      const design = worked(rest(undefined, { pattern: { outsideWidth_mm: width, outsideHeight_mm: height } }));
      const [wide, high] = [said(design, edgeGap('foreEdge')), said(design, edgeGap('head'))];
      const words = `${Math.abs(by)}.0 mm ${by < 0 ? 'more' : 'less'}.`;
      expect(wide).toMatchObject({
        remedy: `Cut the outside ${best.width} mm wide, ${words}`,
        change: [{ path: 'pattern.outsideWidth_mm', value: best.width }],
      });
      expect(high).toMatchObject({
        remedy: `Cut outside and pockets ${best.height} mm high, ${words}`,
        change: [{ path: 'pattern.outsideHeight_mm', value: best.height }],
      });
      expect(said(design, edgeGap('tail')).change).toEqual(high.change);
      if (by < 0) expect(said(design, closes).change).toEqual(wide.change);
    }
  });

  test('is none where the tool chose the size, whatever the verdict', () => {
    for (const mean of [-1, 0.1, 20]) {
      const context = contextOf(open, doubtful(open, { closed: [mean, 1], height: [mean, 1] }));
      expect(closes(context)).not.toHaveProperty('remedy');
      for (const edge of ['foreEdge', 'head', 'tail'] as const)
        expect(edgeGap(edge)(context)).not.toHaveProperty('remedy');
    }
  });

  test('is none where the row fits, nor where the size is that one already', () => {
    const best = worked(rest()).pieces.outside;
    const design = worked(rest(undefined, { pattern: { outsideWidth_mm: best.width } }));
    expect(said(design, closes)).not.toHaveProperty('remedy');
    expect(closes(contextOf(design, doubtful(design, { closed: [0.1, 1] })))).not.toHaveProperty('remedy');
    expect(closes(contextOf(design, doubtful(design, { closed: [-1, 1] })))).not.toHaveProperty('remedy');
  });

  test('of a row that is close is none where no size reaches the share; of one that fails it is the best size', () => {
    const cased = { making: { state: 'cased' } };
    const best = worked(rest(undefined, cased)).pieces;
    expect(best.ease.reaches).toBe(false);
    const given = (by: number) =>
      said(worked(rest(undefined, { ...cased, pattern: { outsideWidth_mm: best.outside.width + by } })), closes);
    expect(given(-1)).toMatchObject({ verdict: 'tight' });
    expect(given(-1)).not.toHaveProperty('remedy');
    expect(given(-12)).toMatchObject({
      verdict: 'fails',
      change: [{ path: 'pattern.outsideWidth_mm', value: best.outside.width }],
    });
  });

  test('of turned ends keeps their depth, and has the room of the best size', () => {
    const turned = { pockets: { construction: 'turned', depth_mm: 60 } };
    const best = worked(rest(undefined, turned));
    const given = rest(undefined, { ...turned, pattern: { outsideWidth_mm: best.pieces.outside.width - 8 } });
    const design = worked(given);
    const { verdict, change } = said(design, closes);
    expect(verdict).not.toBe('fits');
    const mended = worked(patched(given, defined(change)));
    expect(mended.pieces.pocketDepth).toBeCloseTo(design.pieces.pocketDepth, 9);
    expect(said(mended, closes)).toMatchObject({ verdict: 'fits', value: said(best, closes).value });
  });

  test('of turned ends whose depth follows from the ease leaves that depth, in leather that shrinks too', () => {
    for (const changeAcross of [0, -0.02]) {
      const design = worked(
        rest(undefined, {
          // A narrow board: the pocket has to hold 40 mm of it beyond the ease.
          book: { width_mm: 80, height_mm: 120, thickness_mm: 28, boardThickness_mm: 2.5 },
          pockets: { construction: 'turned' },
          ease: { foreEdge_mm: 10 },
          making: { changeAcross },
          pattern: { outsideWidth_mm: 340 },
        }),
      );
      const sized = design.bestPieces();
      const { pocketDepth } = design.pieces;
      expect(pocketDepth).toBeGreaterThan(sized.pocketDepth + 5);
      // A depth is a made length.
      const room = (width: number, depth: number) => width - (2 * depth) / (1 + changeAcross);
      const cut = Number(nth(defined(said(design, edgeGap('foreEdge')).change), 0).value);
      expect(room(cut, pocketDepth)).toBeCloseTo(room(sized.outside.width, sized.pocketDepth), 9);
    }
  });
});

describe('a row that is asked only where the boards go in', () => {
  const asked = ifBoardsGoIn(() => ({ verdict: 'fits', message: 'Asked.' }));
  const isAsked = (lengths: Lengths, fits: Fits = {}): boolean => asked(of(lengths, fits)).message === 'Asked.';

  test('needs room from seam to seam at some opening, and at head and tail, at the middle weight', () => {
    expect(isAsked({})).toBe(true);
    expect(isAsked({}, { thick: { staysOpen: null } })).toBe(true);
    expect(isAsked({}, { nominal: { staysOpen: null } })).toBe(false);
    expect(isAsked({ height: [0, 1] })).toBe(true);
    expect(isAsked({ height: [-0.01, 1] })).toBe(false);
    expect(isAsked({ height: [1, 1], lean: 0.6 })).toBe(false);
    expect(isAsked({ height: [1, 1], lean: -0.6 })).toBe(false);
    expect(asked(of({ height: [-1, 1] }))).toEqual({
      verdict: 'none',
      state: 'does not apply',
      message: 'The boards do not go in, so this is not asked.',
    });
  });
});
