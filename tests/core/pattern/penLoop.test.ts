import { describe, expect, test, vi } from 'vitest';
import tideLedger from '../../../public/jobs/tide-ledger.json' with { type: 'json' };
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { letteredPiece } from '../../../src/core/pattern/letteredPiece.ts';
import { penLoopDrawing, penLoopMarks, penLoopOf } from '../../../src/core/pattern/penLoop.ts';
import type { PatternSource } from '../../../src/core/pattern/seam.ts';
import { seamHoles } from '../../../src/core/pattern/seamHoles.ts';
import { printer } from '../../../src/core/units/printer.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';
import type { Change } from './coverOf.ts';
import { cornersOf, nearly, placesOf, plainSource, series, TURNED } from './plainSource.ts';

vi.mock('../../../src/core/pattern/letteredPiece.ts', { spy: true });

const LOOP = { pen_mm: 10, ease_mm: 1, width_mm: 34 };
const sourceOf = (width_mm = 34, change: Change = {}) =>
  plainSource({ ...change, construction: { penLoop: { ...LOOP, width_mm }, ...(change.construction as object) } });
const loopOf = (source: PatternSource) => defined(penLoopOf(source, seamHoles(source)));
const loop = (width_mm = 34, change: Change = {}) => loopOf(sourceOf(width_mm, change));
const heights = (width_mm = 34, change: Change = {}) => loop(width_mm, change).holes.map(({ at }) => at[1]);

/** 2 pi (5.5 + 4/pi) and four margins. */
const LENGTH = 11 * Math.PI + 8 + 16;

describe('a pen loop', () => {
  test('of pen 10 and ease 1 is 2 pi (5.5 + K t) round the pen, with two margins at each end', () => {
    const { sum, width } = loop();
    expect(width).toBe(34);
    expect(sum).toEqual(
      nearly({
        dimension: 'length',
        total: LENGTH,
        parts: [
          { name: 'round the pen', times: 1, each: 11 * Math.PI + 8 },
          { name: 'end in the seam', times: 2, each: 8 },
        ],
      }),
    );
  });

  test('is cut longer by what the leather shrinks the more, for it is cut in any direction', () => {
    for (const making of [
      { changeAcross: -0.02, changeAlong: -0.01 },
      { changeAcross: 0.01, changeAlong: -0.02 },
    ])
      expect(loop(34, { making }).sum.total).toBeCloseTo(LENGTH / 0.98, 9);
  });

  test('34 mm wide has room for 8 holes, 0.3 of a pitch from its edges, about the middle of the fore-edge at 114', () => {
    expect(heights()).toEqual(nearly(series(100, 4, 8)));
    expect(loop().middle).toBeCloseTo(114, 9);
  });

  test('takes a ninth hole from 8.6 pitches on', () => {
    expect(heights(34.4)).toHaveLength(9);
    expect(heights(34.3)).toHaveLength(8);
    // The holes at 132 and at 96 are as near; either moves the middle by half a pitch.
    expect(Math.abs(loop(34.4).middle - 114)).toBeCloseTo(2, 9);
  });

  test('stands at three quarters of the height beside a strap', () => {
    // Of 171 mm: from 156 (15 below) to 184 (13 above).
    const beside = { construction: { strap: {} } };
    expect(heights(34, beside)).toEqual(nearly(series(156, 4, 8)));
    expect(loop(34, beside).middle).toBeCloseTo(170, 9);
  });

  test('stands clear of a wide strap: half of both widths is less than lies between their middles', () => {
    for (const width_mm of [78, 79, 80]) {
      const { middle, width } = loop(60, { construction: { strap: { width_mm } } });
      expect(middle - 114).toBeGreaterThan((width + width_mm) / 2);
    }
  });

  test('stands clear of the strap where the corner is near, with every hole of it in the loop', () => {
    for (let height_mm = 100; height_mm < 112; height_mm += 0.5) {
      const parsed = parseJob({
        ...tideLedger,
        book: { ...tideLedger.book, height_mm },
        seam: { ...tideLedger.seam, cornerRadius_mm: 0, edgeMargin_mm: 6, pitch_mm: 7 },
        construction: { corners: 'square', penLoop: { ...LOOP, width_mm: 35 }, strap: { width_mm: 30 } },
      });
      if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
      const source = coverDesign(parsed.job);
      const { middle, width, holes } = loopOf(source);
      expect(middle - width / 2).toBeGreaterThanOrEqual(source.pieces.outside.height / 2 + 16 - 1e-9);
      expect(holes.length).toBeGreaterThan(2);
      for (const { at } of holes) expect(Math.abs(at[1] - middle)).toBeLessThan(width / 2);
    }
  });

  test('is refused where the closure leaves it no room up to the corner, with what to do', () => {
    const parsed = (loopWidth: number, seam: object = {}) =>
      parseJob({
        ...tideLedger,
        book: { ...tideLedger.book, height_mm: 200 },
        seam: { ...tideLedger.seam, ...seam },
        construction: { strap: { shape: 'flap', width_mm: 120 }, penLoop: { width_mm: loopWidth } },
      });
    // (200 - 120) / 2 beside a square corner, 10 less beside a round one.
    expect(parsed(40).ok).toBe(true);
    expect(parsed(41)).toMatchObject({
      issues: [
        { path: 'construction.penLoop.width_mm', got: '41', allowed: expect.stringMatching(/^at most 40 mm, what/) },
      ],
    });
    expect(parsed(31, { cornerRadius_mm: 10 }).ok).toBe(false);
    expect(parsed(30, { cornerRadius_mm: 10 }).ok).toBe(true);
  });

  test('is caught on the straight of the seam only, between rounded corners', () => {
    const low = { book: { height_mm: 130 }, pattern: { outsideHeight_mm: 136 }, seam: { cornerRadius_mm: 30 } };
    const { holes } = loop(130, low);
    // 76 mm of straight at a pitch within 5 % of 4 mm.
    expect(holes.length).toBeGreaterThanOrEqual(18);
    for (const { at } of holes) {
      expect(at[0]).toBeCloseTo(4, 9);
      expect(Math.abs(at[1] - 68)).toBeLessThanOrEqual(38);
    }
    // The holes of square corners lie on the line too, but belong to two sides.
    expect(heights(130, { ...low, seam: {} })).toEqual(nearly(series(8, 4, 31)));
  });

  test('keeps the middle of the fore-edge where no hole is on the straight', () => {
    const source = sourceOf();
    const seam = seamHoles(source);
    const rows = seam.rows.map((row) => ({ ...row, holes: row.holes.filter(({ isCorner }) => isCorner) }));
    expect(penLoopOf(source, { ...seam, rows })).toMatchObject({ holes: [], middle: 114 });
  });

  test('is none where the job has none, or no seam up the fore-edge', () => {
    const plain = plainSource();
    expect(penLoopOf(plain, seamHoles(plain))).toBeNull();
    expect(penLoopOf(sourceOf(), seamHoles(plainSource(TURNED)))).toBeNull();
  });
});

