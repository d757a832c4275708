import { areaD } from 'clipper2-ts';
import DxfParser, {
  type IArcEntity,
  type ICircleEntity,
  type ILineEntity,
  type ILwpolylineEntity,
  type ITextEntity,
} from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { contourArea, flattened } from '../../src/core/math/contour.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { patternDxf } from '../../src/output/dxf/patternDxf.ts';
import { coverOf } from '../core/pattern/coverOf.ts';
import { nth } from '../nth.ts';
import { apart, boundsOf, moved } from './outlineDistance.ts';

const design = coverOf({
  leather: { lining: { min_mm: 0.7, max_mm: 0.8 } },
  seam: { method: 'stitching', style: 'saddle', edgeMargin_mm: 4, pitch_mm: 4, cornerRadius_mm: 12 },
  construction: { mouth: 'curved', strap: {} },
});
const drawing = patternDrawing(design);

function read(text: string) {
  const file = new DxfParser().parseSync(text);
  if (file === null) throw new Error('not a DXF');
  return file;
}
/** Written and read again in every test, so that each is independent. */
const written = () => read(patternDxf(drawing));
const on = <T extends { type: string; layer: string }>(layer: string, type: string): T[] =>
  (written().entities as unknown as T[]).filter((entity) => entity.layer === layer && entity.type === type);

/** Points of a polyline; a bulge is tan(angle / 4) of the arc to the next vertex (DXF reference). */
function pointsOf({ vertices, shape }: ILwpolylineEntity, steps = 500): Vec2[] {
  const points: Vec2[] = [];
  const count = vertices.length;
  for (let i = 0; i < (shape ? count : count - 1); i++) {
    const [a, b] = [nth(vertices, i), nth(vertices, (i + 1) % count)];
    const angle = 4 * Math.atan(a.bulge ?? 0);
    points.push([a.x, a.y]);
    if (angle === 0) continue;
    // Centre from the chord: half of it over tan(angle / 2) to the left of the way.
    const rise = 1 / (2 * Math.tan(angle / 2));
    const centre: Vec2 = [(a.x + b.x) / 2 - (b.y - a.y) * rise, (a.y + b.y) / 2 + (b.x - a.x) * rise];
    for (let k = 1; k < steps; k++) {
      const turn = (angle * k) / steps;
      const [x, y] = [a.x - centre[0], a.y - centre[1]];
      points.push([
        centre[0] + x * Math.cos(turn) - y * Math.sin(turn),
        centre[1] + x * Math.sin(turn) + y * Math.cos(turn),
      ]);
    }
  }
  points.push(shape ? nth(points, 0) : [nth(vertices, -1).x, nth(vertices, -1).y]);
  return points;
}

describe('the DXF of a pattern, read back', () => {
  test('is in millimetres', () => {
    expect(written().header).toMatchObject({ $INSUNITS: 4, $MEASUREMENT: 1 });
  });

  test('says its title and how far it reaches', () => {
    const text = patternDxf({ ...drawing, title: 'Książka' });
    expect(text).toMatch(/^999\nKsiążka\n/);
    const { header, entities } = read(text);
    const points = entities.flatMap((entity) => (entity as Partial<ILwpolylineEntity>).vertices ?? []);
    const [low, high] = [header.$EXTMIN, header.$EXTMAX] as unknown as { x: number; y: number }[];
    expect(Math.max(...points.map(({ x }) => x))).toBeLessThanOrEqual(high!.x);
    expect(Math.max(...points.map(({ y }) => y))).toBeCloseTo(high!.y, 6);
    expect(Math.min(...points.map(({ x }) => x))).toBeCloseTo(low!.x, 6);
    // The cautions stand under the pieces.
    const rows = (entities as unknown as ITextEntity[]).filter(({ layer }) => layer === 'CAUTION');
    expect(Math.min(...rows.map(({ startPoint }) => startPoint.y))).toBeGreaterThan(low!.y);
  });

  test('has a layer for each meaning', () => {
    expect(Object.keys(written().tables.layer.layers)).toEqual(
      expect.arrayContaining(['CUT', 'HOLE', 'SLIT', 'FOLD', 'SEAM', 'MARK', 'TEXT', 'ENGRAVE', 'CAUTION']),
    );
  });

  test('has every outline closed, in true shape and size, arcs as arcs', () => {
    const outlines = on<ILwpolylineEntity>('CUT', 'LWPOLYLINE');
    const pieces = drawing.pieces.flatMap((piece) => Array.from({ length: piece.count }, () => piece));
    expect(outlines.length).toBe(pieces.length);
    pieces.forEach((piece, i) => {
      const outline = nth(outlines, i);
      expect(outline.shape).toBe(true);
      expect(outline.vertices.length).toBe(piece.outline.length);
      const points = pointsOf(outline);
      const { low } = boundsOf(points);
      expect(apart(moved(points, [-low[0], -low[1]]), flattened(piece.outline, 1e-4))).toBeLessThan(0.001);
      const area = Math.abs(areaD(points.map(([x, y]) => ({ x, y }))));
      expect(Math.abs(area / contourArea(piece.outline) - 1)).toBeLessThan(1e-6);
    });
  });

  test('has every hole as a circle of its diameter', () => {
    const holes = on<ICircleEntity>('HOLE', 'CIRCLE');
    expect(holes.length).toBe(drawing.pieces.reduce((sum, { holes, count }) => sum + holes * count, 0));
    for (const { radius } of holes) expect(radius).toBe(0.5);
  });

  test('has its words as text', () => {
    const words = on<ITextEntity>('TEXT', 'TEXT').map(({ text }) => text);
    expect(words).toContain('Outside');
  });
});

test('lacing slits are lines of their length', () => {
  const laced = patternDrawing(coverOf());
  const slits = read(patternDxf(laced)).entities.filter(({ layer }) => layer === 'SLIT') as ILineEntity[];
  expect(slits.length).toBe(laced.pieces.reduce((sum, { holes, count }) => sum + holes * count, 0));
  for (const { vertices } of slits)
    expect(Math.hypot(nth(vertices, 0).x - nth(vertices, 1).x, nth(vertices, 0).y - nth(vertices, 1).y)).toBeCloseTo(
      2.4,
      9,
    );
});

test('the same drawing gives the same file', () => {
  expect(patternDxf(drawing)).toBe(patternDxf(drawing));
});

test('arcs outside of outlines, if any, run counterclockwise', () => {
  for (const arc of written().entities.filter(({ type }) => type === 'ARC') as IArcEntity[])
    expect(arc.angleLength).toBeGreaterThan(0);
});
