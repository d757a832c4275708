import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { needsOverRange } from '../../../src/core/allowance/needs.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { type Pieces, piecesAt } from '../../../src/core/pattern/pieces.ts';
import { depthSteps, pocketDepths } from '../../../src/core/pattern/pocketDepth.ts';
import { seamHoles } from '../../../src/core/pattern/seamHoles.ts';
import { sizePieces } from '../../../src/core/pattern/sizePieces.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { defined } from '../../defined.ts';
import { easeOf } from '../../easeOf.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';
import { constructedJob } from '../../property/constructionArbitrary.ts';
import { DEPTH, LINED, plainSource } from './plainSource.ts';

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
        const found = sizePieces(job, needs, easeOf(job, needs)).pocketDepth;
        const { usual, least, most } = pocketDepths(job, needs.thick, easeOf(job, needs));
        if (
          mouthOf(job, piecesAt(job, needs, usual, easeOf(job, needs))) >
          piecesAt(job, needs, usual, easeOf(job, needs)).outside.width / 2
        ) {
          expect(found).toBe(usual);
          return;
        }
        const two = 2 * job.seam.pitch_mm;
        const grid = (step: number, reach: number): number[] =>
          Array.from({ length: Math.floor(reach / step + 1e-9) }, (_, i) => (i + 1) * step).flatMap((by) => [
            usual + by,
            usual - by,
          ]);
        const tried = [...grid(0.5, Math.max(two, 1.5)), ...grid(0.1, Math.max(two, 0.3))].filter(
          (d) => d >= least && d <= most,
        );
        const expected =
          [usual, ...tried].find((depth) => isClear(job, piecesAt(job, needs, mm(depth), easeOf(job, needs)))) ?? usual;
        if (expected !== usual) moved++;
        expect(found).toBeCloseTo(expected, 9);
      }),
      { cases: 60 },
    );
    expect(moved).toBeGreaterThan(0);
  });

  test('but a depth that the job gives is taken as it is', () => {
    for (let depth_mm = 60; depth_mm < 64; depth_mm += 0.25)
      expect(plainSource({ pockets: { depth_mm } }).pieces.pocketDepth).toBe(depth_mm);
  });
});

test('the depth follows the share: never shallower for a larger one, within the least and the most, and with the board', () => {
  let follows = 0;
  const share = fc.double({ min: 0.2, max: 0.95, noNaN: true });
  checkLaw(
    fc.property(fc.oneof(jobDocument, constructedJob), share, share, (document, a, b) => {
      const [less, more] = [Math.min(a, b), Math.max(a, b)].map((share) => {
        const job = soundJob({ ...document, version: 3, pockets: { ...document.pockets, share } });
        const needs = needsOverRange(job);
        const depths = pocketDepths(job, needs.thick, easeOf(job, needs));
        const asked = needs.thick.foreEdge.seat + share * needs.thick.book.width;
        const [step] = depthSteps(job);
        const { width, edgeRadius } = needs.thick.book;
        // A pocket lies flat as far as its board does, unless more is needed to hold it.
        const flatBoard = needs.thick.foreEdge.seat + width - edgeRadius;
        expect(depths.usual).toBeLessThan(Math.max(depths.least, flatBoard) + step);
        // Where holding and loading allow it, it is the share that was asked for, up to the next step.
        if (asked >= depths.least && asked <= Math.min(depths.most, flatBoard) - step) {
          expect(depths.usual).toBeGreaterThanOrEqual(asked - 1e-9);
          expect(depths.usual).toBeLessThan(asked + step);
          follows++;
        }
        if (depths.least <= depths.most - step) {
          expect(depths.usual).toBeGreaterThanOrEqual(depths.least - 1e-9);
          expect(depths.usual).toBeLessThan(depths.most + step);
        }
        return depths;
      });
      expect(defined(more).usual).toBeGreaterThanOrEqual(defined(less).usual);
      expect([defined(more).least, defined(more).most]).toEqual([defined(less).least, defined(less).most]);
    }),
  );
  expect(follows).toBeGreaterThan(100);
});

