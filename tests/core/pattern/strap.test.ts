import { describe, expect, test, vi } from 'vitest';
import { segmentStart } from '../../../src/core/math/contour.ts';
import { letteredPiece } from '../../../src/core/pattern/letteredPiece.ts';
import { strapDrawing, strapMarks, strapOf } from '../../../src/core/pattern/strap.ts';
import { printer } from '../../../src/core/units/printer.ts';
import type { Change } from './coverOf.ts';
import { LINED, nearly, placesOf, plainSource, series, TURNED } from './plainSource.ts';

vi.mock('../../../src/core/pattern/letteredPiece.ts', { spy: true });

const STRAP = { width_mm: 24, anchor_mm: 30, reach_mm: 35, end_mm: 15 };
const sourceOf = (change: Change = {}) =>
  plainSource({ ...change, construction: { strap: STRAP, ...(change.construction as object) } });
const strap = (change: Change = {}) => strapOf(sourceOf(change))!;
const drawn = (change: Change = {}) => {
  const source = sourceOf(change);
  return strapDrawing(source, strapOf(source)!, printer('mm'));
};
const lengths = (change: Change = {}) =>
  Object.fromEntries(strap(change).sum.parts.map(({ name, each }) => [name, each]));
const ACROSS = 'across the fore-edge of the closed book';
const STITCHES = 'over the stitches at the edge';
/**
 * Thread of 0.8 mm stands 0.72 of it, 0.576 mm, over a seam line 4 mm from the edge: from the last row 8 mm from it and back to
 * the leather, and from the fastening 35 mm from it.
 */
const HIGH = 0.72 * 0.8;
const OVER = 3 * Math.hypot(4, HIGH) + Math.hypot(31, HIGH) - 43;

describe('the length of a strap', () => {
  test('is anchor, thickness with two leathers, half a turn, what its stitches take, reach and end: 30 + 34 + 4 + 0.13 + 35 + 15', () => {
    const { sum, leaves, reaches, fastening, width } = strap();
    expect(sum).toEqual(
      nearly({
        dimension: 'length',
        total: 118 + OVER,
        parts: [
          { name: 'sewn to the back', times: 1, each: 30, isGiven: true },
          { name: ACROSS, times: 1, each: 34 },
          { name: 'bends at the two edges', times: 1, each: 4 },
          { name: STITCHES, times: 1, each: OVER },
          { name: 'on the front, to the fastening', times: 1, each: 35, isGiven: true },
          { name: 'beyond the fastening', times: 1, each: 15, isGiven: true },
        ],
      }),
    );
    expect([leaves, reaches, fastening, width]).toEqual(nearly([30, 68 + OVER, 103 + OVER, 24]));
  });

  test('counts a full lining on both boards, and a centre lining, which ends before the edge, on none', () => {
    expect(lengths({ leather: LINED, construction: { lining: 'full' } })[ACROSS]).toBeCloseTo(36, 9);
    expect(lengths({ leather: LINED })[ACROSS]).toBeCloseTo(34, 9);
  });

  test('follows boards that open by w with sin w = 1/30 to the cut edge: T + 2 (u sin w + t cos w), bends of pi + 2 w', () => {
    const w = Math.asin(1 / 30);
    // The folds turn by pi - 2 w with 4/pi mm of depth, so the wrap is 330 + 4 - 8 w / pi.
    const u = 150 + (360 - 334 + (8 * w) / Math.PI) / 2;
    const found = lengths({ book: { foreEdgeThickness_mm: 40 } });
    expect(found[ACROSS]).toBeCloseTo(30 + 2 * (u / 30 + 2 * Math.cos(w)), 9);
    expect(found['bends at the two edges']).toBeCloseTo(((Math.PI + 2 * w) * 4) / Math.PI, 9);
  });

  test('takes the two edges as together where the boards would cross before them', () => {
    const thin = { book: { foreEdgeThickness_mm: 10 }, pattern: { outsideWidth_mm: 1000 } };
    expect(lengths(thin)[ACROSS]).toBeUndefined();
    expect(strap(thin).reaches).toBeCloseTo(30 + lengths(thin)['bends at the two edges']! + OVER, 9);
  });

  test('starts from the fold of a turned end, less the leather that lies round the board', () => {
    // (460 - 334) / 2 = 63 beyond the board as cut, of which 50 + 6.5 are turned in; a leather of 2 mm lies outside them.
    const w = Math.asin(1 / 30);
    const u = 150 + (460 - 334 + (8 * w) / Math.PI) / 2 - (50 + 6.5 - 2);
    const found = lengths({ ...TURNED, book: { foreEdgeThickness_mm: 40 } });
    expect(found[ACROSS]).toBeCloseTo(30 + 2 * (u / 30 + 2 * Math.cos(w)), 9);
  });

  test('is cut longer by what the leather shrinks across the backbone, and its places with it', () => {
    const shrunk = strap({ making: { state: 'cased', changeAcross: -0.02, changeAlong: -0.01 } });
    expect(shrunk.sum.total).toBeCloseTo((118 + OVER) / 0.98, 9);
    expect(shrunk.sum.parts.at(-1)).toEqual(
      nearly({ name: 'shrinks 2.0 % in casing', times: 1, each: (118 + OVER) * (1 / 0.98 - 1) }),
    );
    expect([shrunk.leaves, shrunk.reaches, shrunk.fastening]).toEqual(
      nearly([30, 68 + OVER, 103 + OVER].map((at) => at / 0.98)),
    );
    // Its sewn end and the fastening on the outside, which shrinks alike.
    expect(shrunk.holes[0]?.at[0]).toBeCloseTo(360 - 30 / 0.98 + 4, 9);
  });

  test('of a wedge goes by the width that the cover has once it is made', () => {
    const wedge = { book: { foreEdgeThickness_mm: 40 } };
    const made = { making: { changeAcross: -0.02 }, pattern: { outsideWidth_mm: 360 / 0.98, outsideHeight_mm: 228 } };
    expect(lengths({ ...wedge, ...made })[ACROSS]).toBeCloseTo(lengths(wedge)[ACROSS]!, 9);
  });

  test('is longer over lace by its thickness round both edges, and by its climb to them from the last row and the fastening', () => {
    const over = (seam: object, change: Change = {}) =>
      lengths({ seam: { method: 'lacing', edgeMargin_mm: 4, ...seam }, supplies: { laceThickness_mm: 1 }, ...change })[
        'over the laced edge'
      ];
    // Running lace lies along the seam line alone, 1 mm high.
    expect(over({ style: 'running' })).toBeCloseTo(3 * Math.hypot(4, 1) + Math.hypot(31, 1) - 43, 9);
    // Whip lacing goes on as high to the edge and round it, half a turn in all.
    expect(over({ style: 'whip' })).toBeCloseTo(Math.PI + Math.hypot(4, 1) + Math.hypot(31, 1) - 35, 9);
    // The plait is two laces high at the edge: from 8 mm straight to it, as at 4 mm it is as high as the lace there.
    for (const style of ['single loop', 'double loop', 'triple loop'])
      expect(over({ style })).toBeCloseTo(2 * Math.PI + Math.hypot(8, 2) - 8 + Math.hypot(35, 2) - 35, 9);
    const wedge = { book: { foreEdgeThickness_mm: 40 } };
    expect(over({ style: 'whip' }, wedge)! - over({ style: 'whip' })!).toBeCloseTo(2 * Math.asin(1 / 30), 9);
    expect(over({ style: 'whip' }, TURNED)).toBeUndefined();
  });

  test('is none where the job has none', () => expect(strapOf(plainSource())).toBeNull());
});

