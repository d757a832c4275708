import { describe, expect, test, vi } from 'vitest';
import { letteredPiece } from '../../../src/core/pattern/letteredPiece.ts';
import { liningDrawing } from '../../../src/core/pattern/liningDrawing.ts';
import { seamHoles } from '../../../src/core/pattern/seamHoles.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { printer } from '../../../src/core/units/printer.ts';
import type { Change } from './coverOf.ts';
import { cornersOf, DEPTH, LINED, nearly, placesOf, plainSource, SEAT, series, TURNED } from './plainSource.ts';

vi.mock('../../../src/core/pattern/letteredPiece.ts', { spy: true });

/** The cover with a lining cut to a width of its own. */
const lined = (width: number, change: Change = {}) => {
  const source = plainSource({ leather: LINED, ...change });
  const lining = { width: mm(width), height: mm(228) };
  const cut = { ...source, pieces: { ...source.pieces, lining } };
  return liningDrawing(cut, lining, seamHoles(cut), printer('mm'));
};
const FULL = { construction: { lining: 'full' } };
const LINES = [
  [0, 4, 252, 4],
  [0, 224, 252, 224],
];

describe('a centre lining', () => {
  test('is a rectangle with the seam along head and tail and its middle marked', () => {
    const { layers, outline, name, width, height } = lined(252);
    expect([name, width, height]).toEqual(['Centre lining', 252, 228]);
    expect(layers.cut).toEqual([{ kind: 'path', segments: outline, isClosed: true }]);
    expect(cornersOf(layers.cut[0])).toEqual([
      [0, 0],
      [252, 0],
      [252, 228],
      [0, 228],
    ]);
    expect(placesOf(layers.seam)).toEqual(LINES);
    expect(placesOf(layers.centre)).toEqual([[126, 0, 126, 228]]);
  });

  test('has the holes of the outside over its middle 252 mm, 54 mm from the left: the first at 56 is 2 mm inside', () => {
    const { layers, holes } = lined(252);
    const rows = [4, 224].flatMap((y) => series(2, 4, 63).map((x) => [x, y]));
    const key = (places: number[][]) => places.map((at) => at.map((x) => x.toFixed(6)).join()).sort();
    expect(holes).toBe(126);
    expect(key(placesOf(layers.hole))).toEqual(key(rows));
  });

  test('has an arrow of half its height at three quarters of its width', () => {
    expect(placesOf(lined(252).layers.direction)[0]).toEqual(nearly([189, 57, 189, 171]));
  });

  test('is named in its left half, with how much shorter it is: pi (1 + 4/pi - 2/pi) = pi + 2', () => {
    vi.mocked(letteredPiece).mockClear();
    lined(252);
    const [, , lines, box, words] = vi.mocked(letteredPiece).mock.lastCall!;
    expect(lines[0]).toBe('126 holes');
    expect(lines).toHaveLength(4);
    expect(lines[3]).toEqual(['5.1 mm shorter round the spine', 'than the outside']);
    expect(box).toEqual(nearly({ x: 10.08, y: 34.2, width: 105.84, height: 159.6 }));
    expect(words).toHaveLength(1);
  });

  test('is as wide as its wrap less the board in both pockets, and the tucks', () => {
    const [width, height] = lined(252).sums;
    expect(width).toEqual(
      nearly({
        dimension: 'width',
        total: 252,
        parts: [
          { name: 'book, fore-edge to fore-edge', times: 1, each: 330 },
          { name: 'folds at the spine', times: 1, each: 2 },
          { name: 'board in the pocket', times: 2, each: -(DEPTH - SEAT - 1) },
          { name: 'tucked under the pocket mouth', times: 2, each: 10, isGiven: true },
          {
            name: 'opening flat, rounding, to end between holes',
            times: 1,
            each: 252 - 352 + 2 * (DEPTH - SEAT - 1),
            isRest: true,
          },
        ],
      }),
    );
    expect(height).toMatchObject({ dimension: 'height', total: 228 });
  });
});

describe('a full lining', () => {
  test('is cut and sewn like the outside, corners and all', () => {
    const { layers, name, outline, sums, holes } = lined(360, { ...FULL, seam: { cornerRadius_mm: 10 } });
    expect(name).toBe('Full lining');
    expect(outline.filter(({ kind }) => kind === 'arc')).toHaveLength(4);
    expect(layers.seam).toHaveLength(1);
    expect(layers.seam[0]).toMatchObject({ kind: 'path', isClosed: true });
    expect(sums[0]!.parts[0]).toMatchObject({ name: 'board width', each: 150 });
    expect(holes).toBe(lined(360, { ...FULL, seam: { cornerRadius_mm: 10 } }).layers.hole.length);
    expect(lined(360, FULL).holes).toBe(286);
  });

  test('between turned ends is a rectangle: the outside less both ends with their turns', () => {
    const { layers, name, outline, sums } = lined(347, { ...TURNED, ...FULL, seam: { cornerRadius_mm: 10 } });
    expect(name).toBe('Full lining');
    expect(outline.map(({ kind }) => kind)).toEqual(['line', 'line', 'line', 'line']);
    expect(placesOf(layers.seam)).toEqual([
      [0, 4, 347, 4],
      [0, 224, 347, 224],
    ]);
    expect(sums[0]).toEqual(
      nearly({
        dimension: 'width',
        total: 347,
        parts: [
          { name: 'width of the outside', times: 1, each: 460, isGiven: true },
          { name: 'turned end with its turn', times: 2, each: -56.5 },
        ],
      }),
    );
    expect(lined(346, { ...TURNED, ...FULL }).sums[0]!.parts[2]).toEqual(
      nearly({ name: 'rounding, to end between holes', times: 1, each: -1, isRest: true }),
    );
    expect(sums[1]).toMatchObject({ dimension: 'height', total: 228 });
  });
});
