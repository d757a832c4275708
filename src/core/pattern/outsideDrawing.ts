import { SKIVE_RUNOUT } from '../leather/leatherModel.ts';
import { bulgedLine, type Contour, mirroredContour, rectangle, type Segment, segmentStart } from '../math/contour.ts';
import type { Printer } from '../units/printer.ts';
import { directionMark } from './arrow.ts';
import { outsideSums } from './cutSums.ts';
import { type Entity, line, noLayers, type PieceDrawing, type PieceTooling, path } from './drawing.ts';
import { wrapPlaces } from './foldZones.ts';
import { holeMarks, holeWords } from './holeMarks.ts';
import { letteredPiece } from './letteredPiece.ts';
import type { LabelLines, NamedMarks, Word } from './lettering.ts';
import { mouthSagitta } from './mouth.ts';
import { type PenLoop, penLoopMarks } from './penLoop.ts';
import { pieceCorner } from './pieceCorner.ts';
import { type PatternSource, type Seam, type SeamHole, turnAxis } from './seam.ts';
import { closureHoles, type Strap, strapMarks } from './strap.ts';
import { strokeMarks } from './strokeMarks.ts';
import { sumLines } from './sumColumn.ts';

/** Cut edge of the outside, the same from either side; of turned ends the pocket mouths are its edges. */
export function outsideOutline({ job, pieces }: PatternSource): Contour {
  const { width, height } = pieces.outside;
  if (pieces.pocket.count === 0) {
    const scoop = -mouthSagitta(job, pieces);
    return [
      { kind: 'line', from: [0, 0], to: [width, 0] },
      bulgedLine([width, 0], [width, height], scoop),
      { kind: 'line', from: [width, height], to: [0, height] },
      bulgedLine([0, height], [0, 0], scoop),
    ];
  }
  return rectangle([0, 0], [width, height], pieceCorner(job, pieces).corner);
}

/** What a card that serves for every piece shows besides the outside: see `oneCard`. */
export interface CardLines {
  readonly mouth: readonly Segment[];
  readonly lining: readonly Segment[];
  readonly words: readonly Word[];
  readonly lines: readonly LabelLines[];
}

export function outsideDrawing(
  source: PatternSource,
  seam: Seam,
  strap: Strap | null,
  loop: PenLoop | null,
  print: Printer,
  card: CardLines | null = null,
  tooling?: PieceTooling,
): PieceDrawing {
  const { job, pieces, needs } = source;
  const { width, height } = pieces.outside;
  const isTurned = pieces.pocket.count === 0;
  const frame = { origin: width, sign: -1 } as const;
  const outline = outsideOutline(source);
  const { frontBoard, backBoard, folds, spine } = wrapPlaces(source);
  const layers = noLayers(tooling);
  const upright = (x: number): Segment => ({ kind: 'line', from: [width - x, 0], to: [width - x, height] });

  layers.cut.push(path(outline, true));
  layers.seam.push(...seam.lines.map((contour) => path(mirroredContour(contour, width), seam.isClosed)));

  layers.hole.push(...seamMarks(source, seam));
  if (strap !== null) layers.hole.push(...holeMarks(job, closureHoles(strap), frame));

  for (const { from, to } of folds) layers.fold.push(upright((from + to) / 2));
  const turns = isTurned ? [pieces.pocketDepth, pieces.pocketDepth + needs.thick.foreEdge.turn] : [];
  for (const x of turns.map((made) => made / pieces.growth)) layers.fold.push(upright(x), upright(width - x));

  const { foldThickness_mm: skived, max_mm: full } = job.leather.outside;
  if (skived !== null && skived < full)
    layers.skive.push(
      ...folds.map(({ from, to }): Entity => {
        const [low, high] = [width - to - SKIVE_RUNOUT, width - from + SKIVE_RUNOUT];
        const boundary = rectangle([low, 0], [high, height]).map(segmentStart);
        return { kind: 'hatch', boundary, angle: Math.PI / 4, spacing: 3 };
      }),
    );

  layers.centre.push(upright(width / 2));
  layers.book.push(...bookGuide(source));

  const notch = 1.5 * job.seam.edgeMargin_mm;
  for (const { layer, x } of seam.steps) {
    if (layer === 'lining') continue;
    const at = width - x;
    layers.mark.push(line([at, 0], [at, notch]), line([at, height], [at, height - notch]));
  }
  layers.mouth.push(...(card?.mouth ?? []));
  layers.lining.push(...(card?.lining ?? []));

  const named = [
    ...seam.starts.map((hole) => endMark(source, hole, 'start')),
    ...seam.finishes.map((hole) => endMark(source, hole, 'finish')),
    ...(strap === null ? [] : [strapMarks(source, strap)]),
    ...(loop === null ? [] : [penLoopMarks(source, loop)]),
    strokeMarks(source, seam, frame, print),
  ];
  layers.mark.push(...named.flatMap(({ marks }) => marks));

  // Clear of the mouth line of a card.
  const clear = card !== null && spine.from - pieces.pocket.width > 10 ? pieces.pocket.width : frontBoard;
  const arrow = directionMark(source, [width - (clear + spine.from) / 2, height / 2], height * 0.6, Math.PI / 2);
  layers.direction.push(...arrow.marks);

  const sums = outsideSums(source);
  const low = Math.min(job.seam.edgeMargin_mm + 16, height / 4);
  const room = spine.from - frontBoard;
  const back = width - backBoard;
  const count = layers.hole.length;
  const name = card === null ? 'Outside' : 'One card';
  return letteredPiece(
    source,
    { id: 'outside', name, count: 1, width, height, outline, layers, sums },
    [...(count > 0 ? [holeWords(job, count)] : []), ...(card?.lines ?? []), ...sums.map((sum) => sumLines(sum, print))],
    { x: back + 0.08 * room, y: 0.15 * height, width: 0.84 * room, height: 0.7 * height },
    [
      ...named.flatMap(({ words }) => words),
      ...(card?.words ?? []),
      ...arrow.words,
      ['back', [back + room / 2, low + 1], 3.5],
      ['front', [width - frontBoard - room / 2, low + 1], 3.5],
      ['head', [width / 2 + 6, height - low - 1.5], 3.5],
      ['tail', [width / 2 + 6, low + 1], 3.5],
    ],
  );
}