describe('the holes of a strap', () => {
  const places = (change: Change = {}) => strap(change).holes.map(({ at }) => [...at]);

  test('are two rows across it: a margin from its end, and two margins from the cut edge of the back', () => {
    // Its end lies at 360 - 30 = 330. Width 24 less two margins is divided by the pitch, about the middle at 114.
    expect(places()).toEqual(nearly([334, 352].flatMap((x) => series(106, 4, 5).map((y) => [x, y]))));
    for (const hole of strap().holes)
      expect(hole).toMatchObject({ heading: Math.PI / 2, isCorner: false, layers: ['outside'] });
  });

  test('are one row where the anchor has no room for a second, two margins from the first', () => {
    const rows = (anchor_mm: number) =>
      new Set(places({ construction: { strap: { ...STRAP, anchor_mm } } }).map(([x]) => x)).size;
    expect([rows(16), rows(16.1)]).toEqual([1, 2]);
    expect(rows(10)).toBe(1);
  });

  test('start from the fold of a turned end, 53.25 mm from the cut edge', () => {
    expect(places(TURNED)[0]).toEqual(nearly([460 - 53.25 - 30 + 4, 106]));
  });
});

describe('the piece of a strap', () => {
  test('is square at its sewn end and round at the other', () => {
    const { outline, width, height } = drawn();
    expect([width, height]).toEqual(nearly([118 + OVER, 24]));
    expect(outline.map(({ kind }) => kind)).toEqual(['line', 'arc', 'arc', 'line', 'line']);
    expect(outline.map(segmentStart)).toEqual(
      nearly([
        [0, 0],
        [106 + OVER, 0],
        [118 + OVER, 12],
        [106 + OVER, 24],
        [0, 24],
      ]),
    );
    expect(drawn().layers.cut).toEqual([{ kind: 'path', segments: outline, isClosed: true }]);
  });

  test('has folds where it leaves the back and reaches the front, and a cross at the fastening', () => {
    const { layers } = drawn();
    expect(placesOf(layers.fold)).toEqual(
      nearly([
        [30, 0, 30, 24],
        [68 + OVER, 0, 68 + OVER, 24],
      ]),
    );
    expect(placesOf(layers.mark)).toEqual(
      nearly([
        [100 + OVER, 12, 106 + OVER, 12],
        [103 + OVER, 9, 103 + OVER, 15],
      ]),
    );
  });

  test('has the holes of the outside, upside down', () => {
    expect(placesOf(drawn().layers.hole)).toEqual(nearly([4, 22].flatMap((x) => series(20, -4, 5).map((y) => [x, y]))));
    expect(placesOf(drawn(TURNED).layers.hole)[0]).toEqual(nearly([4, 20]));
  });

  test('has slits that slant the other way', () => {
    const laced = {
      seam: { method: 'lacing', style: 'whip' },
      construction: { slitWidth_mm: Math.SQRT2, slitAngle_deg: 45 },
    };
    // Upright and 45 degrees on: from lower right to upper left of (334, 106) by half a mm each way, then turned over.
    expect(strap(laced).holes[0]!.at).toEqual(nearly([334, 106]));
    expect(placesOf(drawn(laced).layers.hole)[0]).toEqual(nearly([4.5, 20.5, 3.5, 19.5]));
  });

  test('shows the way of the hide as the outside does, upright, at the end of the free stretch between back and front', () => {
    // 0.6 of 24 mm, 4 mm before the fold at 68.
    expect(placesOf(drawn().layers.direction)[0]).toEqual(nearly([64 + OVER, 4.8, 64 + OVER, 19.2]));
  });

  test('is named there with its length; its width is that of the job', () => {
    vi.mocked(letteredPiece).mockClear();
    const { sums } = drawn();
    const [, , lines, box] = vi.mocked(letteredPiece).mock.lastCall!;
    expect(lines).toEqual(['length 118.13 mm']);
    expect(box).toEqual(nearly({ x: 32, y: 6, width: 28 + OVER, height: 16.8 }));
    expect(sums[1]).toEqual({
      dimension: 'height',
      total: 24,
      parts: [{ name: 'width of the strap', times: 1, each: 24, isRest: true }],
    });
  });
});

