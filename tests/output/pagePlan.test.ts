import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../src/core/job/examples.ts';
import { flattened } from '../../src/core/math/contour.ts';
import { outlineDistance } from '../../src/core/math/polygonDistance.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import { cardDesign } from '../../src/core/mockup/cardDesign.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { type PagePlan, pagePlan } from '../../src/output/pdf/pagePlan.ts';
import type { Paper } from '../../src/output/pdf/paper.ts';
import { patternPdf } from '../../src/output/pdf/patternPdf.ts';
import { coverOf } from '../core/pattern/coverOf.ts';
import { soundJob } from '../jobArbitrary.ts';
import { nth } from '../nth.ts';
import { readPdf } from './pdfReading.ts';

const demo = EXAMPLE_JOBS.map(({ document }) => coverDesign(soundJob(document)));
const tiny = [
  coverOf({ book: { width_mm: 60, height_mm: 80, thickness_mm: 10, boardThickness_mm: 1 } }),
  coverOf({
    book: { width_mm: 35, height_mm: 50, thickness_mm: 6, boardThickness_mm: 1 },
    construction: { strap: { width_mm: 14 }, penLoop: { width_mm: 16 } },
  }),
  coverOf({
    book: { width_mm: 70, height_mm: 100, thickness_mm: 8, boardThickness_mm: 1 },
    construction: { strap: {} },
  }),
];
const designs = [...demo, ...tiny].flatMap((design) => [design, cardDesign(design.job, design.job.mockup.card)]);
const PAPERS: readonly Paper[] = ['A4', 'Letter', 'A3', 'Tabloid', { roll_mm: 610 }, { roll_mm: 914 }];
const EXACT = { x: 1, y: 1 };

/** Pages that the same templates took with one piece to a page and the check bars on their own. */
const BEFORE = 293;

/** Outlines of the parts of a page, page mm from the corner of its frame. */
const outlinesOf = ({ parts }: PagePlan['pages'][number]): Vec2[][] =>
  parts.map(({ piece, window }) =>
    flattened(piece.outline, 0.01)
      .slice(0, -1)
      .map(([x, y]): Vec2 => [x - window.x, y - window.y]),
  );

describe('the pages of a template', () => {
  test('are at most 70 % of those with one piece to a page, over the demo books and tiny jobs on all papers', () => {
    const pages = designs.flatMap((design) =>
      PAPERS.map((paper) => pagePlan(patternDrawing(design), paper, EXACT).pages.length),
    );
    const sum = pages.reduce((all, each) => all + each, 0);
    expect(sum / BEFORE).toBeLessThanOrEqual(0.7);
  });

  test('have every piece once, whole or in all its tiles, by 5 mm off every other and off the check bars', () => {
    for (const design of designs)
      for (const paper of PAPERS) {
        const { pieces } = patternDrawing(design);
        const { pages, check, tiled } = pagePlan({ pieces }, paper, { x: 1.01, y: 0.99 });
        for (const { id } of pieces) {
          const parts = pages.flatMap((page) => page.parts).filter(({ piece }) => piece.id === id);
          const tiling = tiled.find(({ piece }) => piece.id === id)?.tiling;
          expect(parts.length).toBe(tiling === undefined ? 1 : tiling.tiles.length);
        }
        for (const [i, page] of pages.entries()) {
          const outlines = outlinesOf(page);
          if (i === 0) {
            const { x, y, width, height } = check.block;
            const [low, right] = [(y - 18) / 0.99, (x - 10 + width) / 1.01];
            outlines.push([
              [0, low],
              [right, low],
              [right, low + height / 0.99],
              [0, low + height / 0.99],
            ]);
          }
          for (const [k, a] of outlines.entries())
            for (const b of outlines.slice(k + 1)) expect(outlineDistance(a, b)).toBeGreaterThan(5);
        }
      }
  });

  test('of a roll are one page of its width, as long as it needs, where each piece is narrower than the roll', async () => {
    for (const roll_mm of [420, 610, 914, 1500]) {
      const pages = await readPdf(await patternPdf(patternDrawing(nth(demo, 0)), { paper: { roll_mm } }));
      expect(pages).toHaveLength(1);
      expect(nth(pages, 0).width).toBeCloseTo(roll_mm, 3);
    }
    const long = (roll_mm: number) =>
      nth(pagePlan(patternDrawing(nth(demo, 0)), { roll_mm }, EXACT).pages, 0).page.height;
    expect(long(914)).toBeLessThan(long(420));
  });
});
