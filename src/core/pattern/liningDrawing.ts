import { type Contour, corneredContour, SQUARE } from '../math/contour.ts';
import type { Printer } from '../units/printer.ts';
import { directionMark } from './arrow.ts';
import { cutSum, given, heightSum, outsideSums, part } from './cutSums.ts';
import { type CutSum, type Entity, line, noLayers, type PieceDrawing, path } from './drawing.ts';
import { liningDifference } from './foldZones.ts';
import { holeMarks } from './holeMarks.ts';
import { cutWords } from './label.ts';
import { letteringOn } from './lettering.ts';
import { outsideOutline } from './outsideDrawing.ts';
import { LINING_TUCK, type Piece } from './pieces.ts';
import type { PatternSource, Seam } from './seam.ts';
import { sumLines } from './sumColumn.ts';

/** The lining as it lies in the open cover, its grain side up: toward the book. */
export function liningDrawing(source: PatternSource, lining: Piece, seam: Seam, print: Printer): PieceDrawing {
  const { job, pieces } = source;
  const { width, height } = lining;
  const layers = noLayers();
  const isFull = job.construction.lining === 'full';
  const isLikeOutside = isFull && pieces.pocket.count > 0;
  const outline: Contour = isLikeOutside
    ? outsideOutline(source)
    : corneredContour(
        (
          [
            [0, 0],
            [width, 0],
            [width, height],
            [0, height],
          ] as const
        ).map((at) => ({ at, corner: SQUARE })),
      );
  layers.cut.push(path(outline, true));
  const margin = job.seam.edgeMargin_mm;
  layers.seam.push(
    ...(isLikeOutside
      ? seam.lines.map((contour) => path(contour, true))
      : [margin, height - margin].map((y): Entity => line([0, y], [width, y]))),
  );
  const holes = seam.rows.flatMap((row) => row.holes).filter((hole) => hole.layers.includes('lining'));
  layers.hole.push(...holeMarks(job, holes, { origin: (width - pieces.outside.width) / 2, sign: 1 }));
  layers.centre.push(line([width / 2, 0], [width / 2, height]));
  const arrow = directionMark(source, [0.75 * width, height / 2], height * 0.5, Math.PI / 2);
  layers.direction.push(...arrow.lines);
  const words = letteringOn({ outline, width, height }, layers);
  const along = arrow.words.flatMap((word) => words.word(...word));
  const sums = liningSums(source, lining, isFull);
  layers.text.push(
    ...words.label(
      isFull ? 'Full lining' : 'Centre lining',
      [
        cutWords(1, source),
        `${holes.length} ${job.seam.method === 'lacing' ? 'slits' : 'holes'}`,
        ...sums.map((sum) => sumLines(sum.dimension === 'height' ? { ...sum, parts: [] } : sum, print)),
        [`${print.length(liningDifference(source))} shorter round the spine`, 'than the outside'],
      ],
      { x: 0.04 * width, y: 0.15 * height, width: 0.42 * width, height: 0.7 * height },
    ),
    ...along,
  );
  const name = isFull ? 'Full lining' : 'Centre lining';
  const { unwritten } = words;
  return { id: 'lining', name, count: 1, width, height, outline, layers, sums, holes: holes.length, unwritten };
}

function liningSums(source: PatternSource, { width }: Piece, isFull: boolean): CutSum[] {
  const { job, pieces, needs } = source;
  const { foreEdge, closed, leathers } = needs.thick;
  const height = heightSum(source);
  if (!isFull) {
    const covered = pieces.pocketDepth - foreEdge.seat - job.ease.foreEdge_mm;
    const depth = leathers.lining?.neutralDepth ?? 0;
    const bare = closed.path.length;
    const parts = [
      part('book, fore-edge to fore-edge', bare),
      part('folds at the spine', closed.path.turning * depth),
      part('board in the pocket', -covered, 2),
      given('tucked under the pocket mouth', LINING_TUCK, 2),
    ];
    return [cutSum('width', width, parts, 'opening flat, rounding, to end between holes'), height];
  }
  if (pieces.pocket.count > 0) return outsideSums(source);
  const parts = [
    given('width of the outside', pieces.outside.width),
    part('turned end with its turn', -(pieces.pocketDepth + foreEdge.turn), 2),
  ];
  return [cutSum('width', width, parts, 'rounding, to end between holes'), height];
}
