import { rectangle } from '../math/contour.ts';
import type { Printer } from '../units/printer.ts';
import { directionMark } from './arrow.ts';
import { asCut, cutSum, given, heightSum, outsideSums, part } from './cutSums.ts';
import { type CutSum, type Entity, line, noLayers, type PieceDrawing, path } from './drawing.ts';
import { liningDifference } from './foldZones.ts';
import { holeMarks, holeWords } from './holeMarks.ts';
import { letteredPiece } from './letteredPiece.ts';
import { outsideOutline } from './outsideDrawing.ts';
import { LINING_TUCK, type Piece } from './pieces.ts';
import type { PatternSource, Seam } from './seam.ts';
import { strokeMarks } from './strokeMarks.ts';
import { pieceSumLines } from './sumColumn.ts';

/** The lining as it lies in the open cover, its grain side up: toward the book. */
export function liningDrawing(source: PatternSource, lining: Piece, seam: Seam, print: Printer): PieceDrawing {
  const { job, pieces } = source;
  const { width, height } = lining;
  const layers = noLayers();
  const isFull = job.construction.lining === 'full';
  const isLikeOutside = isFull && pieces.pocket.count > 0;
  const outline = isLikeOutside ? outsideOutline(source) : rectangle([0, 0], [width, height]);
  layers.cut.push(path(outline, true));
  const margin = job.seam.edgeMargin_mm;
  layers.seam.push(
    ...(isLikeOutside
      ? seam.lines.map((contour) => path(contour, true))
      : [margin, height - margin].map((y): Entity => line([0, y], [width, y]))),
  );
  const holes = seam.rows.flatMap((row) => row.holes).filter((hole) => hole.layers.includes('lining'));
  const frame = { origin: (width - pieces.outside.width) / 2, sign: 1 } as const;
  layers.hole.push(...holeMarks(job, holes, frame));
  const strokes = strokeMarks(source, seam, frame, print, ({ layers }) => layers.includes('lining'));
  layers.mark.push(...strokes.marks);
  layers.centre.push(line([width / 2, 0], [width / 2, height]));
  const arrow = directionMark(source, [0.75 * width, height / 2], height * 0.5, Math.PI / 2);
  layers.direction.push(...arrow.marks);
  const sums = isFull ? fullLiningSums(source, width) : centreLiningSums(source, width);
  return letteredPiece(
    source,
    { id: 'lining', name: isFull ? 'Full lining' : 'Centre lining', count: 1, width, height, outline, layers, sums },
    [
      holeWords(job, holes.length),
      ...pieceSumLines(sums, print),
      [`${print.length(liningDifference(source))} shorter round the spine`, 'than the outside'],
    ],
    { x: 0.04 * width, y: 0.15 * height, width: 0.42 * width, height: 0.7 * height },
    [...arrow.words, ...strokes.words],
  );
}

function centreLiningSums(source: PatternSource, width: number): CutSum[] {
  const { pieces, needs } = source;
  const { foreEdge, closed, leathers } = needs.thick;
  const covered = pieces.pocketDepth - foreEdge.seat - pieces.ease.foreEdge_mm;
  const parts = [
    part('book, fore-edge to fore-edge', closed.path.length),
    part('folds at the spine', closed.path.turning * (leathers.lining?.neutralDepth ?? 0)),
    part('board in the pocket', -covered, 2),
    given('tucked under the pocket mouth', LINING_TUCK, 2),
  ];
  return [
    cutSum('width', width, asCut(source.job, parts), 'opening flat, rounding, to end between holes'),
    heightSum(source),
  ];
}

function fullLiningSums(source: PatternSource, width: number): CutSum[] {
  const { pieces, needs } = source;
  if (pieces.pocket.count > 0) return outsideSums(source);
  const ends = asCut(source.job, [
    part('turned end with its turn', -(pieces.pocketDepth + needs.thick.foreEdge.turn), 2),
  ]);
  const parts = [given('width of the outside', pieces.outside.width), ...ends];
  return [cutSum('width', width, parts, 'rounding, to end between holes'), heightSum(source)];
}
