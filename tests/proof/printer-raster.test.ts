import { describe, expect, test } from 'vitest';
import type { CoverDesign } from '../../src/core/fold/coverDesign.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import type { SheetName } from '../../src/output/pdf/paper.ts';
import { patternPdf } from '../../src/output/pdf/patternPdf.ts';
import { coverOf } from '../core/pattern/coverOf.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { boundsOf } from '../output/outlineDistance.ts';
import { lyingOn, pagesOf } from '../output/patternReading.ts';
import { type ReadPage, readPdf } from '../output/pdfReading.ts';
import { hasReaders, type Raster, rasterised } from '../output/poppler.ts';
import { proofSize } from './proofSize.ts';

const DPI = 600;
const DOTS = DPI / 25.4;
/** How far ink may lie off its place, mm: the width of a dot is 0.042. */
const MOST = 0.05;

const STITCHED = { method: 'stitching', style: 'saddle', edgeMargin_mm: 4, pitch_mm: 4 };
const CASES: readonly (readonly [SheetName, CoverDesign])[] = [
  ['Letter', coverOf({ seam: STITCHED, construction: { strap: {} } })],
  ['A4', coverOf({ seam: STITCHED })],
  ['A4', coverOf({ seam: STITCHED, book: { width_mm: 150, height_mm: 220, thickness_mm: 54 } })],
];

/** A printed page; its picture begins at its upper edge and may end a dot beyond the lower one. */
interface Printed extends Raster {
  /** Of the page, mm. */
  readonly high: number;
}

/** Middle of the ink within a box round a place of the page, mm from the lower left; null where there is none. */
function inkAt({ width, high: page, grey }: Printed, [x, y]: Vec2, [wide, high]: Vec2): Vec2 | null {
  let [sum, across, up] = [0, 0, 0];
  for (let row = Math.round((page - y - high) * DOTS); row < (page - y + high) * DOTS; row++)
    for (let column = Math.round((x - wide) * DOTS); column < (x + wide) * DOTS; column++)
      if (grey[row * width + column] === 0) {
        sum++;
        across += (column + 0.5) / DOTS;
        up += page - (row + 0.5) / DOTS;
      }
  return sum === 0 ? null : [across / sum, up / sum];
}

