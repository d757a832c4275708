import { flattened } from '../../../src/core/math/contour.ts';
import type { Vec2 } from '../../../src/core/math/vec2.ts';
import type { Drawing, Entity, PieceDrawing } from '../../../src/core/pattern/drawing.ts';
import { mirroredDrawing } from '../../../src/core/pattern/mirrorDrawing.ts';
import { nth } from '../../nth.ts';
import { type Found, readDxf, readSvg } from '../cuttingFileReading.ts';
import { boundsOf } from '../outlineDistance.ts';
import { followHpgl } from './hpglReading.ts';

/** Layers by pen, as the machine of the tests numbers them. */
const PENS: Readonly<Record<number, string>> = { 1: 'TEXT', 2: 'LINES', 5: 'INSIDE', 4: 'CUT' };

/** A machine's file as an independent reader finds it, y up from the lower left of the bed. */
export function readMachineFile(text: string, format: 'svg' | 'dxf' | 'hpgl', height: number): Found[] {
  if (format === 'dxf') return [...readDxf(text).found];
  if (format === 'svg')
    return readSvg(text).found.map((found) => ({
      ...found,
      points: found.points.map(([x, y]): Vec2 => [x, y + height]),
    }));
  return followHpgl(text).drawn.map(({ pen, points, arcs }) => ({
    layer: PENS[pen] ?? `pen ${pen}`,
    points,
    isClosed: Math.hypot(nth(points, 0)[0] - nth(points, -1)[0], nth(points, 0)[1] - nth(points, -1)[1]) < 1e-9,
    radii: Array.from({ length: arcs }, () => 0),
    text: null,
    height: 0,
    rotation: 0,
    width: null,
  }));
}

/** A piece as it is drawn, and where it lies on the bed. */
export interface Laid {
  readonly piece: PieceDrawing;
  readonly toBed: (point: Vec2) => Vec2;
}

const turns: readonly ((point: Vec2) => Vec2)[] = [
  ([x, y]) => [x, y],
  ([x, y]) => [-y, x],
  ([x, y]) => [-x, -y],
  ([x, y]) => [y, -x],
];

/** Every way in which a drawn piece, in some quarter turn, has the box of a part on the bed. */
export function waysToLie(drawing: Drawing, part: readonly Vec2[], mirrored: boolean, give: number): Laid[] {
  const box = boundsOf(part);
  return (mirrored ? mirroredDrawing(drawing) : drawing).pieces.flatMap((piece) =>
    turns.flatMap((turn): Laid[] => {
      const own = boundsOf(flattened(piece.outline, 0.001).map(turn));
      if (Math.abs(own.width - box.width) > give || Math.abs(own.height - box.height) > give) return [];
      const shift: Vec2 = [
        (box.low[0] + box.high[0] - own.low[0] - own.high[0]) / 2,
        (box.low[1] + box.high[1] - own.low[1] - own.high[1]) / 2,
      ];
      return [
        {
          piece,
          toBed: (point) => {
            const [x, y] = turn(point);
            return [x + shift[0], y + shift[1]];
          },
        },
      ];
    }),
  );
}

/** The middle of a hole, slit or slot. */
export function middleOf(hole: Entity): Vec2 {
  if (hole.kind === 'arc') return hole.centre;
  const points =
    hole.kind === 'line' ? [hole.from, hole.to] : hole.kind === 'path' ? flattened(hole.segments, 0.001) : [];
  const { low, high } = boundsOf(points);
  return [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2];
}
