import type { Segment } from '../math/contour.ts';
import type { Vec2 } from '../math/vec2.ts';
import { type Entity, LAYERS, noLayers, type PieceDrawing } from './drawing.ts';

const QUARTER = Math.PI / 2;

/** A piece turned a quarter counterclockwise with all its words, its head at the left; it is not mirrored. */
export function turnedPiece(piece: PieceDrawing): PieceDrawing {
  const { width, height, outline } = piece;
  const layers = noLayers();
  for (const layer of LAYERS) layers[layer].push(...piece.layers[layer].map((entity) => turned(entity, height)));
  return {
    ...piece,
    width: height,
    height: width,
    outline: outline.map((segment) => turnedSegment(segment, height)),
    layers,
  };
}

const turnedPoint = ([x, y]: Vec2, height: number): Vec2 => [height - y, x];
const turnedStep = ([x, y]: Vec2): Vec2 => [-y, x];

const turnedSegment = (segment: Segment, height: number): Segment =>
  segment.kind === 'line'
    ? { kind: 'line', from: turnedPoint(segment.from, height), to: turnedPoint(segment.to, height) }
    : { ...segment, centre: turnedPoint(segment.centre, height), start: segment.start + QUARTER };

function turned(entity: Entity, height: number): Entity {
  switch (entity.kind) {
    case 'line':
    case 'arc':
      return turnedSegment(entity, height);
    case 'path':
      return { ...entity, segments: entity.segments.map((segment) => turnedSegment(segment, height)) };
    case 'text': {
      // The block is for a piece that is mirrored yet, which a turned one is not.
      const { block: _, ...text } = entity;
      return { ...text, at: turnedPoint(entity.at, height), rotation: entity.rotation + QUARTER };
    }
    case 'picture':
      return {
        ...entity,
        origin: turnedPoint(entity.origin, height),
        along: turnedStep(entity.along),
        down: turnedStep(entity.down),
      };
    case 'hatch':
      return {
        ...entity,
        boundary: entity.boundary.map((point) => turnedPoint(point, height)),
        angle: entity.angle + QUARTER,
      };
  }
}
