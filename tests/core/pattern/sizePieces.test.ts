import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { needsOverRange } from '../../../src/core/allowance/needs.ts';
import type { Job, JobInput } from '../../../src/core/job/jobSchema.ts';
import { type Pieces, piecesAt, seatToSeat } from '../../../src/core/pattern/pieces.ts';
import { depthSteps, pocketDepths } from '../../../src/core/pattern/pocketDepth.ts';
import { seamHoles } from '../../../src/core/pattern/seamHoles.ts';
import { sizePieces } from '../../../src/core/pattern/sizePieces.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';
import { constructedJob } from '../../property/constructionArbitrary.ts';

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
  return piecesAt(job, needsOverRange(job), mm(depth));
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

  test('take a width and a height that the job gives', () => {
    expect(at(50, { pattern: { outsideWidth_mm: 301, outsideHeight_mm: 202 } }).outside).toEqual({
      width: 301,
      height: 202,
    });
  });

  test('have a centre lining that is tucked 10 mm under both mouths', () => {
    // The lining's way round the closed book is 330 + pi 2/pi; in the pockets 50 - seat - 1 of each board is covered.
    expect(defined(at(50).lining).width).toBeCloseTo(332 - 2 * (49 - SEAT) + 20, 5);
    expect(defined(at(50, rounded).lining).width).toBe(260);
    // With joints that open by 4 mm each the way over the flat book is the longer one.
    expect(defined(at(50, { book: { ...base.book, jointDip_mm: 4 } }).lining).width).toBeCloseTo(
      338 - 2 * (49 - SEAT) + 20,
      5,
    );
  });

  test('have a full lining like the outside, and between turned ends one that lies between the turns', () => {
    const full = { construction: { lining: 'full' } };
    const { lining, outside } = at(50, full);
    expect(lining).toEqual(outside);
    // 330 + 4 + pi for the folds and 2 of ease, the ends and turns of 56.5 mm taken off again.
    expect(defined(at(50, { ...full, ...turned }).lining).width).toBeCloseTo(336 + Math.PI, 9);
    // 452.14 is cut as 452.5; of a width of 452.3 mm 339.3 are left, cut down to 339.
    expect(defined(at(50, { ...full, ...turned, ...rounded }).lining).width).toBe(339.5);
    const given = { pattern: { rounding_mm: 0.5, outsideWidth_mm: 452.3 } };
    expect(defined(at(50, { ...full, ...turned, ...given }).lining).width).toBe(339);
    expect(defined(at(50, { ...full, ...turned, pattern: { outsideWidth_mm: 110 } }).lining).width).toBeCloseTo(0, 9);
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
      return seatToSeat(piecesAt(job, needs, mm(50)), needs.thick, job.pockets.construction === 'turned');
    };
    expect(between({})).toBeCloseTo(400 - 2 * (4 + SEAT), 5);
    expect(between({ pockets: { construction: 'turned', depth_mm: 50 } })).toBeCloseTo(400 - 2 * (50 + 6.5), 9);
  });
});

