import { describe, expect, test } from 'vitest';
import { fitReport } from '../../../src/core/fitReport.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import type { JobInput } from '../../../src/core/job/jobSchema.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';

const base: JobInput = {
  format: 'coverwright-job',
  version: 1,
  book: { width_mm: 150, height_mm: 220, thickness_mm: 30, jointDip_mm: 0, measured: { error_mm: 0 } },
  leather: { outside: { min_mm: 2, max_mm: 2 } },
  ease: { foreEdge_mm: 0, head_mm: 0, tail_mm: 0 },
  pattern: { rounding_mm: 0 },
};

const exactWidth = fitReport(soundJob(base)).pattern.outside.width_mm;
const cut = (change: number, more: Partial<JobInput> = {}) =>
  coverDesign(soundJob({ ...base, ...more, pattern: { outsideWidth_mm: exactWidth + change } })).fits.nominal;

describe('a wrap short by s', () => {
  const z = (2 / Math.PI) * 2;

  test('leaves a parallel book without joint dip open by s / z', () => {
    for (const short of [0.1, 0.5, 1, 2, 3.5]) expect(cut(-short).staysOpen).toBeCloseTo(short / z, 9);
  });

  test('gapes at the fore-edge by the chord 2 W sin(phi / 2)', () => {
    expect(cut(-1).gape).toBeCloseTo(300 * Math.sin(1 / z / 2), 9);
    expect(cut(0.1).gape).toBe(0);
  });

  test.each([
    ['thicker', 60, 0.1, 111.945948],
    ['thinner', 24, -0.02, 115.238789],
  ])(
    'gapes by what the fore-edge %s than the spine leaves of it, 2 W (sin(w + phi / 2) - sin w)',
    (_, foreEdge, sine, gape) => {
      const wedge: JobInput = { ...base, book: { ...base.book, foreEdgeThickness_mm: foreEdge } };
      const { pieces } = coverDesign(soundJob(wedge));
      const pattern = { outsideWidth_mm: pieces.outside.width - 1 };
      const design = coverDesign(soundJob({ ...wedge, pattern }));
      expect(Math.sin(design.needs.nominal.book.wedge)).toBeCloseTo(sine, 12);
      // Boards of 150 mm about hinges 30 mm apart: 1 mm short is pi/4 of opening, and the tips move from closed to there.
      expect(design.fits.nominal.staysOpen).toBeCloseTo(Math.PI / 4, 9);
      expect(design.fits.nominal.gape).toBeCloseTo(gape, 5);
    },
  );

  test('by nothing closes, by a thousandth of a millimetre does not', () => {
    expect(cut(0)).toMatchObject({ closes: true, staysOpen: 0, gape: 0, seats: true });
    expect(cut(-0.001).closes).toBe(false);
  });

  test('by more than pi z does not let the boards in at all', () => {
    expect(cut(-Math.PI * z + 0.01).staysOpen).not.toBeNull();
    expect(cut(-Math.PI * z - 0.01)).toMatchObject({ staysOpen: null, opensTo: null, seats: false });
    // Flat, the fore-edges stand two widths apart.
    expect(cut(-Math.PI * z - 0.01).gape).toBeCloseTo(300, 9);
  });

  test('by just pi z lets the boards in with the book flat, and there alone', () => {
    const fit = cut(-Math.PI * z);
    expect(fit.staysOpen).toBeCloseTo(Math.PI, 9);
    expect(fit).toMatchObject({ opensTo: Math.PI, seats: true, closes: false });
  });
});

