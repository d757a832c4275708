import { areaD } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { contourArea, flattened, segmentEnd, segmentStart } from '../../src/core/math/contour.ts';
import { LAYERS, noLayers, type PieceDrawing } from '../../src/core/pattern/drawing.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { joints, tiling } from '../../src/output/pdf/tiling.ts';
import { soundJob } from '../jobArbitrary.ts';
import { checkLaw } from '../laws.ts';
import { nth } from '../nth.ts';
import { constructedJob } from './constructionArbitrary.ts';

const everyPiece = (check: (piece: PieceDrawing) => void) =>
  checkLaw(
    fc.property(constructedJob, (document) => {
      for (const piece of patternDrawing(coverDesign(soundJob(document))).pieces) check(piece);
    }),
  );

describe('every piece of random jobs', () => {
  test('has a closed outline that fills its box', () => {
    everyPiece(({ outline, width, height }) => {
      outline.forEach((segment, i) => {
        const [end, next] = [segmentEnd(segment), segmentStart(nth(outline, (i + 1) % outline.length))];
        expect(Math.hypot(end[0] - next[0], end[1] - next[1])).toBeLessThan(1e-9);
      });
      const points = flattened(outline, 1e-2);
      const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
      expect(Math.min(...xs)).toBeCloseTo(0, 6);
      expect(Math.min(...ys)).toBeCloseTo(0, 6);
      expect(Math.max(...xs)).toBeCloseTo(width, 6);
      expect(Math.max(...ys)).toBeCloseTo(height, 6);
    });
  });

  test('has the area that a polygon library finds, to a millionth', () => {
    everyPiece(({ outline }) => {
      const polygon = flattened(outline, 1e-5).map(([x, y]) => ({ x, y }));
      const area = contourArea(outline);
      expect(area).toBeGreaterThan(0);
      expect(Math.abs(areaD(polygon) / area - 1)).toBeLessThan(1e-6);
    });
  });

  test('is drawn in finite numbers, its sums add up, its words are plain', () => {
    everyPiece((piece) => {
      for (const layer of LAYERS)
        expect([layer, JSON.stringify(piece.layers[layer]).includes('null')]).toEqual([layer, false]);
      for (const { total, parts } of piece.sums)
        expect(parts.reduce((sum, { times, each }) => sum + times * each, 0)).toBeCloseTo(total, 6);
      for (const entity of LAYERS.flatMap((layer) => piece.layers[layer])) {
        if (entity.kind !== 'text') continue;
        expect(entity.text).toMatch(/^[\x20-\x7e]+$/);
        expect(entity.height).toBeGreaterThan(0);
      }
    });
  });
});

describe('the tiles of a piece of any size', () => {
  const size = fc.double({ min: 5, max: 4000, noNaN: true });
  const paper = fc.constantFrom('A4' as const, 'Letter' as const, 'A3' as const, 'Tabloid' as const, { roll_mm: 610 });
  const factor = fc.double({ min: 0.92, max: 1.08, noNaN: true });

  test('cover it, overlap their neighbours by 12 mm, and meet in the middle of the overlap', () => {
    checkLaw(
      fc.property(size, size, paper, factor, factor, (width, height, sheet, x, y) => {
        const laid = tiling({ width, height, layers: noLayers() }, sheet, { x, y });
        const { tiles, columns, rows } = laid;
        expect(tiles.length).toBe(columns * rows);
        const [first, last] = [nth(tiles, 0), nth(tiles, -1)];
        expect(first.x).toBeLessThan(0);
        expect(first.y + first.height).toBeGreaterThan(height);
        expect(last.x + last.width).toBeGreaterThan(width);
        expect(last.y).toBeLessThan(0);
        for (const tile of tiles) {
          const right = tiles.find(({ column, row }) => column === tile.column + 1 && row === tile.row);
          const below = tiles.find(({ column, row }) => column === tile.column && row === tile.row + 1);
          if (right) expect(tile.x + tile.width - right.x).toBeCloseTo(12, 9);
          if (below) expect(below.y + below.height - tile.y).toBeCloseTo(12, 9);
          if (right) expect(nth(joints(laid).x, tile.column) - right.x).toBeCloseTo(6, 9);
          if (below) expect(nth(joints(laid).y, tile.row) - tile.y).toBeCloseTo(6, 9);
        }
      }),
    );
  });
});

