import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CLOSED } from '../../../../src/core/book/bookOutline.ts';
import { type CoverDesign, coverDesign } from '../../../../src/core/fold/coverDesign.ts';
import { pressedCrease } from '../../../../src/core/fold/elastic/pressedCrease.ts';
import { sectionInputAt } from '../../../../src/core/fold/elastic/sectionInputAt.ts';
import { createSettleSolver, type Settled, settledCover } from '../../../../src/core/fold/elastic/settledCover.ts';
import { solveSection } from '../../../../src/core/fold/elastic/solveSection.ts';
import { EXAMPLE_JOBS } from '../../../../src/core/job/examples.ts';
import { RANGE_POINTS, type RangePoint } from '../../../../src/core/leather/leatherModel.ts';
import { foldedCover } from '../../../../src/core/solid/foldedCover.ts';
import type { FoldedCover } from '../../../../src/core/solid/meshData.ts';
import { openingRange } from '../../../../src/core/solid/openingRange.ts';
import type { Pose } from '../../../../src/core/solid/pose.ts';
import { validateClearance } from '../../../../src/core/solid/validateClearance.ts';
import { createStripSolver } from '../../../../src/core/strip/solveStrip.ts';
import { defined } from '../../../defined.ts';
import { jobDocument, soundJob } from '../../../jobArbitrary.ts';
import { checkLaw } from '../../../laws.ts';
import { nth } from '../../../nth.ts';
import { sampledPoses } from '../../solid/sampledPoses.ts';

const designs = EXAMPLE_JOBS.map(({ id, document }, variant) => ({
  id,
  variant,
  design: coverDesign(soundJob(document)),
}));
const POSES: readonly Pose[] = [
  ...[0.7, 0.85, 1].map((at): Pose => ({ kind: 'sequence', at })),
  ...[0, 0.8, 1.7, 2.6, Math.PI].map((angle): Pose => ({ kind: 'opening', angle })),
];

