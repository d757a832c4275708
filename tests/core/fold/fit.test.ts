import { describe, expect, test } from 'vitest';
import { fitReport } from '../../../src/core/fit.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import type { JobInput } from '../../../src/core/job/jobSchema.ts';
import { soundJob } from '../../jobArbitrary.ts';

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

  test('by more than pi z does not let the boards in at all', () => {
    expect(cut(-Math.PI * z + 0.01).staysOpen).not.toBeNull();
    expect(cut(-Math.PI * z - 0.01)).toMatchObject({ staysOpen: null, opensTo: null, seats: false });
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
    // The wrap needs 8 (phi / pi) - z phi more than closed; it has 1 mm.
    expect(fit.opensTo).toBeCloseTo(1 / (8 / Math.PI - (2 / Math.PI) * 2), 6);
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

  test('too shallow to hold, or too deep to load, fail with the depth that would do', () => {
    const check = (depth_mm: number, id: string) =>
      fitReport(soundJob({ ...base, book: { ...base.book, foldBack_deg: 45 }, pockets: { depth_mm } })).checks.find(
        (each) => each.id === id,
      )!;
    for (const [depth, id] of [
      [30, 'pocketHolds'],
      [120, 'pocketLoads'],
    ] as const) {
      const failed = check(depth, id);
      expect(failed.verdict).toBe('fails');
      expect(check(failed.change[0]!.value as number, id).verdict).toBe('fits');
    }
  });
});

describe('a turned end', () => {
  test('goes round the board edge: b + pi K t, with no seat and no margin at the fore-edge', () => {
    const { pieces, needs } = coverDesign(soundJob({ ...base, pockets: { construction: 'turned', depth_mm: 50 } }));
    const turn = 2.5 + 2 * 2; // board 2.5 and two thicknesses of 2 mm at K = 2/pi
    expect(needs.nominal.foreEdge).toMatchObject({ margin: 0, seat: 0, turn: expect.closeTo(turn, 9) });
    expect(pieces.outside.width).toBeCloseTo(330 + 4 + 2 * (50 + turn), 9);
    expect(pieces.pocket.count).toBe(0);
  });
});