/** Middles of the diamonds on a page by their numbers, as drawn. */
function diamonds({ words, paths }: ReadPage): Map<string, Vec2> {
  const sides = paths
    .flatMap(({ chains }) => chains)
    .filter((chain) => {
      const { width, height } = boundsOf(chain);
      return chain.length === 2 && Math.abs(width - 4) < 1e-3 && Math.abs(height - 4) < 1e-3;
    });
  return new Map(
    words
      .filter(({ text }) => /^\d+'?$/.test(text))
      .flatMap(({ text, at }) => {
        const near = sides.filter((side) => Math.hypot(nth(side, 0)[0] - at[0], nth(side, 0)[1] - at[1]) < 7);
        if (near.length !== 4) return [];
        const { low, high } = boundsOf(near.flat());
        return [[text, [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2] as Vec2] as const];
      }),
  );
}

/** The middle of a diamond as printed: between its slanting sides, two by two, off the joint through it. */
function printedDiamond(raster: Printed, [x, y]: Vec2): Vec2 {
  const ends = ([dx, dy]: Vec2, axis: 0 | 1): number =>
    defined(inkAt(raster, [x + dx, y + dy], axis === 0 ? [0.5, 0.04] : [0.04, 0.5]))[axis];
  return [(ends([-1.5, 2.5], 0) + ends([1.5, 2.5], 0)) / 2, (ends([2.5, -1.5], 1) + ends([2.5, 1.5], 1)) / 2];
}

/** Where poppler-utils are installed; `.ci/run` installs them. */
describe.skipIf(!hasReaders)('the template printed in black at 600 dpi', () => {
  test.each(CASES.slice(0, proofSize(CASES.length, 1)))(
    'on %s has bars, holes and diamonds within 0.05 mm',
    async (paper, design) => {
      const drawing = patternDrawing(design);
      const bytes = await patternPdf(drawing, { paper });
      const pages = await readPdf(bytes);
      const printed = new Map<number, Printed>();
      const print = (page: ReadPage): Printed => {
        const number = pages.indexOf(page) + 1;
        const raster = printed.get(number) ?? { ...rasterised(bytes, number, DPI, 'black'), high: page.height };
        printed.set(number, raster);
        return raster;
      };
      let most = 0;
      const within = (a: Vec2, b: Vec2): void => {
        const off = Math.hypot(a[0] - b[0], a[1] - b[1]);
        most = Math.max(most, off);
        expect(off).toBeLessThan(MOST);
      };

      const first = nth(pages, 0);
      const bars = first.paths
        .flatMap(({ chains }) => chains.map(boundsOf))
        .filter(
          ({ width, height }) => Math.abs(Math.max(width, height) - 150) < 1e-3 && Math.min(width, height) < 1e-6,
        );
      expect(bars).toHaveLength(2);
      for (const { low, width } of bars) {
        // On the lines across the ends, off bar and ticks.
        const at = (along: number): Vec2 => (width > 1 ? [low[0] + along, low[1] + 3] : [low[0] + 3, low[1] + along]);
        const axis = width > 1 ? 0 : 1;
        const [from, to] = [0, 150].map(
          (along) => defined(inkAt(print(first), at(along), axis === 0 ? [0.4, 0.3] : [0.3, 0.4]))[axis],
        );
        within([to! - from!, 0], [150, 0]);
      }

      const outside = nth(drawing.pieces, 0);
      let holes = 0;
      const tiles = pagesOf(pages, outside.name).slice(0, 2);
      for (const page of tiles) {
        const { low } = boundsOf(lyingOn(page, outside));
        const clip = nth(page.clips, 0);
        for (const hole of outside.layers.hole) {
          if (hole.kind !== 'arc') throw new Error('a stitched cover has round holes');
          const at: Vec2 = [low[0] + hole.centre[0], low[1] + hole.centre[1]];
          const isHere = [0, 1].every((axis) => at[axis]! > clip.low[axis]! + 1 && at[axis]! < clip.high[axis]! - 1);
          // Other lines, as the joint and its diamonds, may lie near a hole; the seam line keeps clear of it.
          const isFree = page.paths.every(({ chains, dash }) =>
            chains.every((chain) => {
              if (chain.length > 3 || Math.abs((dash[0] ?? 0) - 1) < 1e-3) return true;
              const box = boundsOf(chain);
              const off = [0, 1].map((axis) => Math.max(box.low[axis]! - at[axis]!, at[axis]! - box.high[axis]!));
              return Math.max(...off) > hole.radius + 0.3;
            }),
          );
          if (!isHere || !isFree) continue;
          const reach = hole.radius + 0.25;
          within(defined(inkAt(print(page), at, [reach, reach])), at);
          holes++;
        }
      }
      expect(holes).toBeGreaterThan(50);

      if (tiles.length > 1) {
        const [a, b] = tiles.map(diamonds) as [Map<string, Vec2>, Map<string, Vec2>];
        const shared = [...a.keys()].filter((name) => b.has(name));
        expect(shared.length).toBeGreaterThanOrEqual(2);
        const [one, two] = shared as [string, string];
        const step = (page: ReadPage, at: Map<string, Vec2>): Vec2 => {
          const [from, to] = [one, two].map((name) => printedDiamond(print(page), defined(at.get(name)))) as [
            Vec2,
            Vec2,
          ];
          within(from, defined(at.get(one)));
          return [to[0] - from[0], to[1] - from[1]];
        };
        within(step(nth(tiles, 0), a), step(nth(tiles, 1), b));
      }
      console.info(`${paper}: ${holes} holes, bars and diamonds at most ${most.toFixed(3)} mm off at ${DPI} dpi`);
    },
    120_000,
  );
});