describe('a flap', () => {
  const FLAP = { ...STRAP, shape: 'flap', width_mm: 120 };

  test('has corners rounded by what it reaches beyond its fastening, and its own name', () => {
    const source = sourceOf({ construction: { strap: FLAP } });
    const flap = strapOf(source)!;
    expect(flap.corner).toBe(15);
    expect(strapOf(sourceOf({ construction: { strap: { ...FLAP, end_mm: 60, width_mm: 80 } } }))!.corner).toBe(40);
    const { name, outline, sums } = strapDrawing(source, flap, printer('mm'));
    expect(name).toBe('Closure flap');
    const arcs = outline.filter((segment) => segment.kind === 'arc');
    expect(arcs.map(({ radius, centre }) => [radius, ...centre])).toEqual(
      nearly([
        [15, 103 + OVER, 15],
        [15, 103 + OVER, 105],
      ]),
    );
    expect(sums[1]!.parts[0]!.name).toBe('width of the flap');
    expect(strapMarks(source, flap).words[0]![0]).toBe('flap');
  });

  test('is as long as a strap of the same measures: a strap ends in a half circle', () => {
    expect(strap({ construction: { strap: FLAP } }).sum.total).toBe(strap().sum.total);
    expect(strap().corner).toBe(12);
  });
});

describe('the outside shows of a strap', () => {
  const marks = (change: Change = {}) => {
    const source = sourceOf(change);
    return strapMarks(source, strapOf(source)!);
  };

  test('its sewn end on the back, at the left, and where it is fastened on the front', () => {
    const found = marks();
    expect(placesOf(found.marks)).toEqual(
      nearly([
        [0, 102, 30, 102],
        [30, 102, 30, 126],
        [30, 126, 0, 126],
        [322, 114, 328, 114],
        [325, 111, 325, 117],
      ]),
    );
    expect(found.words).toEqual(
      nearly([
        ['strap', [35, 114], 2.5, 0, 'mark'],
        ['fastening', [325, 119], 2.5, 0, 'mark'],
      ]),
    );
  });

  test('both from the folds of turned ends', () => {
    const [first, , , across] = placesOf(marks(TURNED).marks);
    expect(first).toEqual(nearly([53.25, 102, 83.25, 102]));
    expect(across).toEqual(nearly([460 - 53.25 - 35 - 3, 114, 460 - 53.25 - 35 + 3, 114]));
  });
});