describe('a joint dip that outgrows the turning', () => {
  test('makes the flat wrap the longer one, and the pattern serves it', () => {
    const job = soundJob({ ...base, book: { ...base.book, jointDip_mm: 4 } });
    const { fits } = coverDesign(job);
    expect(fits.nominal.flatSlack).toBeCloseTo(0, 9);
    expect(fits.nominal.closedSlack).toBeCloseTo(8 - 4, 9);
    expect(fits.nominal.boardTravel).toBeCloseTo(2, 9);
  });

  test('stops a cover sized for the closed book short of flat, at the opening where the wrap runs out', () => {
    const fit = cut(1, { book: { ...base.book, jointDip_mm: 4 } });
    expect(fit.flatSlack).toBeCloseTo(1 - 4, 9);
    // The wrap needs 8 (phi / pi) - z phi more than closed; it has 1 mm.
    expect(fit.opensTo).toBeCloseTo(1 / (8 / Math.PI - (2 / Math.PI) * 2), 6);
    for (const opening of [0.1, 1, 3])
      expect(cut((opening * 4) / Math.PI, { book: { ...base.book, jointDip_mm: 4 } }).opensTo).toBeCloseTo(opening, 6);
  });

  test('lets a cover that is just long enough closed be closed, and opened no further', () => {
    const fit = cut(0, { book: { ...base.book, jointDip_mm: 4 } });
    expect(fit).toMatchObject({ closes: true, staysOpen: 0, gape: 0, seats: true, opensTo: expect.closeTo(0, 6) });
  });
});

describe('head and tail', () => {
  /** A cover cut so much higher than the book needs, with eases of 3 and 1 mm wished, or the other way round. */
  const spare = (height: number, [head_mm, tail_mm] = [3, 1]) => {
    const ease = { foreEdge_mm: 0, head_mm, tail_mm };
    const needed = coverDesign(soundJob(base)).pieces.outside.height;
    const fit = coverDesign(soundJob({ ...base, ease, pattern: { outsideHeight_mm: needed + height } })).fits.nominal;
    return [fit.head, fit.tail].map((gap) => Math.round(gap * 1e9) / 1e9);
  };

  test('share spare height so that the eases keep their difference', () => {
    expect(spare(4)).toEqual([3, 1]);
    expect(spare(4, [1, 3])).toEqual([1, 3]);
    expect(spare(10)).toEqual([6, 4]);
    expect(spare(2.001)).toEqual([2.0005, 0.0005]);
  });

  test('share alike what is less than that difference, and an overrun, so that neither is short for the other', () => {
    expect(spare(1.999)).toEqual([0.9995, 0.9995]);
    expect(spare(1, [1, 3])).toEqual([0.5, 0.5]);
    expect(spare(3, [5, 1])).toEqual([1.5, 1.5]);
    expect(spare(-1)).toEqual([-0.5, -0.5]);
    expect(spare(-10, [1, 3])).toEqual([-5, -5]);
  });

  test('let the boards in without any spare height, and not where the book is higher', () => {
    const at = (height: number) => {
      const needed = coverDesign(soundJob(base)).pieces.outside.height;
      return coverDesign(soundJob({ ...base, pattern: { outsideHeight_mm: needed + height } })).fits.nominal.seats;
    };
    expect([at(0), at(-0.001)]).toEqual([true, false]);
  });
});

describe('seating', () => {
  test.each([
    ['centred', 2, 2],
    ['front', 0, 4],
    ['back', 4, 0],
    ['spine', 0, 0],
  ] as const)('%s shares 4 mm of spare wrap as %f and %f', (seating, front, back) => {
    const { foreEdge } = cut(4, { seating });
    expect(foreEdge.front).toBeCloseTo(front, 9);
    expect(foreEdge.back).toBeCloseTo(back, 9);
  });

  test('hides no overrun at the spine', () => {
    expect(cut(-4, { seating: 'spine' }).foreEdge.front).toBeCloseTo(-2, 9);
  });
});

