import type { Segment } from '../math/contour.ts';
import type { Vec2 } from '../math/vec2.ts';
import { type Entity, LAYERS, noLayers, type PieceDrawing } from './drawing.ts';

const QUARTER = Math.PI / 2;

/**
 * A piece turned a quarter clockwise with all its words, its head at the right; it is not mirrored. Upright words, which read upward,
 * become level, and no words stand on their heads.
 */
export function turnedPiece(piece: PieceDrawing): PieceDrawing {
  const { width, height, outline } = piece;
  const layers = noLayers();
  for (const layer of LAYERS) layers[layer].push(...piece.layers[layer].map((entity) => turned(entity, width)));
  return {
    ...piece,
    width: height,
    height: width,
    outline: outline.map((segment) => turnedSegment(segment, width)),
    layers,
  };
}

const turnedPoint = ([x, y]: Vec2, width: number): Vec2 => [y, width - x];
const turnedStep = ([x, y]: Vec2): Vec2 => [y, -x];

const turnedSegment = (segment: Segment, width: number): Segment =>
  segment.kind === 'line'
    ? { kind: 'line', from: turnedPoint(segment.from, width), to: turnedPoint(segment.to, width) }
    : { ...segment, centre: turnedPoint(segment.centre, width), start: segment.start - QUARTER };

function turned(entity: Entity, width: number): Entity {
  switch (entity.kind) {
    case 'line':
    case 'arc':
      return turnedSegment(entity, width);
    case 'path':
      return { ...entity, segments: entity.segments.map((segment) => turnedSegment(segment, width)) };
    case 'text': {
      // The block is for a piece that is mirrored yet, which a turned one is not.
      const { block: _, ...text } = entity;
      return { ...text, at: turnedPoint(entity.at, width), rotation: entity.rotation - QUARTER };
    }
    case 'picture':
      return {
        ...entity,
        origin: turnedPoint(entity.origin, width),
        along: turnedStep(entity.along),
        down: turnedStep(entity.down),
      };
    case 'hatch':
      return {
        ...entity,
        boundary: entity.boundary.map((point) => turnedPoint(point, width)),
        angle: entity.angle - QUARTER,
      };
  }
}