/** The holes of the seam as they are cut in the outside, seen from its grain side. */
export function seamMarks(source: PatternSource, seam: Seam): Segment[] {
  const { job, pieces } = source;
  const { width } = pieces.outside;
  const holes = seam.rows.flatMap((row) => row.holes);
  const axis = turnAxis(source);
  return [
    ...holeMarks(job, holes, { origin: width, sign: -1 }),
    ...(
      [
        ['frontTurnedEnd', axis],
        ['backTurnedEnd', width - axis],
      ] as const
    ).flatMap(([end, fold]) => {
      // The second layer has the holes of the first, mirrored in the fold.
      const covered = holes.filter((hole) => hole.layers.includes(end));
      return holeMarks(job, covered, { origin: width - 2 * fold, sign: 1 });
    }),
  ];
}

/** Mark of the start or finish of a seam: a line from its hole inward, longer at the start, and the word at its end. */
export function endMark({ job, pieces }: PatternSource, { at }: SeamHole, text: 'start' | 'finish'): NamedMarks {
  const { width, height } = pieces.outside;
  const inward = at[1] > height / 2 ? -1 : 1;
  const x = width - at[0];
  const reach = job.seam.edgeMargin_mm + (text === 'start' ? 9 : 5);
  const end = at[1] + inward * reach;
  return {
    marks: [line([x, at[1] + inward * 1.2], [x, end])],
    words: [[text, [x + (x < width / 2 ? 4.5 : -4.5), end - inward], 2.5, 0, 'mark']],
  };
}

/** The two boards of the closed book as they lie under the outside, seen from its grain side. */
function bookGuide(source: PatternSource): Entity[] {
  const { pieces, needs } = source;
  const { width, height } = pieces.outside;
  const { frontBoard, backBoard } = wrapPlaces(source);
  const board = needs.thick.book;
  const lean = (pieces.ease.head_mm - pieces.ease.tail_mm) / 2;
  const low = (height - board.height) / 2 - lean;
  const boards = [
    [width - frontBoard - board.width, width - frontBoard],
    [width - backBoard, width - backBoard + board.width],
  ] as const;
  return boards.map(([from, to]) => path(rectangle([from, low], [to, low + board.height]), true));
}
