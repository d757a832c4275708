import { describe, expect, test } from 'vitest';
import { type EndRow, endRow, isClearOf, middleBetweenHoles } from '../../../src/core/pattern/endRow.ts';
import { holeMarks, holeWords } from '../../../src/core/pattern/holeMarks.ts';
import { type PatternSource, slitAngle } from '../../../src/core/pattern/seam.ts';
import { layersAt, seamLayering } from '../../../src/core/pattern/seamLayering.ts';
import { defined } from '../../defined.ts';
import { coverOf } from './coverOf.ts';
import { plainSource, TURNED } from './plainSource.ts';

/** Holes at 10, 14, 18 ... 30 mm; before 13 mm the seam is still in the corner. */
const row: EndRow = { origin: 10, length: 20, straight: 13, intervals: 5, pitch: 4, off: 0 };

describe('a layer may end', () => {
  test.each([
    [16, true],
    [15.2, true],
    [15.1, false],
    [14, false],
    [16.8, true],
    [16.9, false],
    // In the corner, and just behind it.
    [12, false],
    [13, false],
    [12.4, false],
    [30.5, false],
    [31.2, true],
    [50, true],
  ])('0.3 pitches from every hole where the seam is straight; at %d mm: %s', (x, clear) => {
    expect(isClearOf(row, x, 0.3)).toBe(clear);
  });

  test('right at the end of the corner, if no hole is near', () => {
    expect([12.99, 13].map((x) => isClearOf({ ...row, origin: 11 }, x, 0.3))).toEqual([false, true]);
  });

  test.each([
    [17, 16],
    [18.1, 20],
    [14.1, 16],
    // The first middle behind the corner is that between the second and the third hole.
    [11, 16],
    [-5, 16],
  ])('nearest to %d mm in the middle at %d mm', (x, middle) => {
    expect(middleBetweenHoles({ ...row, straight: 12.5 }, x)).toBe(middle);
  });

  test('in the first middle where there is no corner', () => {
    expect(middleBetweenHoles({ ...row, straight: Number.NEGATIVE_INFINITY }, -5)).toBe(12);
  });
});

describe('the row along head and tail', () => {
  const stitched = { method: 'stitching', style: 'saddle', edgeMargin_mm: 4, pitch_mm: 4 };

  test('starts where the seam line laid straight would start: 14 mm less half the quarter circle of 10 mm', () => {
    const design = coverOf({ seam: { ...stitched, cornerRadius_mm: 14 } });
    const origin = 14 - (5 * Math.PI) / 2;
    expect(endRow(design, seamLayering(design))).toMatchObject({
      origin: expect.closeTo(origin, 9),
      length: expect.closeTo(design.pieces.outside.width - 2 * origin, 9),
      straight: 14,
    });
  });

  test('heeds a mouth that lies on it, unless the mouths meet', () => {
    const design = coverOf({ seam: stitched });
    const layering = seamLayering(design);
    const intervals = (mouth: number, meets = false) =>
      defined(endRow(design, { ...layering, mouth, meets })).intervals;
    const plain = defined(endRow(design, { ...layering, meets: true }));
    const hole = (k: number): number => plain.origin + k * plain.pitch;
    expect(intervals(hole(20))).not.toBe(plain.intervals);
    for (const mouth of [hole(-1), hole(0)]) expect(intervals(mouth)).toBe(plain.intervals);
    expect(intervals(hole(20), true)).toBe(plain.intervals);
    // Clear by 0.35 of a pitch, though the same place counted from the cut edge is on a hole.
    expect(intervals(hole(20) + 0.35 * plain.pitch)).toBe(plain.intervals);
  });
});

describe('a row', () => {
  const stitched = { method: 'stitching', style: 'saddle', edgeMargin_mm: 10, pitch_mm: 25 };
  const rowOf = (source: PatternSource) => endRow(source, seamLayering(source));

  test('of separate pockets has one interval at least, be it shorter than the pitch', () => {
    const short = rowOf(plainSource({ seam: stitched, pattern: { outsideWidth_mm: 40 } }));
    expect(short).toMatchObject({ length: 20, intervals: 1, pitch: 20 });
  });

  test('of turned ends is none where it is shorter than the pitch', () => {
    const turned = (outsideWidth_mm: number) => rowOf(plainSource({ ...TURNED, pattern: { outsideWidth_mm } }));
    // The rows are inset by 53.25 + 4 at either end.
    expect(turned(118.4)).toBeNull();
    expect(turned(118.6)).toMatchObject({ intervals: 1, pitch: expect.closeTo(4.1, 9) });
  });

  test('measures the mouth from its first hole, not from the cut edge', () => {
    const source = plainSource({ seam: { edgeMargin_mm: 5 } });
    const layering = seamLayering(source);
    const plain = endRow(source, { ...layering, meets: true })!;
    // Ten pitches on it meets a hole; counted from 5 mm before the edge it would lie midway between two.
    const onHole = endRow(source, { ...layering, mouth: 5 + 10 * plain.pitch })!;
    expect(onHole.intervals).not.toBe(plain.intervals);
  });
});