describe('the depth that the tool chooses for pockets', () => {
  const depths = (change: object = {}) => {
    const job = jobOf({ leather: { outside: base.leather.outside }, ...change });
    return pocketDepths(job, needsOverRange(job).thick);
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

  test('is a multiple of 0.5 or 0.1 mm, or of the cut step in a job worked in inches', () => {
    expect(depthSteps(jobOf())).toEqual([0.5, 0.1]);
    expect(depthSteps(jobOf({ work: { units: 'in' } }))).toEqual([1.5875]);
  });
});

/** Least distance of a place from the holes at the tail, as the seam is drawn, in pitches; NaN where there is no row. */
function clearance(job: Job, pieces: Pieces, x: number): number {
  const { rows } = seamHoles({ job, pieces, needs: needsOverRange(job) });
  const row = rows.find(({ side }) => side === 'tail');
  if (row === undefined) return Number.NaN;
  const next = rows.find(({ side }) => side === 'backForeEdge')?.holes[0];
  const holes = [...row.holes, ...(next === undefined ? [] : [next])];
  return Math.min(...holes.map(({ at }) => Math.abs(at[0] - x))) / row.pitch;
}

const mouthOf = (job: Job, pieces: Pieces): number => {
  const { steps } = seamHoles({ job, pieces, needs: needsOverRange(job) });
  return steps.find(({ layer }) => layer === 'frontPocket' || layer === 'frontTurnedEnd')?.x ?? Number.NaN;
};

/**
 * Stitched jobs with square corners: there x is the way along the seam, and 0.3 of the pitch has to be clear. The pitch is
 * wide, so that a row has few numbers of holes to choose from.
 */
const stitchedJob = constructedJob.map((document) =>
  soundJob({
    ...document,
    seam: { ...document.seam, method: 'stitching', style: 'saddle', pitch_mm: 3 * document.seam.pitch_mm },
    construction: { ...document.construction, corners: 'square' },
  }),
);

const isClear = (job: Job, pieces: Pieces): boolean => clearance(job, pieces, mouthOf(job, pieces)) >= 0.3 - 1e-9;

describe('pocket mouths end between two holes', () => {
  test('at the usual depth if they can, else at the nearest depth on the coarse grid, else on the fine one', () => {
    let moved = 0;
    checkLaw(
      fc.property(stitchedJob, (job) => {
        const needs = needsOverRange(job);
        const found = sizePieces(job, needs).pocketDepth;
        const { usual, least, most } = pocketDepths(job, needs.thick);
        if (mouthOf(job, piecesAt(job, needs, usual)) > piecesAt(job, needs, usual).outside.width / 2) {
          expect(found).toBe(usual);
          return;
        }
        const wide = Math.max(job.seam.pitch_mm, 1.5);
        const grid = (step: number, reach: number): number[] =>
          Array.from({ length: Math.floor(reach / step + 1e-9) }, (_, i) => (i + 1) * step).flatMap((by) => [
            usual + by,
            usual - by,
          ]);
        const tried = [...grid(0.5, wide), ...grid(0.1, Math.max(job.seam.pitch_mm, 0.3))].filter(
          (d) => d >= least && d <= most,
        );
        const expected = [usual, ...tried].find((depth) => isClear(job, piecesAt(job, needs, mm(depth)))) ?? usual;
        if (expected !== usual) moved++;
        expect(found).toBeCloseTo(expected, 9);
      }),
      { cases: 60 },
    );
    expect(moved).toBeGreaterThan(0);
  });

  test('but a depth that the job gives is taken as it is', () => {
    for (let depth_mm = 60; depth_mm < 64; depth_mm += 0.25) {
      const job = jobOf({ pockets: { depth_mm } });
      expect(sizePieces(job, needsOverRange(job)).pocketDepth).toBe(depth_mm);
    }
  });
});

describe('a lining that finds no place on its steps', () => {
  // Slits of 6 mm at a pitch of 5 mm: a layer may end only within 0.05 of a pitch from the middle between two of them, and
  // a cut step of 10 mm moves each end of the lining by a whole pitch.
  test.each([
    ['its own width without a step', 0],
    ['the cut step', 10],
  ])('ends in the middle between two holes, %s', (_, cutStep_mm) => {
    const book = { width_mm: 174, height_mm: 120, thickness_mm: 20, boardThickness_mm: 2.5 };
    const leather = { outside: { min_mm: 2, max_mm: 2 }, lining: { min_mm: 1, max_mm: 1 } };
    const seam = { method: 'lacing', edgeMargin_mm: 4, pitch_mm: 5 };
    const construction = { slitWidth_mm: 6, slitAngle_deg: 0 };
    const { format, version } = base;
    const job = soundJob({ format, version, work: { cutStep_mm }, book, leather, seam, construction });
    const pieces = sizePieces(job, needsOverRange(job));
    const between = clearance(job, pieces, (pieces.outside.width - defined(pieces.lining).width) / 2);
    if (cutStep_mm === 0) expect(between).toBeGreaterThanOrEqual(0.45 - 1e-9);
    else expect([between, defined(pieces.lining).width]).toEqual([expect.closeTo(0.5, 9), expect.closeTo(220.5, 9)]);
  });
});

describe('a lining ends between two holes', () => {
  test.each(['centre', 'full'] as const)('%s, as near to its own width as the cut step allows', (lining) => {
    let moved = 0;
    checkLaw(
      fc.property(stitchedJob, (drawn) => {
        const leather = { ...drawn.leather, lining: drawn.leather.lining ?? drawn.leather.pocket };
        const construction = lining === 'full' ? 'turned' : drawn.pockets.construction;
        const job = {
          ...drawn,
          leather,
          construction: { ...drawn.construction, lining },
          pockets: { ...drawn.pockets, construction },
        };
        const needs = needsOverRange(job);
        const pieces = sizePieces(job, needs);
        const own = defined(piecesAt(job, needs, pieces.pocketDepth).lining).width;
        const { width } = pieces.outside;
        const half = width / 2;
        if (own >= width || mouthOf(job, pieces) > half || !(clearance(job, pieces, half) >= 0)) {
          expect(defined(pieces.lining).width).toBe(own);
          return;
        }
        const fits = (by: number): boolean => clearance(job, pieces, (width - own - by) / 2) >= 0.3 - 1e-9;
        const wider = Array.from({ length: Math.ceil(4 * job.seam.pitch_mm) }, (_, i) => i * 0.5);
        const narrower = Array.from({ length: Math.ceil(2 * own) }, (_, i) => -0.5 * i);
        const by = [...(lining === 'centre' ? wider.filter((w) => w < 2 * job.seam.pitch_mm) : []), ...narrower].find(
          fits,
        );
        expect(by).toBeDefined();
        if (by !== 0) moved++;
        expect(defined(pieces.lining).width).toBeCloseTo(own + by!, 9);
      }),
      { cases: 60 },
    );
    expect(moved).toBeGreaterThan(0);
  });
});
