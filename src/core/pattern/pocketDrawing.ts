import { bulgedLine, type Contour, corneredContour, type Segment } from '../math/contour.ts';
import { SQUARE } from '../math/corner.ts';
import type { Printer } from '../units/printer.ts';
import { directionMark } from './arrow.ts';
import { pocketSums } from './cutSums.ts';
import { noLayers, type PieceDrawing, type PieceTooling, path, type ToolingMarks } from './drawing.ts';
import { holeMarks, holeWords } from './holeMarks.ts';
import { letteredPiece } from './letteredPiece.ts';
import { mouthSagitta } from './mouth.ts';
import { pieceCorner, seamCorner } from './pieceCorner.ts';
import type { PatternSource, Seam } from './seam.ts';
import { strokeMarks } from './strokeMarks.ts';
import { pieceSumLines } from './sumColumn.ts';

/**
 * The pockets, grain side up: fore-edge at the left, mouth at the right. Head and tail have the same holes, so the back pocket
 * is that of the front turned by half a turn, and one drawing serves both unless they are tooled.
 */
export function pocketDrawings(
  source: PatternSource,
  seam: Seam,
  print: Printer,
  { pocket: front, backPocket: back }: ToolingMarks,
): PieceDrawing[] {
  if (front === undefined && back === undefined)
    return [pocketDrawing(source, seam, print, { id: 'pocket', name: 'Pocket', count: 2 })];
  return [
    pocketDrawing(source, seam, print, { id: 'pocket', name: 'Front pocket', count: 1 }, front),
    pocketDrawing(source, seam, print, { id: 'backPocket', name: 'Back pocket', count: 1 }, back),
  ];
}

function pocketDrawing(
  source: PatternSource,
  seam: Seam,
  print: Printer,
  piece: Pick<PieceDrawing, 'id' | 'name' | 'count'>,
  tooling?: PieceTooling,
): PieceDrawing {
  const { job, pieces } = source;
  const { width, height } = pieces.pocket;
  const layers = noLayers(tooling);
  const outline = pocketOutline(source);
  layers.cut.push(path(outline, true));
  layers.seam.push(path(seamPart(source), false));
  const holes = seam.rows.flatMap((row) => row.holes).filter((hole) => hole.layers.includes('frontPocket'));
  layers.hole.push(...holeMarks(job, holes, { origin: 0, sign: 1 }));

  const strokes = strokeMarks(source, seam, { origin: 0, sign: 1 }, print, ({ layers }) =>
    layers.includes('frontPocket'),
  );
  layers.mark.push(...strokes.marks);

  const clear = 2 * job.seam.edgeMargin_mm;
  const free = Math.max(5, width - clear - mouthSagitta(job, pieces));
  const arrow = directionMark(source, [clear + 0.88 * free, height / 2], height * 0.5, Math.PI / 2);
  layers.direction.push(...arrow.marks);
  const sums = pocketSums(source);
  return letteredPiece(
    source,
    { ...piece, width, height, outline, layers, sums },
    [
      'mouth at the right',
      `${holeWords(job, holes.length)}${piece.count === 1 ? '' : ' each'}`,
      ...pieceSumLines(sums, print),
    ],
    { x: clear, y: 0.2 * height, width: 0.78 * free, height: 0.6 * height },
    [...arrow.words, ...strokes.words],
  );
}

/** Corners of the outside at the fore-edge; square corners at the mouth, which is straight or scooped. */
export function pocketOutline(source: PatternSource): Contour {
  const { job, pieces } = source;
  const { width, height } = pieces.pocket;
  const { corner } = pieceCorner(job, pieces);
  const straight = corneredContour([
    { at: [0, 0], corner },
    { at: [width, 0], corner: SQUARE },
    { at: [width, height], corner: SQUARE },
    { at: [0, height], corner },
  ]);
  return straight.map((segment) =>
    segment.kind === 'line' && segment.from[0] === width && segment.to[0] === width ? mouthLine(source) : segment,
  );
}

/** The mouth from tail to head. */
export function mouthLine({ job, pieces }: PatternSource): Segment {
  const { width, height } = pieces.pocket;
  return bulgedLine([width, 0], [width, height], -mouthSagitta(job, pieces));
}

/** The seam line from the mouth at the head round the fore-edge to the mouth at the tail. */
function seamPart({ job, pieces }: PatternSource): Contour {
  const { width, height } = pieces.pocket;
  const margin = job.seam.edgeMargin_mm;
  const corner = seamCorner(pieceCorner(job, pieces).corner, margin);
  const round = corneredContour([
    { at: [width, height - margin], corner: SQUARE },
    { at: [margin, height - margin], corner },
    { at: [margin, margin], corner },
    { at: [width, margin], corner: SQUARE },
  ]);
  return round.slice(0, -1);
}