describe('the settled cover', () => {
  test.each(designs)('never passes through the book or its pockets: $id', ({ design, variant }) => {
    for (const { pose, point } of sampledPoses(POSES, variant)) {
      const settle = settledCover(design, point, createSettleSolver());
      expect(settle(pose.kind === 'opening' ? pose.angle : 0)).not.toBeNull();
      expect(validateClearance(foldedCover(design, pose, point, settle).parts)).toEqual([]);
    }
  });

  test.each(designs)(
    'closed has its spare length over spine, boards and fore-edges, and none is lost: $id',
    ({ design }) => {
      const settle = settledCover(design, 'nominal', createSettleSolver());
      const closed: Pose = { kind: 'opening', angle: 0 };
      const mark = (edge: string, cover: ReturnType<typeof foldedCover>) =>
        cover.marks.find((each) => each.edge === edge)?.value ?? 0;
      const settled = foldedCover(design, closed, 'nominal', settle);
      const taut = foldedCover(design, closed, 'nominal');
      const spare = design.fits.nominal.closedSlack;
      // A lining that is thinned out under the pockets slants the outside there, which the closed form leaves out.
      expect(Math.abs(2 * mark('frontForeEdge', taut) - spare)).toBeLessThan(0.1);
      expect(mark('spine', taut)).toBe(0);
      const atEdges = mark('frontForeEdge', settled) + mark('backForeEdge', settled);
      // Within what the leather gives under its own pull on the seats.
      expect(Math.abs(mark('spine', settled) + atEdges - spare)).toBeLessThan(0.5);
    },
  );

  test('is marked at the fore-edges as it will lie, and the taut one as pushed home; boards at the spine are neither', () => {
    const { document } = EXAMPLE_JOBS[0];
    const said = (seating: string, isSettled: boolean) => {
      const design = coverDesign(soundJob({ ...document, seating }));
      const settle = isSettled ? settledCover(design, 'nominal', createSettleSolver()) : undefined;
      const { marks } = foldedCover(design, { kind: 'opening', angle: 0 }, 'nominal', settle);
      expect(marks.filter(({ edge }) => edge === 'head' || edge === 'spine').every(({ spare }) => spare === null)).toBe(
        true,
      );
      return marks.filter(({ edge }) => edge === 'frontForeEdge' || edge === 'backForeEdge').map(({ spare }) => spare);
    };
    expect(said('centred', false)).toEqual(['pushedHome', 'pushedHome']);
    expect(said('centred', true)).toEqual(['asItLies', 'asItLies']);
    expect(said('spine', false)).toEqual([null, null]);
    const short = coverDesign(soundJob({ ...document, pattern: { outsideWidth_mm: 372 } }));
    const { marks } = foldedCover(short, { kind: 'opening', angle: 0 }, 'thick');
    expect(marks.find(({ edge }) => edge === 'frontForeEdge')).toMatchObject({
      value: expect.any(Number),
      spare: null,
    });
  });

  test('is marked where its leather stands off a board, by as much as it does; the taut one is not', () => {
    const { design } = nth(designs, 0);
    const { book, leathers } = design.needs.nominal;
    const closed: Pose = { kind: 'opening', angle: 0 };
    const settled = foldedCover(design, closed, 'nominal', settledCover(design, 'nominal', createSettleSolver()));
    const { value, from, to } = defined(settled.marks.find(({ edge }) => edge === 'frontBoard'));
    const { positions } = defined(settled.parts.find(({ part }) => part === 'outside'));
    let top = -Infinity;
    for (let i = 0; i < positions.length; i += 3)
      if (nth(positions, i) > 0 && nth(positions, i) < book.width && Math.abs(nth(positions, i + 2)) < book.height / 4)
        top = Math.max(top, nth(positions, i + 1));
    expect(value).toBeGreaterThan(0.3);
    expect(value).toBeCloseTo(top - book.thickness / 2 - leathers.outside.thickness, 1);
    expect(from[1]).toBeCloseTo(book.thickness / 2, 9);
    expect(to[1] - from[1]).toBeCloseTo(value, 9);
    const edges = foldedCover(design, closed, 'nominal').marks.map(({ edge }) => edge);
    expect(edges).not.toContain('frontBoard');
    expect(edges).not.toContain('backBoard');
  });

  test('has no spare wrap behind the spine where it does not close', () => {
    const { document } = EXAMPLE_JOBS[1];
    const design = coverDesign(soundJob({ ...document, pattern: { outsideWidth_mm: 376 } }));
    const { closes, staysOpen } = design.fits.thick;
    expect(closes).toBe(false);
    expect(staysOpen).not.toBeNull();
    const settle = settledCover(design, 'thick', createSettleSolver());
    const { marks } = foldedCover(design, { kind: 'opening', angle: 0 }, 'thick', settle);
    expect(marks.find(({ edge }) => edge === 'frontForeEdge')?.value).toBeLessThan(0);
    expect(marks.map(({ edge }) => edge)).not.toContain('spine');
  });

  test('falls back on the taut cover where the strip finds no shape, and says that it is not known', () => {
    const { design } = nth(designs, 0);
    const pose: Pose = { kind: 'opening', angle: 1 };
    const taut = foldedCover(design, pose, 'nominal');
    expect(foldedCover(design, pose, 'nominal', () => null)).toEqual({ ...taut, origin: 'not known' });
  });
});