describe('the piece of a pen loop', () => {
  const drawn = (change: Partial<PatternSource> = {}) => {
    const source = { ...sourceOf(), ...change };
    return penLoopDrawing(source, loopOf(source), printer('mm'));
  };

  test('is a rectangle, folded two margins from each end', () => {
    const { layers, outline } = drawn();
    expect(layers.cut).toEqual([{ kind: 'path', segments: outline, isClosed: true }]);
    expect(cornersOf(layers.cut[0])).toEqual(
      nearly([
        [0, 0],
        [LENGTH, 0],
        [LENGTH, 34],
        [0, 34],
      ]),
    );
    expect(placesOf(layers.fold)).toEqual(
      nearly([
        [8, 0, 8, 34],
        [LENGTH - 8, 0, LENGTH - 8, 34],
      ]),
    );
  });

  test('has the same holes a margin from both ends', () => {
    const rows = [4, LENGTH - 4].flatMap((x) => series(3, 4, 8).map((y) => [x, y]));
    expect(placesOf(drawn().layers.hole)).toEqual(nearly(rows));
  });

  test('has its slits mirrored at the far end, where it is folded over', () => {
    const source = sourceOf(34, {
      seam: { method: 'lacing' },
      construction: { slitWidth_mm: Math.SQRT2, slitAngle_deg: 45 },
    });
    const slits = placesOf(penLoopDrawing(source, loopOf(source), printer('mm')).layers.hole);
    const run = (slit: readonly number[]) => [nth(slit, 2) - nth(slit, 0), nth(slit, 3) - nth(slit, 1)] as const;
    const [near, far] = [run(nth(slits, 0)), run(nth(slits, slits.length / 2))];
    expect(near.map(Math.abs)).toEqual(nearly([1, 1]));
    expect([-far[0], far[1]]).toEqual(nearly(near));
  });

  test('is named between the folds; leather may be cut in any direction, card says nothing of it', () => {
    vi.mocked(letteredPiece).mockClear();
    const { sums } = drawn();
    const size = `length ${printer('mm').size(LENGTH)}`;
    const [, , lines, box] = defined(vi.mocked(letteredPiece).mock.lastCall);
    expect(lines).toEqual(['in any direction', size]);
    expect(box).toEqual(nearly({ x: 9, y: 3.4, width: LENGTH - 18, height: 27.2 }));
    expect(sums[1]).toMatchObject({ dimension: 'height', total: 34, parts: [{ name: 'width of the loop', each: 34 }] });
    drawn({ isCard: true });
    expect(defined(vi.mocked(letteredPiece).mock.lastCall)[2]).toEqual([size]);
  });

  test('is shown on the outside at the right edge, two margins deep', () => {
    const source = sourceOf();
    const { marks, words } = penLoopMarks(source, loopOf(source));
    expect(placesOf(marks)).toEqual(
      nearly([
        [360, 97, 352, 97],
        [360, 131, 352, 131],
      ]),
    );
    expect(words).toEqual(nearly([['pen loop', [350, 114], 2.5, Math.PI / 2, 'mark']]));
  });
});
