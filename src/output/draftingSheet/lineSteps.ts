import {
  type Entity,
  type Layer,
  type PatternSource,
  type PieceDrawing,
  type Printer,
  segmentEnd,
  segmentStart,
  turnAxis,
} from '../../core/index.ts';
import { sagitta } from './boxShape.ts';
import { measured } from './outlineSteps.ts';

/** Layers whose lines run from tail to head and are drawn. */
const DRAWN = ['centre', 'mouth', 'lining', 'fold'] as const satisfies readonly Layer[];
type DrawnLayer = (typeof DRAWN)[number];

/** Sentences for the lines on a piece from tail to head, each set off from the nearer upright edge. */
export function lineSteps(source: PatternSource, piece: PieceDrawing, print: Printer): string[] {
  return DRAWN.flatMap((layer) =>
    piece.layers[layer].flatMap((entity) => lineStep(source, piece, layer, entity, print)),
  );
}

function lineStep(
  source: PatternSource,
  { id, width }: PieceDrawing,
  layer: DrawnLayer,
  entity: Entity,
  print: Printer,
): string[] {
  if (entity.kind !== 'line' && entity.kind !== 'arc') return [];
  const [x] = segmentStart(entity);
  if (Math.abs(segmentEnd(entity)[0] - x) > 1e-6) return [];
  if (x === 0) return ['AD lies on the folded edge of the card: draw the other half through, or cut both together.'];
  // The folded edge of a half is beyond the centre line by what the fold takes.
  const isFromRight = x > width / 2 || id === 'half';
  const from = isFromRight ? width - x : x;
  // Where the leather bends is computed, and of no size that is cut.
  const size = layer === 'fold' ? print.length(from) : measured(from, print);
  const ends = isFromRight ? 'from B toward A and from C toward D' : 'from A toward B and from D toward C';
  const name = lineName(source, id, layer, isFromRight, from);
  const step = `${name}: mark ${size} ${ends}. Join the marks`;
  if (entity.kind === 'line') return [`${step}.`];
  const toward = isFromRight ? 'BC' : 'AD';
  return [
    `${step} by a curve: from the middle between them measure ${measured(sagitta(entity), print)} toward ${toward}. Bend a thin rule through the three points.`,
  ];
}

function lineName(
  source: PatternSource,
  id: PieceDrawing['id'],
  layer: DrawnLayer,
  isFront: boolean,
  fromEdge: number,
): string {
  const isCover = id === 'outside' || id === 'half';
  switch (layer) {
    case 'centre':
      return 'Centre line';
    case 'mouth':
      return id === 'half' ? 'Mouth of the pocket' : `Mouth of the ${isFront ? 'front' : 'back'} pocket`;
    case 'lining':
      return 'End of the lining';
    case 'fold':
      if (!isCover) return 'Fold';
      return isTurn(source, fromEdge) ? 'Fold of the turned end' : 'Fold at the spine';
  }
}

/** Whether a fold so far from the cut edge is that of a turned end. */
const isTurn = ({ pieces, needs, ...source }: PatternSource, fromEdge: number): boolean =>
  pieces.pocket.count === 0 &&
  fromEdge < turnAxis({ pieces, needs, ...source }) + needs.thick.foreEdge.turn / pieces.growth;