describe('depths', () => {
  const chosen = (width_mm: number, foldBack_deg: number) => {
    const { job, needs } = plainSource({
      book: { width_mm, foldBack_deg },
      seam: { pitch_mm: 25 },
      pockets: { depth_mm: null },
      pattern: { outsideWidth_mm: null },
    });
    return {
      found: sizePieces(job, needs, easeOf(job, needs)).pocketDepth,
      ...pocketDepths(job, needs.thick, easeOf(job, needs)),
    };
  };

  test('other than the usual one still hold the board and let the second one in', () => {
    // At a pitch of 25 mm a row has few numbers to choose from; boards that bend back by 50 degrees let in less than half.
    const moved = [50, 90]
      .flatMap((foldBack) => Array.from({ length: 40 }, (_, i) => chosen(130 + i / 2, foldBack)))
      .filter(({ found, usual }) => found !== usual);
    expect(moved.length).toBeGreaterThan(10);
    for (const { found, least, most } of moved) {
      expect(found).toBeGreaterThanOrEqual(least);
      expect(found).toBeLessThanOrEqual(most);
    }
  });

  test('stay as usual where the pockets meet in a narrow outside', () => {
    const { job, needs } = plainSource({ pockets: { depth_mm: null }, pattern: { outsideWidth_mm: 100 } });
    expect(sizePieces(job, needs, easeOf(job, needs)).pocketDepth).toBe(
      pocketDepths(job, needs.thick, easeOf(job, needs)).usual,
    );
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
    const document = { format: 'coverwright-job', version: 1, work: { cutStep_mm }, book, leather, seam, construction };
    const open = soundJob(document);
    const depth_mm = pocketDepths(open, needsOverRange(open).thick, easeOf(open, needsOverRange(open))).usual;
    // Given, so that no other depth is sought that leaves the lining a place.
    const job = soundJob({ ...document, pockets: { depth_mm } });
    const pieces = sizePieces(job, needsOverRange(job), easeOf(job, needsOverRange(job)));
    const between = clearance(job, pieces, (pieces.outside.width - defined(pieces.lining).width) / 2);
    if (cutStep_mm === 0) expect(between).toBeGreaterThanOrEqual(0.45 - 1e-9);
    else expect([between, defined(pieces.lining).width]).toEqual([expect.closeTo(0.5, 9), expect.closeTo(220.5, 9)]);
  });
});

describe('a lining', () => {
  test('is narrowed where two pitches of widening are too little for a step', () => {
    // Steps of 10 mm move an end by 5, a pitch and a quarter: from 40 mm, on a hole, by 45 to 50 mm, midway between two.
    const { pieces } = plainSource({
      leather: LINED,
      pockets: { depth_mm: DEPTH - 8.5 },
      pattern: { rounding_mm: 10 },
    });
    expect([pieces.pocket.width, defined(pieces.lining).width]).toEqual([50, 260]);
  });

  test('stays as it is where the pockets meet, for then no place is clear of holes', () => {
    const { job, needs, pieces } = plainSource({ leather: LINED, pockets: { depth_mm: 178 } });
    expect(defined(pieces.lining).width).toBe(defined(piecesAt(job, needs, mm(178), easeOf(job, needs)).lining).width);
  });

  test('as wide as the outside stays, though its ends are nearer to the seam than 0.3 pitches', () => {
    const { pieces } = plainSource({
      leather: LINED,
      construction: { lining: 'full' },
      seam: { edgeMargin_mm: 4, pitch_mm: 22 },
    });
    expect(defined(pieces.lining).width).toBe(pieces.outside.width);
  });

  test('of a job in inches keeps to sixteenths where none of them ends clear of the holes', () => {
    // A pitch of 2.5 sixteenths: ends that move by half a sixteenth come within 0.4 pitches of a hole, and 0.45 is asked.
    const [pitch_mm, step] = [3.96875, 1.5875];
    const edgeMargin_mm = 1.1 * pitch_mm;
    const source = plainSource({
      work: { units: 'in' },
      leather: LINED,
      seam: { method: 'lacing', edgeMargin_mm, pitch_mm },
      construction: { slitWidth_mm: 6, slitAngle_deg: 0 },
      pockets: { depth_mm: 48 },
      pattern: { outsideWidth_mm: 2 * edgeMargin_mm + 88 * pitch_mm },
    });
    const { width } = defined(source.pieces.lining);
    expect(width / step).toBeCloseTo(Math.round(width / step), 9);
    const end = (source.pieces.outside.width - width) / 2;
    expect(clearance(source.job, source.pieces, end)).toBeCloseTo(0.4, 9);
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
        const pieces = sizePieces(job, needs, easeOf(job, needs));
        const own = defined(piecesAt(job, needs, pieces.pocketDepth, easeOf(job, needs)).lining).width;
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