describe('the settled cover on the bench', () => {
  /** Lowest place of a part, mm above the book's middle, with the back board on the bench. */
  function lowest({ parts, benchTurn }: FoldedCover, name: string): number {
    const { positions } = defined(parts.find(({ part }) => part === name));
    let low = Infinity;
    for (let i = 0; i < positions.length; i += 3)
      low = Math.min(low, nth(positions, i) * Math.sin(benchTurn) + nth(positions, i + 1) * Math.cos(benchTurn));
    return low;
  }
  /** Leather under a board, mm. */
  const layers = ({ needs }: CoverDesign, point: RangePoint): number =>
    needs[point].leathers.outside.thickness + (needs[point].leathers.lining?.thickness ?? 0);

  /** The most of leather that there may be below the back board, mm: its layers with the room that the strip is left, and where the bench is tilted the cover's edge. */
  function below(design: CoverDesign, point: RangePoint, { benchTilt }: Settled, { marks }: FoldedCover): number {
    const { seat, margin } = design.needs[point].foreEdge;
    const { value: gap } = defined(marks.find(({ edge }) => edge === 'backForeEdge'));
    return 1.05 * layers(design, point) + (seat + margin + gap) * Math.sin(benchTilt);
  }

  test.each(designs)('has its leather nowhere below that under the back board, at every opening: $id', ({ design }) => {
    for (const point of RANGE_POINTS) {
      const settle = settledCover(design, point, createSettleSolver());
      for (let k = 0; k <= 12; k++) {
        const angle = (Math.PI * k) / 12;
        const settled = defined(settle(angle) ?? undefined);
        const cover = foldedCover(design, { kind: 'opening', angle }, point, settle);
        expect(lowest(cover, 'backBoard') - lowest(cover, 'outside')).toBeLessThan(
          below(design, point, settled, cover),
        );
      }
    }
  });

  test('lies on the bench under both boards and the back, open flat, while without the bench a flat back hangs on a belly', () => {
    for (const { id, design } of designs) {
      const settle = settledCover(design, 'nominal', createSettleSolver());
      const cover = foldedCover(design, { kind: 'opening', angle: Math.PI }, 'nominal', settle);
      const bench = lowest(cover, 'outside');
      for (const part of ['frontBoard', 'backBoard', ...(design.job.book.kind === 'hardback' ? ['spine'] : [])]) {
        const off = lowest(cover, part) - bench - layers(design, 'nominal');
        expect({ id, part, isDown: Math.abs(off) < 0.1 }).toEqual({ id, part, isDown: true });
      }
      if (design.needs.nominal.book.rise > 0) continue;
      const crease = { angles: pressedCrease(design, 'nominal', 0), set: design.job.leather.outside.creaseSet };
      const hanging = solveSection(sectionInputAt(design, 'nominal', Math.PI, crease), createSettleSolver());
      expect(hanging.spineBow).toBeGreaterThan(5);
    }
  });

  test('has its room at the fore-edges where the strip left it', () => {
    const { design } = nth(designs, 0);
    const settle = settledCover(design, 'nominal', createSettleSolver());
    const { marks } = foldedCover(design, { kind: 'opening', angle: 0 }, 'nominal', settle);
    const [front, back] = ['frontForeEdge', 'backForeEdge'].map(
      (name) => defined(marks.find(({ edge }) => edge === name)).value,
    ) as [number, number];
    const { frontShare } = defined(settle(0) ?? undefined);
    // The bench presses leather out from under the back board.
    expect(back).toBeGreaterThan(front + 0.5);
    expect(front / (front + back)).toBeCloseTo(frontShare, 9);
  });

  test('is found for at least 9 in 10 openings of random covers, each at the place where the bench is', () => {
    let [found, tried] = [0, 0];
    checkLaw(
      fc.property(fc.noShrink(jobDocument), fc.constantFrom(0, 0.3, 0.7, 1), (document, way) => {
        const design = coverDesign(soundJob(document));
        const { staysOpen, opensTo } = design.fits.nominal;
        if (staysOpen === null || opensTo === null || openingRange(design, 'nominal') === null) return;
        const settle = settledCover(design, 'nominal', createSettleSolver());
        const angle = staysOpen + way * (opensTo - staysOpen);
        tried++;
        const settled = settle(angle);
        if (settled === null) return;
        found++;
        const cover = foldedCover(design, { kind: 'opening', angle }, 'nominal', settle);
        expect(lowest(cover, 'backBoard') - lowest(cover, 'outside')).toBeLessThan(
          below(design, 'nominal', settled, cover),
        );
      }),
      { cost: 5 },
    );
    expect(found).toBeGreaterThanOrEqual(0.9 * tried);
  });
});

describe('boards posed each on its own', () => {
  test('give mirror images when front and back change places, and a shape between when one alone is open', () => {
    const { design } = nth(designs, 0);
    const solve = (front: number, back: number) =>
      solveSection(sectionInputAt(design, 'nominal', { front, back }), createStripSolver());
    const [frontOpen, backOpen] = [solve(0.9, 0), solve(0, 0.9)];
    expect(frontOpen.status).toBe('converged');
    expect(frontOpen.spineBow).toBeCloseTo(backOpen.spineBow, 4);
    expect(frontOpen.energy).toBeCloseTo(backOpen.energy, 3);
    const shut = solve(CLOSED.front, CLOSED.back);
    expect(frontOpen.energy).toBeLessThan(shut.energy);
    expect(frontOpen.energy).toBeGreaterThan(solve(0.9, 0.9).energy);
  });
});