test('mouths that touch in the middle get no hole there: the row takes an odd number of intervals', () => {
  const source = plainSource();
  const layering = { ...seamLayering(source), mouth: source.pieces.outside.width / 2 };
  expect(defined(endRow(source, { ...layering, meets: true })).intervals).toBe(88);
  expect([87, 89]).toContain(defined(endRow(source, layering)).intervals);
});

describe('a hole is drawn', () => {
  const hole = { at: [10, 20], heading: Math.PI / 6, side: 'tail', isCorner: false, layers: ['outside'] } as const;
  const { job } = coverOf({ seam: { method: 'stitching', style: 'saddle' }, construction: { hole_mm: 1.5 } });
  const laced = coverOf({ construction: { slitWidth_mm: 4, slitAngle_deg: 60 } }).job;

  test('as a circle of its diameter, in the frame of its piece', () => {
    const circle = { kind: 'arc', radius: 0.75, start: 0, sweep: 2 * Math.PI };
    expect(holeMarks(job, [hole], { origin: 3, sign: 1 })).toEqual([{ ...circle, centre: [13, 20] }]);
    expect(holeMarks(job, [hole], { origin: 100, sign: -1 })).toEqual([{ ...circle, centre: [90, 20] }]);
  });

  test('or as a slit of its width, turned from the seam by its angle: 30 and 60 degrees stand upright', () => {
    const ends = (from: number, to: number) => [
      { kind: 'line', from: [expect.closeTo(10, 9), from], to: [expect.closeTo(10, 9), to] },
    ];
    expect(holeMarks(laced, [hole], { origin: 0, sign: 1 })).toEqual(ends(18, 22));
  });

  test('and counted by its name', () => {
    expect([holeWords(job, 24), holeWords(laced, 24)]).toEqual(['24 holes', '24 slits']);
  });
});

test('slits slant by 45 degrees in whip lacing and run along in any other, unless the job says so', () => {
  const angle = (style: string, construction: object = {}) => slitAngle(coverOf({ seam: { style }, construction }).job);
  expect([angle('whip'), angle('running'), angle('whip', { slitAngle_deg: 30 })]).toEqual([
    expect.closeTo(Math.PI / 4, 12),
    0,
    expect.closeTo(Math.PI / 6, 12),
  ]);
});

describe('the layers across the seam', () => {
  test('keep 0.3 of the pitch from a stitch, and half a slit with half a mm from lacing, up to 0.45', () => {
    const clear = (seam: object, construction: object = {}) => seamLayering(coverOf({ seam, construction })).clear;
    expect(clear({ method: 'stitching', style: 'saddle', pitch_mm: 5 }, { slitWidth_mm: 3 })).toBe(0.3);
    expect(clear({ pitch_mm: 5 }, { slitWidth_mm: 3 })).toBeCloseTo((1.5 + 0.5) / 5, 12);
    expect(clear({ pitch_mm: 5 }, { slitWidth_mm: 3, slitAngle_deg: 60 })).toBe(0.3);
    expect(clear({ pitch_mm: 5 }, { slitWidth_mm: 4.4, slitAngle_deg: 60 })).toBeCloseTo((1.1 + 0.5) / 5, 12);
    expect(clear({ pitch_mm: 5 }, { slitWidth_mm: 6 })).toBe(0.45);
  });

  test('end at the mouth, a scooped one where its arc crosses the seam line', () => {
    const { pieces } = coverOf();
    expect(seamLayering(coverOf()).mouth).toBe(pieces.pocket.width);
    const scooped = coverOf({ construction: { mouth: 'curved' } });
    expect(seamLayering(scooped).mouth).toBeLessThan(scooped.pieces.pocket.width);
    expect(seamLayering(scooped).mouth).toBeGreaterThan(scooped.pieces.pocket.width - 10);
  });

  test('meet where the mouths overlap, not where they touch', () => {
    const source = plainSource();
    const meets = (width: number) => {
      const pocket = { ...source.pieces.pocket, width: width as typeof source.pieces.pocket.width };
      return seamLayering({ ...source, pieces: { ...source.pieces, pocket } }).meets;
    };
    expect([meets(180), meets(180.01)]).toEqual([false, true]);
  });

  test('have a hole where it stands 0.3 pitches inside; one nearer to the end is too near, one at the end is outside', () => {
    const layering = {
      spans: [{ layer: 'lining', from: 20, to: 80 }],
      mouth: 0,
      meets: false,
      clear: 0.3,
    } as const;
    const [inside, near] = [
      { through: ['outside', 'lining'], tooNear: [] },
      { through: ['outside'], tooNear: ['lining'] },
    ];
    const outside = { through: ['outside'], tooNear: [] };
    for (const [x, expected] of [
      [23, inside],
      [77, inside],
      [22.9, near],
      [77.1, near],
      [20, outside],
      [80, outside],
      [90, outside],
    ] as const)
      expect([x, layersAt(layering, x, 10)]).toEqual([x, expected]);
  });
});
