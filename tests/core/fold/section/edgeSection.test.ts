import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../../src/core/fold/coverDesign.ts';
import { EDGES, gapAt, isForeEdge } from '../../../../src/core/fold/edges.ts';
import { edgeSection } from '../../../../src/core/fold/section/edgeSection.ts';
import { cutStep } from '../../../../src/core/job/workSchema.ts';
import { RANGE_POINTS } from '../../../../src/core/leather/leatherModel.ts';
import type { Vec2 } from '../../../../src/core/math/vec2.ts';
import { defined } from '../../../defined.ts';
import { jobDocument, soundJob } from '../../../jobArbitrary.ts';
import { checkLaw } from '../../../laws.ts';
import { coverOf } from '../../pattern/coverOf.ts';

/** Area of an outline, mm2. */
const area = (outline: readonly Vec2[]): number =>
  Math.abs(
    outline.reduce((sum, [x, y], i) => {
      const [nextX, nextY] = outline[(i + 1) % outline.length]!;
      return sum + x * nextY - nextX * y;
    }, 0),
  ) / 2;

const rightmost = (outline: readonly Vec2[]): number => Math.max(...outline.map(([u]) => u));
const drawn = fc.tuple(jobDocument, fc.constantFrom(...RANGE_POINTS));

/** Curves drawn in steps are shorter than they are, mm. */
const CHORDS = 0.02;

describe('the section across an edge', () => {
  test('head and tail together hold the leather of the cut height: area over thickness is the length of a layer', () => {
    checkLaw(
      fc.property(drawn, ([document, point]) => {
        const design = coverDesign(soundJob(document));
        const { leathers } = design.needs[point];
        const ends = (['head', 'tail'] as const).map((edge) => edgeSection(design, edge, point, 0.9));
        const { height } = design.made.outside;
        const outside = ends.reduce((sum, end) => sum + area(end.outside), 0) / leathers.outside.thickness;
        const pocket = ends.reduce((sum, end) => sum + area(defined(end.pocket)), 0) / leathers.pocket.thickness;
        expect(Math.abs(outside - height)).toBeLessThan(CHORDS * leathers.outside.thickness);
        expect(Math.abs(pocket - height)).toBeLessThan(CHORDS * leathers.pocket.thickness);
      }),
    );
  });

  test('a pocket is drawn as long as it is cut, rounded up to the cut step', () => {
    checkLaw(
      fc.property(jobDocument, (document) => {
        const design = coverDesign(soundJob({ ...document, pockets: { construction: 'separate' } }));
        const { pocket } = edgeSection(design, 'frontForeEdge', 'thick', 0.5);
        const length = area(defined(pocket)) / design.needs.thick.leathers.pocket.thickness;
        expect(design.made.pocket.width - length).toBeGreaterThan(-1e-6);
        expect(design.made.pocket.width - length).toBeLessThan(cutStep(design.job) + 4 * CHORDS);
      }),
    );
  });

  test('the board ends at 0, the stop at the gap of the fit, the leather a margin beyond the seam, and the layers meet there', () => {
    checkLaw(
      fc.property(drawn, ([document, point]) => {
        const design = coverDesign(soundJob(document));
        for (const edge of EDGES) {
          const { board, gap, seat, seam, reach, outside } = edgeSection(design, edge, point, 0.9);
          expect(rightmost(board)).toBe(0);
          expect(gap).toBe(gapAt(design.fits[point], edge));
          expect(rightmost(outside)).toBeCloseTo(reach, 9);
          if (seat === null || seam === null) {
            expect([design.job.pockets.construction, isForeEdge(edge)]).toEqual(['turned', true]);
            continue;
          }
          expect(reach - seam.at).toBeCloseTo(design.job.seam.edgeMargin_mm, 9);
          expect(Math.min(...seat.map(([u]) => u))).toBe(gap);
          expect(rightmost(seat)).toBeCloseTo(seam.at, 9);
          // At the stop as high as the board, at the seam without height.
          const heights = seat.filter(([u]) => u === gap).map(([, v]) => v);
          expect(Math.max(...heights) - Math.min(...heights)).toBeCloseTo(design.needs[point].book.board, 9);
          const last = seat.filter(([u]) => u > seam.at - 1e-9).map(([, v]) => v);
          expect(Math.max(...last) - Math.min(...last)).toBeLessThan(1e-6);
        }
      }),
    );
  });
});

describe('along an edge', () => {
  const places = (design: ReturnType<typeof coverOf>, edge: (typeof EDGES)[number]) =>
    [0, 0.02, 0.3, 0.5, 0.9, 0.97, 1].map((along) => edgeSection(design, edge, 'thick', along).place);

  test('a fore-edge has its pocket from end to end; head and tail have none toward the spine', () => {
    const design = coverOf({});
    expect(places(design, 'backForeEdge')).toEqual([
      'corner',
      'pocket',
      'pocket',
      'pocket',
      'pocket',
      'pocket',
      'corner',
    ]);
    expect(places(design, 'tail')).toEqual([
      'noPocket',
      'noPocket',
      'noPocket',
      'noPocket',
      'pocket',
      'pocket',
      'corner',
    ]);
  });

  test('where there is no pocket nothing stops the board, and no gap is drawn', () => {
    const bare = edgeSection(coverOf({}), 'head', 'thick', 0);
    expect([bare.gap, bare.pocket, bare.seat]).toEqual([null, null, null]);
  });

  test('head and tail show the lining where it lies, and a full one at the fore-edges too', () => {
    const leather = { lining: { min_mm: 0.6, max_mm: 0.8 } };
    const centre = coverOf({ leather });
    const full = coverOf({ leather, construction: { lining: 'full' } });
    const isLined = (design: typeof centre, edge: (typeof EDGES)[number], along: number): boolean =>
      edgeSection(design, edge, 'nominal', along).lining !== null;
    expect([isLined(centre, 'head', 0.1), isLined(centre, 'head', 0.9), isLined(centre, 'frontForeEdge', 0.5)]).toEqual(
      [true, false, false],
    );
    expect([isLined(full, 'head', 0.9), isLined(full, 'frontForeEdge', 0.5)]).toEqual([true, true]);
  });
});
