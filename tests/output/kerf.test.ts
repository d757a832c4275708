import { areaD, EndType, inflatePathsD, JoinType } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import {
  type Contour,
  contourArea,
  contourLength,
  flattened,
  rectangle,
  segmentEnd,
  segmentStart,
} from '../../src/core/math/contour.ts';
import { isSimplePolygon } from '../../src/core/math/simplePolygon.ts';
import { distance, type Vec2 } from '../../src/core/math/vec2.ts';
import { type Entity, type PieceDrawing, path } from '../../src/core/pattern/drawing.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { kerfed, kerfNotes } from '../../src/output/kerf.ts';
import { coverOf } from '../core/pattern/coverOf.ts';
import { nth } from '../nth.ts';
import { boundsOf, toChain } from './outlineDistance.ts';

const stitched = { method: 'stitching', style: 'saddle', edgeMargin_mm: 4, pitch_mm: 4 };
const drawing = patternDrawing(
  coverOf({ seam: { ...stitched, cornerRadius_mm: 12 }, construction: { mouth: 'curved', strap: {} } }),
);

const polygon = (...points: readonly Vec2[]): Contour =>
  points.map((from, i) => ({ kind: 'line', from, to: nth(points, (i + 1) % points.length) }));

describe('a piece with the kerf of a laser allowed for', () => {
  test.each([0.1, 0.2, 0.4])('of %d mm is cut half a kerf outside its edge, all round', (kerf) => {
    for (const piece of drawing.pieces) {
      const cut = kerfed(piece, kerf);
      const edge = flattened(piece.outline, 1e-4);
      for (const point of flattened(cut.outline, 1e-4)) {
        expect(toChain(point, edge)).toBeGreaterThan(kerf / 2 - 0.0011);
        // A mitred corner is farther out: at a right angle by the square root of two, at a scooped mouth by under two.
        expect(toChain(point, edge)).toBeLessThan(kerf);
      }
      const straight = flattened(cut.outline, 1e-4).filter((point) => toChain(point, edge) < kerf / 2 + 0.0011);
      expect(straight.length).toBeGreaterThanOrEqual(cut.outline.length - 4);
    }
  });

  test('grows a square-cornered piece by exactly one kerf each way', () => {
    const square = nth(patternDrawing(coverOf({ seam: stitched })).pieces, 0);
    const { width, height } = boundsOf(flattened(kerfed(square, 0.3).outline, 1e-4));
    expect(width).toBeCloseTo(square.width + 0.3, 4);
    expect(height).toBeCloseTo(square.height + 0.3, 4);
  });

  test('has the area of A + L k/2 and its corners (Steiner), and that of the polygon library shrunk back', () => {
    for (const piece of drawing.pieces) {
      const kerf = 0.3;
      const area = contourArea(kerfed(piece, kerf).outline);
      const steiner = contourArea(piece.outline) + (contourLength(piece.outline) * kerf) / 2;
      // Corners add at most a square of the kerf each; arcs are chords that stand off by a thousandth.
      expect(Math.abs(area - steiner)).toBeLessThan(4 * kerf ** 2 + 0.001 * contourLength(piece.outline));
      const ring = flattened(kerfed(piece, kerf).outline, 1e-4).map(([x, y]) => ({ x, y }));
      const back = inflatePathsD([ring.slice(0, -1)], -kerf / 2, JoinType.Miter, EndType.Polygon, 4, 6);
      expect(Math.abs(areaD(nth(back, 0)) / contourArea(piece.outline) - 1)).toBeLessThan(1e-5);
    }
  });

  test('has its holes smaller by the kerf, and still the same number', () => {
    const [piece] = drawing.pieces;
    const cut = kerfed(piece!, 0.2);
    expect(cut.layers.hole.length).toBe(piece!.holes);
    for (const hole of cut.layers.hole) expect(hole.kind === 'arc' && hole.radius).toBeCloseTo(0.4, 12);
  });

  test('keeps its arcs, each moved by half a kerf, and draws in the cut layer what it is cut along', () => {
    for (const piece of drawing.pieces) {
      const cut = kerfed(piece, 0.3);
      expect(cut.layers.cut).toEqual([{ kind: 'path', segments: cut.outline, isClosed: true }]);
      const arcs = (contour: Contour) => contour.flatMap((segment) => (segment.kind === 'arc' ? [segment] : []));
      // At a corner between an arc and a line the beam turns about the corner, on an arc of half a kerf.
      const moved = arcs(cut.outline).filter(({ radius }) => Math.abs(radius - 0.15) > 1e-9);
      expect(moved.map(({ radius, sweep }) => [radius, sweep])).toEqual(
        arcs(piece.outline).map(({ radius, sweep }) => [radius + Math.sign(sweep) * 0.15, sweep]),
      );
      expect(cut.outline.length).toBeLessThanOrEqual(piece.outline.length + 2);
      cut.outline.forEach((segment, i) => {
        const next = segmentStart(nth(cut.outline, (i + 1) % cut.outline.length));
        expect(distance(segmentEnd(segment), next)).toBeLessThan(1e-9);
      });
    }
  });

  test('with square corners is still four lines', () => {
    const square = nth(patternDrawing(coverOf({ seam: stitched })).pieces, 0);
    expect(kerfed(square, 0.3).outline.map(({ kind }) => kind)).toEqual(['line', 'line', 'line', 'line']);
  });

  test('has slits shorter by the kerf, half at each end, so that they burn to their length', () => {
    const laced = nth(patternDrawing(coverOf({ seam: { style: 'whip' } })).pieces, 1);
    const cut = kerfed(laced, 0.25);
    laced.layers.hole.forEach((slit, i) => {
      const burnt = nth(cut.layers.hole, i);
      if (slit.kind !== 'line' || burnt.kind !== 'line') throw new Error('no slit');
      expect(distance(burnt.from, burnt.to)).toBeCloseTo(2.4 - 0.25, 9);
      expect(distance(slit.from, burnt.from)).toBeCloseTo(0.125, 9);
      expect(distance(slit.to, burnt.to)).toBeCloseTo(0.125, 9);
    });
  });

  test('keeps slits and holes that are smaller than the beam as short as the machine can start in, and says so', () => {
    const laced = patternDrawing(coverOf({ construction: { slitWidth_mm: 1 } }));
    const slit = nth(kerfed(nth(laced.pieces, 0), 1.5).layers.hole, 0);
    expect(slit.kind === 'line' && distance(slit.from, slit.to)).toBeCloseTo(0.1, 9);
    const hole = [
      { kind: 'line', from: [0, 0], to: [1, 0] },
      { kind: 'arc', centre: [0, 0], radius: 0.5, start: 0, sweep: 2 * Math.PI },
    ] as const;
    const piece = { ...nth(laced.pieces, 0), layers: { ...nth(laced.pieces, 0).layers, hole } };
    expect(kerfed(piece, 1.5).layers.hole).toEqual([
      { kind: 'line', from: [expect.closeTo(0.45, 9), 0], to: [expect.closeTo(0.55, 9), 0] },
      { ...hole[1], radius: 0.05 },
    ]);
    expect(kerfNotes(laced, 1.5)).toEqual([expect.stringMatching(/Slits of 1 mm .* kerf of 1.5 mm.*1.6 mm/)]);
    expect(kerfNotes(laced, 0.2)).toEqual([]);
    // A hole of 1 mm is the least that a kerf of 0.9 mm can make.
    expect(kerfNotes(drawing, 0.9)).toEqual([]);
    expect(kerfNotes(drawing, 0.95).length).toBe(1);
    expect(kerfNotes(drawing, 1.5)).toEqual([expect.stringMatching(/Holes of 1 mm .* kerf of 1.5 mm.*1.6 mm/)]);
  });

  test('burns a slot that is narrower than the kerf along its middle, and says so', () => {
    const slot = path(rectangle([10, 4], [30, 5.2], { style: 'rounded', size: 0.6 }), true);
    const first = nth(drawing.pieces, 0);
    const piece = { ...first, layers: { ...first.layers, hole: [slot] } };
    const [middle] = kerfed(piece, 1.5).layers.hole;
    expect(middle).toEqual({
      kind: 'line',
      from: [expect.closeTo(10.75, 9), 4.6],
      to: [expect.closeTo(29.25, 9), 4.6],
    });
    expect(kerfNotes({ ...drawing, pieces: [piece] }, 1.5)).toEqual([
      'Slots 1.2 mm wide are too narrow for a kerf of 1.5 mm: they burn to 1.5 mm. Punch them by hand instead.',
    ]);
    expect(kerfNotes({ ...drawing, pieces: [piece] }, 1)).toEqual([]);
  });

  test('keeps what is cut inside the piece, smaller by the kerf', () => {
    const first = nth(drawing.pieces, 0);
    const window = path(rectangle([20, 20], [40, 40]), true);
    const piece = { ...first, layers: { ...first.layers, cut: [...first.layers.cut, window] } };
    const [edge, inner, ...rest] = kerfed(piece, 0.4).layers.cut;
    expect(rest).toEqual([]);
    expect(edge).toEqual({ kind: 'path', segments: kerfed(first, 0.4).outline, isClosed: true });
    const points = inner?.kind === 'path' ? flattened(inner.segments, 0.001) : [];
    expect(boundsOf(points)).toMatchObject({ width: expect.closeTo(19.6, 9), height: expect.closeTo(19.6, 9) });
  });

  test('with clipped or inward corners is as many lines, each half a kerf beside its own', () => {
    const clipped = nth(
      patternDrawing(coverOf({ seam: { ...stitched, cornerRadius_mm: 10 }, construction: { corners: 'clipped' } }))
        .pieces,
      0,
    ).outline;
    for (const outline of [clipped, polygon([0, 0], [20, 0], [20, 10], [10, 10], [10, 20], [0, 20])]) {
      const cut = kerfed({ ...nth(drawing.pieces, 0), outline }, 0.3).outline;
      expect(cut.length).toBe(outline.length);
      cut.forEach((segment, i) => {
        const own = nth(outline, i);
        if (segment.kind !== 'line' || own.kind !== 'line') throw new Error('no line');
        const [u, v] = [own.to[0] - own.from[0], own.to[1] - own.from[1]];
        for (const [x, y] of [segment.from, segment.to])
          expect(((x - own.from[0]) * v - (y - own.from[1]) * u) / Math.hypot(u, v)).toBeCloseTo(0.15, 9);
        expect(distance(segmentEnd(segment), segmentStart(nth(cut, (i + 1) % cut.length)))).toBeLessThan(1e-9);
      });
    }
  });

  test.each([0.4, 0.02])(
    'of %d mm, whose hollows are too tight for it, is cut along a polygon: arcs, and arcs that meet a line inward',
    (kerf) => {
      const around = (radius: number, sweep: number): Contour => [
        ...polygon([0, 0], [20, 0], [20, 20], [10 + radius, 20]).slice(0, 3),
        { kind: 'arc', centre: [10, 20], radius, start: 0, sweep },
        ...polygon([10 - radius, 20], [0, 20], [0, 0]).slice(0, 2),
      ];
      const [hollow, bump] = [around(kerf / 4, -Math.PI), around(kerf, Math.PI)];
      for (const outline of [hollow, bump]) {
        const cut = kerfed({ ...nth(drawing.pieces, 0), outline }, kerf).outline;
        expect(cut.every(({ kind }) => kind === 'line')).toBe(true);
        expect(isSimplePolygon(flattened(cut, 0.01).slice(0, -1))).toBe(true);
        for (const point of flattened(cut, 0.01))
          expect(toChain(point, flattened(outline, 1e-4))).toBeGreaterThan(kerf / 2 - 0.0011);
      }
    },
  );

  test('turns about a sharp corner on an arc of half a kerf, and draws on the lines of a blunt one', () => {
    // The corner at (40, 0) turns by 166 degrees, that at (0, 10) by 104.
    const cut = kerfed({ ...nth(drawing.pieces, 0), outline: polygon([0, 0], [40, 0], [0, 10]) }, 0.4).outline;
    expect(cut.map(({ kind }) => kind)).toEqual(['line', 'arc', 'line', 'line']);
    expect(cut[1]).toMatchObject({ centre: [40, 0], radius: 0.2 });
    expect(boundsOf(flattened(cut, 1e-4)).width).toBeCloseTo(40.4, 3);
    const [x, y] = segmentEnd(nth(cut, 2));
    // Where x = -0.2 meets the slanted edge x + 4 y = 40 moved outward by 0.2 mm.
    expect([x, y]).toEqual([expect.closeTo(-0.2, 9), expect.closeTo((40.2 + 0.2 * Math.sqrt(17)) / 4, 9)]);
  });

  test('keeps the start of an outline that a rounded corner closes', () => {
    const outline: Contour = [
      ...polygon([5, 0], [20, 0], [20, 20], [0, 20], [0, 5]).slice(0, 4),
      { kind: 'arc', centre: [5, 5], radius: 5, start: Math.PI, sweep: Math.PI / 2 },
    ];
    const [first] = kerfed({ ...nth(drawing.pieces, 0), outline }, 0.3).outline;
    expect(first).toEqual({ kind: 'line', from: [5, -0.15], to: [expect.closeTo(20.15, 9), -0.15] });
  });

  test('whose notch is closed by the kerf is cut along a simple polygon round it', () => {
    // A square of 20 mm with a notch 0.3 mm wide and 5 mm deep in its upper edge, the second widening to a chamber.
    const start = [
      [0, 0],
      [20, 0],
      [20, 20],
      [10.15, 20],
    ] as const;
    const end = [
      [9.85, 20],
      [0, 20],
    ] as const;
    const chamber = [
      [10.15, 15],
      [14, 15],
      [14, 10],
      [6, 10],
      [6, 15],
      [9.85, 15],
    ] as const;
    for (const outline of [polygon(...start, [10.15, 15], [9.85, 15], ...end), polygon(...start, ...chamber, ...end)]) {
      const cut = kerfed({ ...nth(drawing.pieces, 0), outline }, 0.4);
      expect(isSimplePolygon(flattened(cut.outline, 0.01).slice(0, -1))).toBe(true);
      const { width, height } = boundsOf(flattened(cut.outline, 0.01));
      expect([width, height]).toEqual([expect.closeTo(20.4, 4), expect.closeTo(20.4, 4)]);
      expect(contourArea(cut.outline)).toBeGreaterThan(20.3 ** 2);
    }
  });

  test('narrows a slot by half a kerf all round', () => {
    const slot = (wide: number, high: number): Entity =>
      path(rectangle([-wide, -high], [wide, high], { style: 'rounded', size: high }), true);
    const piece = { ...nth(drawing.pieces, 0), layers: { ...nth(drawing.pieces, 0).layers, hole: [slot(5, 1.3)] } };
    const [found] = kerfed(piece, 0.3).layers.hole;
    const ends = (entity: Entity | undefined): number[] =>
      entity?.kind === 'path' ? entity.segments.flatMap((each) => [...segmentStart(each)]) : [];
    const wanted = ends(slot(4.85, 1.15));
    expect(ends(found)).toHaveLength(wanted.length);
    ends(found).forEach((at, i) => {
      expect(at).toBeCloseTo(nth(wanted, i), 9);
    });
  });

  test('leaves a hole of another shape as it is drawn', () => {
    const hole: PieceDrawing['layers']['hole'] = [
      { kind: 'path', segments: polygon([0, 0], [2, 0], [0, 2]), isClosed: true },
    ];
    const piece = { ...nth(drawing.pieces, 0), layers: { ...nth(drawing.pieces, 0).layers, hole } };
    expect(kerfed(piece, 0.3).layers.hole).toEqual(hole);
    expect(kerfNotes({ ...drawing, pieces: [piece] }, 1.5)).toEqual([]);
  });

  test('of 0 leaves the piece as it is, and one out of range is refused', () => {
    expect(kerfed(nth(drawing.pieces, 0), 0)).toBe(drawing.pieces[0]);
    expect(boundsOf(flattened(kerfed(nth(drawing.pieces, 1), 2).outline, 1e-3)).height).toBeCloseTo(
      nth(drawing.pieces, 1).height + 2,
      2,
    );
    for (const kerf of [-0.1, 2.01, Number.NaN])
      expect(() => kerfed(nth(drawing.pieces, 0), kerf)).toThrow(/allowed: 0 to 2 mm/);
  });
});
