import { describe, expect, test, vi } from 'vitest';
import { segmentEnd, segmentStart } from '../../../src/core/math/contour.ts';
import { letteredPiece } from '../../../src/core/pattern/letteredPiece.ts';
import { pocketDrawings } from '../../../src/core/pattern/pocketDrawing.ts';
import { seamHoles } from '../../../src/core/pattern/seamHoles.ts';
import { printer } from '../../../src/core/units/printer.ts';
import { nth } from '../../nth.ts';
import type { Change } from './coverOf.ts';
import { cornersOf, DEPTH, nearly, placesOf, plainSource, series } from './plainSource.ts';

vi.mock('../../../src/core/pattern/letteredPiece.ts', { spy: true });

const pocket = (change: Change = {}) => {
  const source = plainSource(change);
  return nth(pocketDrawings(source, seamHoles(source), printer('mm'), {}), 0);
};

describe('the pocket', () => {
  test('is a rectangle of 58 x 228, its mouth at the right', () => {
    const { layers, outline, width, height, count } = pocket();
    expect([width, height, count]).toEqual(nearly([58, 228, 2]));
    expect(layers.cut).toEqual([{ kind: 'path', segments: outline, isClosed: true }]);
    expect(cornersOf(layers.cut[0])).toEqual(
      nearly([
        [0, 0],
        [58, 0],
        [58, 228],
        [0, 228],
      ]),
    );
  });

  test('has the corners of the outside at the fore-edge, and none at the mouth', () => {
    const { outline } = pocket({ seam: { cornerRadius_mm: 10 } });
    expect(outline.flatMap((each) => (each.kind === 'arc' ? [[...each.centre, each.radius]] : []))).toEqual([
      [10, 10, 10],
      [10, 218, 10],
    ]);
    const clipped = pocket({ seam: { cornerRadius_mm: 10 }, construction: { corners: 'clipped' } }).outline;
    expect(clipped.map(segmentStart)).toEqual(
      expect.arrayContaining(
        nearly([
          [0, 10],
          [10, 0],
          [10, 228],
          [0, 218],
        ]),
      ),
    );
  });

  test('has a mouth scooped toward the fore-edge by its share of the depth', () => {
    const { outline } = pocket({ construction: { mouth: 'curved', mouthCurve: 0.2 } });
    expect(outline.map(({ kind }) => kind)).toEqual(['line', 'arc', 'line', 'line']);
    // R = c^2 / (8 s) + s/2 about a centre beyond the mouth.
    const sagitta = 0.2 * DEPTH;
    const radius = 228 ** 2 / (8 * sagitta) + sagitta / 2;
    expect(outline[1]).toMatchObject(nearly({ centre: [58 - sagitta + radius, 114], radius }));
    const rounded = pocket({ seam: { cornerRadius_mm: 10 }, construction: { mouth: 'curved', mouthCurve: 0.2 } });
    expect(rounded.outline.filter(({ kind }) => kind === 'arc')).toHaveLength(3);
  });

  test('has the seam line open at the mouth, from head to tail round the fore-edge', () => {
    const [line, ...more] = pocket().layers.seam;
    expect(more).toEqual([]);
    expect(line).toMatchObject({ isClosed: false });
    const { segments } = line as Extract<typeof line, { kind: 'path' }>;
    expect(segments.map(segmentStart)).toEqual(
      nearly([
        [58, 224],
        [4, 224],
        [4, 4],
      ]),
    );
    expect(segmentEnd(segments.at(-1)!)).toEqual(nearly([58, 4]));
  });

  test('has the seam line a margin inside a rounded corner', () => {
    const [line] = pocket({ seam: { cornerRadius_mm: 10 } }).layers.seam;
    const { segments } = line as Extract<typeof line, { kind: 'path' }>;
    expect(segments.map(({ kind }) => kind)).toEqual(['line', 'arc', 'line', 'arc', 'line']);
    expect(segments.flatMap((each) => (each.kind === 'arc' ? [[...each.centre, each.radius]] : []))).toEqual(
      nearly([
        [10, 218, 6],
        [10, 10, 6],
      ]),
    );
  });

  test('has the holes of the front fore-edge, and those of tail and head up to 2 mm before its mouth', () => {
    const expected = [
      ...series(4, 4, 14).flatMap((x) => [
        [x, 4],
        [x, 224],
      ]),
      ...series(8, 4, 54).map((y) => [4, y]),
    ];
    const { layers, holes } = pocket();
    expect(holes).toBe(82);
    const key = (places: number[][]) => places.map((at) => at.map((x) => x.toFixed(6)).join()).sort();
    expect(key(placesOf(layers.hole))).toEqual(key(expected));
  });

  test('has an arrow of half its height near the mouth, between it and two margins', () => {
    // 8 + 0.88 (58 - 8).
    expect(placesOf(pocket().layers.direction)[0]).toEqual(nearly([52, 57, 52, 171]));
    const scooped = pocket({ construction: { mouth: 'curved', mouthCurve: 0.2 } });
    const x = 8 + 0.88 * (50 - 0.2 * DEPTH);
    expect(placesOf(scooped.layers.direction)[0]).toEqual(nearly([x, 57, x, 171]));
    // A scoop of 0.5 leaves less than 5 mm of a pocket that is all margin.
    const narrow = pocket({
      seam: { edgeMargin_mm: 12 },
      construction: { mouth: 'curved', mouthCurve: 0.5 },
      pockets: { depth_mm: 20 },
    });
    expect(placesOf(narrow.layers.direction)[0]![0]).toBeCloseTo(24 + 0.88 * 5, 9);
  });

  test('is named beside the arrow', () => {
    vi.mocked(letteredPiece).mockClear();
    const { sums } = pocket();
    const [, , lines, box, words] = vi.mocked(letteredPiece).mock.lastCall!;
    expect(lines.slice(0, 2)).toEqual(['mouth at the right', '82 holes each']);
    expect(lines.slice(2).flat()).toContain('height 228 mm');
    expect(box).toEqual(nearly({ x: 8, y: 45.6, width: 39, height: 136.8 }));
    expect(words).toHaveLength(1);
    expect(sums.map(({ dimension, total }) => [dimension, total])).toEqual(
      nearly([
        ['width', 58],
        ['height', 228],
      ]),
    );
  });
});