describe('at the ends of what a job may ask', () => {
  const job = (book: object, rest: object = {}) => ({
    format: 'coverwright-job',
    version: 1,
    book: { kind: 'limp', boardThickness_mm: 0.1, ...book },
    leather: { outside: { min_mm: 1, max_mm: 1 } },
    ...rest,
  });
  const strapped = { construction: { strap: { width_mm: 30 }, ribbon: {} } };

  test.each([
    ['the smallest book', job({ width_mm: 30, height_mm: 30, thickness_mm: 1 })],
    ['the largest book', job({ width_mm: 1000, height_mm: 1500, thickness_mm: 300 })],
    ['a strip of a book', job({ width_mm: 1000, height_mm: 30, thickness_mm: 1 }, strapped)],
    ['a column of a book', job({ width_mm: 30, height_mm: 1500, thickness_mm: 300 }, strapped)],
    [
      'the finest pitch on the largest book',
      job({ width_mm: 1000, height_mm: 1500, thickness_mm: 300 }, { seam: { pitch_mm: 1 } }),
    ],
    [
      'the coarsest pitch on the smallest book',
      job(
        { width_mm: 30, height_mm: 30, thickness_mm: 1 },
        { seam: { pitch_mm: 25, edgeMargin_mm: 30, cornerRadius_mm: 60 } },
      ),
    ],
    [
      'pockets deeper than the book',
      job({ width_mm: 100, height_mm: 100, thickness_mm: 10 }, { pockets: { depth_mm: 1000 } }),
    ],
    [
      'a turned end as long as the outside',
      job(
        { width_mm: 100, height_mm: 100, thickness_mm: 10 },
        { pockets: { construction: 'turned', depth_mm: 99 }, pattern: { outsideWidth_mm: 200 } },
      ),
    ],
    [
      'the deepest scoop',
      job(
        { width_mm: 1000, height_mm: 30, thickness_mm: 10 },
        { pockets: { depth_mm: 900 }, construction: { mouth: 'curved', mouthCurve: 0.5 } },
      ),
    ],
    [
      'an outside of the least width',
      job(
        { width_mm: 100, height_mm: 100, thickness_mm: 10 },
        { pattern: { outsideWidth_mm: 40, outsideHeight_mm: 30 } },
      ),
    ],
  ])('%s is drawn, in finite numbers', (_, document) => {
    const drawing = patternDrawing(coverDesign(soundJob(document)));
    for (const piece of drawing.pieces) {
      expect(JSON.stringify(piece)).not.toContain('null');
      expect(contourArea(piece.outline)).toBeGreaterThan(0);
      for (const hole of piece.layers.hole) {
        const at = hole.kind === 'arc' ? hole.centre : hole.kind === 'line' ? hole.from : [0, 0];
        expect(at[0] >= -1e-6 && at[0] <= piece.width + 1e-6).toBe(true);
        expect(at[1] >= -1e-6 && at[1] <= piece.height + 1e-6).toBe(true);
      }
    }
  });

  test.each([
    ['a pitch of 0.1 mm', { seam: { pitch_mm: 0.1 } }, /seam.pitch_mm.*allowed: 1 or more/],
    ['an outside 14,000 mm wide', { pattern: { outsideWidth_mm: 14000 } }, /outsideWidth_mm.*allowed: 4000 or less/],
  ])('%s is refused in words', (_, rest, message) => {
    expect(() => soundJob(job({ width_mm: 100, height_mm: 100, thickness_mm: 10 }, rest))).toThrow(message);
  });
});