describe('pockets', () => {
  test('as deep as the board is wide load at a right angle of fold-back, half as deep at 60 degrees', () => {
    const angle = (depth_mm: number) =>
      fitReport(soundJob({ ...base, pockets: { depth_mm } })).fit.nominal.pockets.loadingAngle_deg;
    const { seat } = coverDesign(soundJob(base)).needs.nominal.foreEdge;
    expect(angle(150 + seat)).toBeCloseTo(90, 9);
    expect(angle(75 + seat)).toBeCloseTo(60, 9);
  });

  test('hold their depth less seat, gap and what the opening draws out', () => {
    const { needs, fits } = coverDesign(soundJob({ ...base, pockets: { depth_mm: 60 } }));
    const { foreEdge, closed, flat } = needs.nominal;
    expect(fits.nominal.pocket.held).toBeCloseTo(60 - foreEdge.seat - (closed.length - flat.length) / 2, 9);
  });

  test('pushed to one side hold the other board by 4 mm less, and load by the board that sits deepest', () => {
    const { seat } = coverDesign(soundJob(base)).needs.nominal.foreEdge;
    for (const seating of ['front', 'back'] as const) {
      const fit = coverDesign(
        soundJob({
          ...base,
          seating,
          pockets: { depth_mm: 75 + seat },
          pattern: { outsideWidth_mm: exactWidth + 4 },
        }),
      ).fits.nominal;
      // One board has a gap of 4 mm, the other none: 75 mm of it lie in the pocket, half its width, so 60 degrees.
      expect(fit.pocket.loadingAngle).toBeCloseTo(Math.PI / 3, 9);
      // The turning of the closed wrap, pi z = 4 mm, draws each board out by half of it.
      expect(fit.boardTravel).toBeCloseTo(2, 9);
      expect(fit.pocket.held).toBeCloseTo(75 - 4 - 2, 9);
    }
  });

  test('hold no more board for an overrun, a flat wrap that is the longer, or a depth beyond the board', () => {
    const held = (depth: number, change: number, jointDip_mm = 0) => {
      const book = { ...base.book, jointDip_mm };
      const pattern = { outsideWidth_mm: exactWidth + change };
      const { seat } = coverDesign(soundJob(base)).needs.nominal.foreEdge;
      return coverDesign(soundJob({ ...base, book, pattern, pockets: { depth_mm: depth + seat } })).fits.nominal.pocket;
    };
    expect(held(75, -2).held).toBeCloseTo(75 - 2, 9);
    expect(held(75, -2).loadingAngle).toBeCloseTo(Math.PI / 3, 9);
    expect(held(75, 0, 4).held).toBeCloseTo(75, 9);
    expect(held(200, 0).held).toBe(150);
    expect(held(3, 4).held).toBe(0);
    // Gaps of 5 mm are more than the pocket is deep: it holds nothing, and nothing needs to be bent back.
    expect(held(3, 10)).toMatchObject({ held: 0, loadingAngle: 0, loads: true });
    expect(held(400, 0).loadingAngle).toBeCloseTo(Math.PI, 9);
  });

  test('load where the fold-back needed is just what the book allows', () => {
    const { seat } = coverDesign(soundJob(base)).needs.nominal.foreEdge;
    const loads = (foldBack_deg: number): boolean =>
      coverDesign(soundJob({ ...base, book: { ...base.book, foldBack_deg }, pockets: { depth_mm: 75 + seat } })).fits
        .nominal.pocket.loads;
    expect([loads(60 - 1e-4), loads(60)]).toEqual([false, true]);
  });

  test('too shallow to hold, or too deep to load, fail with the depth that would do', () => {
    const check = (depth_mm: number, id: string) =>
      defined(
        fitReport(soundJob({ ...base, book: { ...base.book, foldBack_deg: 55 }, pockets: { depth_mm } })).checks.find(
          (each) => each.id === id,
        ),
      );
    for (const [depth, id] of [
      [30, 'pocketHolds'],
      [120, 'pocketLoads'],
    ] as const) {
      const failed = check(depth, id);
      expect(failed.verdict).toBe('fails');
      expect(check(nth(failed.change, 0).value as number, id).verdict).toBe('fits');
    }
  });
});

describe('a turned end', () => {
  test('goes round the board edge: b + pi K t, with no seat and no margin at the fore-edge', () => {
    const { pieces, needs, fits } = coverDesign(
      soundJob({ ...base, pockets: { construction: 'turned', depth_mm: 50 } }),
    );
    expect(fits.nominal.closedSlack).toBeCloseTo(0, 9);
    expect(fits.nominal.pocket.held).toBeCloseTo(50 - 2, 9); // less what opening draws out, half of pi z
    const turn = 2.5 + 2 * 2; // board 2.5 and two thicknesses of 2 mm at K = 2/pi
    expect(needs.nominal.foreEdge).toMatchObject({ margin: 0, seat: 0, turn: expect.closeTo(turn, 9) });
    expect(pieces.outside.width).toBeCloseTo(330 + 4 + 2 * (50 + turn), 9);
    expect(pieces.pocket.count).toBe(0);
  });
});
