import { mirroredContour } from '../math/contour.ts';
import type { Vec2 } from '../math/vec2.ts';
import { type Drawing, type Entity, LAYERS, noLayers, type PieceDrawing } from './drawing.ts';
import { textBox } from './textBox.ts';

/** The pattern as seen from the flesh side: every piece mirrored in its upright middle, its words still readable. */
export const mirroredDrawing = (drawing: Drawing): Drawing => ({
  ...drawing,
  faceUp: fromBehind(drawing.faceUp),
  notes: drawing.notes.map(fromBehind),
  pieces: drawing.pieces.map(mirroredPiece),
});

function mirroredPiece(piece: PieceDrawing): PieceDrawing {
  const layers = noLayers();
  for (const layer of LAYERS) layers[layer].push(...piece.layers[layer].map((entity) => mirrored(entity, piece.width)));
  const unwritten = piece.unwritten.map(fromBehind);
  return { ...piece, outline: mirroredContour(piece.outline, piece.width), layers, unwritten };
}

/** Words about a piece, changed to what is seen from its other side. */
const fromBehind = (words: string): string =>
  words
    .replace('grain side up', 'flesh side up')
    .replace('outside face up', 'inside face up')
    .replace('drawn side up', 'drawn side down')
    .replace('at the right', 'at the left');

function mirrored(entity: Entity, width: number): Entity {
  const flip = ([x, y]: Vec2): Vec2 => [width - x, y];
  switch (entity.kind) {
    case 'line':
    case 'arc':
      return mirroredContour([entity], width)[0]!;
    case 'path':
      return { ...entity, segments: mirroredContour(entity.segments, width) };
    case 'text': {
      const { x, width: long } = textBox(entity);
      const [from, to] = entity.block ?? [x, x + long];
      const text = fromBehind(entity.text);
      const shift = width - from - to;
      return { ...entity, at: [entity.at[0] + shift, entity.at[1]], block: [from + shift, to + shift], text };
    }
    case 'picture': {
      const [along, down] = [entity.along, entity.down].map(([x, y]): Vec2 => [-x, y]);
      return { ...entity, origin: flip(entity.origin), along: along!, down: down! };
    }
    case 'hatch':
      return { ...entity, boundary: entity.boundary.map(flip).reverse(), angle: Math.PI - entity.angle };
  }
}
