import { bulgedLine, type Contour, corneredContour, mirroredContour, type Segment } from '../math/contour.ts';
import type { Vec2 } from '../math/vec2.ts';
import type { Printer } from '../units/printer.ts';
import { directionMark } from './arrow.ts';
import { outsideSums } from './cutSums.ts';
import { type Entity, type Hatch, line, noLayers, type PieceDrawing, path } from './drawing.ts';
import { wrapPlaces } from './foldZones.ts';
import { holeMarks } from './holeMarks.ts';
import { cutWords } from './label.ts';
import { letteringOn, type NamedMarks, type Word } from './lettering.ts';
import { mouthSagitta } from './mouth.ts';
import { type PenLoop, penLoopMarks } from './penLoop.ts';
import { pieceCorner } from './pieceCorner.ts';
import { type PatternSource, type Seam, type SeamHole, turnAxis } from './seam.ts';
import { type Strap, strapMarks } from './strap.ts';
import { sumLines } from './sumColumn.ts';

/** How far skiving runs out on either side of a fold, mm. Common practice, no source. */
const SKIVE_RUNOUT = 3;

/** Cut edge of the outside; turned ends have the pocket mouths for edges. Symmetric, so the same seen from either side. */
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
  const { corner } = pieceCorner(job, pieces);
  return corneredContour(
    (
      [
        [0, 0],
        [width, 0],
        [width, height],
        [0, height],
      ] as const
    ).map((at) => ({ at, corner })),
  );
}

/** What is sewn to the outside beside the pockets. */
export interface Fittings {
  readonly strap: Strap | null;
  readonly loop: PenLoop | null;
}

export function outsideDrawing(
  source: PatternSource,
  seam: Seam,
  { strap, loop }: Fittings,
  print: Printer,
): PieceDrawing {
  const { job, pieces, needs } = source;
  const { width, height } = pieces.outside;
  const place = { origin: width, sign: -1 } as const;
  const outline = outsideOutline(source);
  const places = wrapPlaces(source);
  const layers = noLayers();
  const upright = (x: number): Segment => ({ kind: 'line', from: [width - x, 0], to: [width - x, height] });

  layers.cut.push(path(outline, true));
  for (const contour of seam.lines) layers.seam.push(path(mirroredContour(contour, width), seam.isClosed));

  const body = seam.rows.flatMap(({ holes }) => holes);
  layers.hole.push(...holeMarks(job, body, place));
  const axis = turnAxis(source);
  for (const [end, fold] of [
    ['frontTurnedEnd', axis],
    ['backTurnedEnd', width - axis],
  ] as const) {
    // The second layer of the row is the first one mirrored in the fold.
    const covered = body.filter((hole) => hole.layers.includes(end));
    layers.hole.push(...holeMarks(job, covered, { origin: width - 2 * fold, sign: 1 }));
  }

  const isTurned = pieces.pocket.count === 0;
  for (const { from, to } of places.folds) layers.fold.push(upright((from + to) / 2));
  if (isTurned) {
    const [mouth, turn] = [pieces.pocketDepth, needs.thick.foreEdge.turn];
    for (const x of [mouth, mouth + turn]) layers.fold.push(upright(x), upright(width - x));
  }
  const { foldThickness_mm: skived, max_mm: full } = job.leather.outside;
  if (skived !== null && skived < full)
    for (const { from, to } of places.folds)
      layers.skive.push(band(width - to - SKIVE_RUNOUT, width - from + SKIVE_RUNOUT, height));

  layers.centre.push(upright(width / 2));
  layers.book.push(...bookGuide(source));

  const clear = 1.5 * job.seam.edgeMargin_mm;
  for (const { layer, x } of seam.steps) {
    if (layer === 'lining') continue;
    const at = width - x;
    layers.mark.push(line([at, 0], [at, clear]), line([at, height], [at, height - clear]));
  }
  const named: Word[] = [];
  for (const { marks, words } of [
    ...seam.starts.map((hole) => endMark(source, hole, 'start')),
    ...seam.finishes.map((hole) => endMark(source, hole, 'finish')),
  ]) {
    layers.mark.push(...marks);
    named.push(...words);
  }
  if (strap !== null) {
    const { marks, holes, words } = strapMarks(source, strap);
    layers.mark.push(...marks);
    layers.hole.push(...holes);
    named.push(...words);
  }
  if (loop !== null) {
    const { marks, words } = penLoopMarks(source, loop);
    layers.mark.push(...marks);
    named.push(...words);
  }

  const front = { from: places.frontBoard, to: places.spine.from };
  const arrow = directionMark(source, [width - (front.from + front.to) / 2, height / 2], height * 0.6, Math.PI / 2);
  layers.direction.push(...arrow.lines);

  const low = Math.min(job.seam.edgeMargin_mm + 16, height / 4);
  const sums = outsideSums(source);
  const count = layers.hole.length;
  const room = front.to - front.from;
  const back = width - places.backBoard;
  const words = letteringOn({ outline, width, height }, layers);
  named.push(
    ...arrow.words,
    ['back', [back + room / 2, low + 1], 3.5],
    ['front', [width - front.from - room / 2, low + 1], 3.5],
    ['head', [width / 2 + 6, height - low - 1.5], 3.5],
    ['tail', [width / 2 + 6, low + 1], 3.5],
  );
  const marked = named.flatMap((word) => words.word(...word));
  layers.text.push(
    ...words.label(
      'Outside',
      [
        cutWords(1, source),
        ...(count > 0 ? [`${count} ${job.seam.method === 'lacing' ? 'slits' : 'holes'}`] : []),
        ...sums.map((sum) => sumLines(sum, print)),
      ],
      { x: back + 0.08 * room, y: 0.15 * height, width: 0.84 * room, height: 0.7 * height },
    ),
    ...marked,
  );
  const { unwritten } = words;
  return { id: 'outside', name: 'Outside', count: 1, width, height, outline, layers, sums, holes: count, unwritten };
}

/** Where the seam starts or finishes: a line from its hole inward, and the word at its end; the finish stands lower. */
function endMark({ job, pieces }: PatternSource, { at }: SeamHole, text: 'start' | 'finish'): NamedMarks {
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

const band = (from: number, to: number, height: number): Hatch => ({
  kind: 'hatch',
  boundary: [
    [from, 0],
    [to, 0],
    [to, height],
    [from, height],
  ],
  angle: Math.PI / 4,
  spacing: 3,
});

/** The two boards of the closed book as they lie under the outside, seen from its grain side. */
function bookGuide(source: PatternSource): Entity[] {
  const { job, pieces, needs } = source;
  const { width, height } = pieces.outside;
  const { frontBoard, backBoard } = wrapPlaces(source);
  const board = needs.thick.book;
  const lean = (job.ease.head_mm - job.ease.tail_mm) / 2;
  const low = (height - board.height) / 2 - lean;
  return [
    [width - frontBoard - board.width, width - frontBoard],
    [width - backBoard, width - backBoard + board.width],
  ].map(([from, to]) =>
    path(
      corneredContour(
        [
          [from!, low],
          [to!, low],
          [to!, low + board.height],
          [from!, low + board.height],
        ].map(([x, y]) => ({ at: [x!, y!] as Vec2, corner: { style: 'rounded', size: 0 } })),
      ),
      true,
    ),
  );
}
