import { holeNoun } from '../job/holeNoun.ts';
import type { Job } from '../job/jobSchema.ts';
import { type Contour, circle, type Segment, segmentEnd, segmentStart } from '../math/contour.ts';
import { connectedRuns } from '../math/contourPart.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import type { Vec2 } from '../math/vec2.ts';
import { directionMark } from './arrow.ts';
import { cutSum, given, heightSum, part } from './cutSums.ts';
import { type Drawing, type Entity, LAYERS, line, noLayers, type PieceDrawing, path } from './drawing.ts';
import { wrapPlaces } from './foldZones.ts';
import { holeMarks } from './holeMarks.ts';
import { letteredPiece } from './letteredPiece.ts';
import type { NamedMarks, Word } from './lettering.ts';
import { cardLines, cardNotes, ownCards, served } from './oneCard.ts';
import { endMark, outsideDrawing } from './outsideDrawing.ts';
import { drawingOf, otherPieces, type PatternParts, patternParts } from './patternDrawing.ts';
import { penLoopMarks } from './penLoop.ts';
import { holeShape, type PatternSource, slitAngle } from './seam.ts';
import { closureHoles, strapMarks } from './strap.ts';

/**
 * How much wider than half of the whole a pattern must be that is cut on folded card, mm.
 *
 *     h = W / 2 + c (1 - K pi / 2)
 *
 * h is from the folded edge to the cut, W the width of the opened card, c its thickness. Beyond a crease pressed flat, its
 * inside faces touching, each half is flat from c on; round the crease the fibre that keeps its length, K c from the inside,
 * is K c pi long: W = 2 (h - c) + K c pi. Negative for K over 2 / pi, where the crease gives more than it takes.
 * Assumption: the crease has no radius inside. K is that of scored card, `mockup.card.neutral`.
 */
export const foldExtra = ({ thickness_mm, neutral }: Pick<Job['mockup']['card'], 'thickness_mm' | 'neutral'>): number =>
  thickness_mm * (1 - (neutral * Math.PI) / 2);

/** Height of the words beside a mark, mm. */
const WORDS = 2.5;
const UPRIGHT = Math.PI / 2;

/**
 * The front half of the one card (`oneCard`), to lay on card folded in two and to cut through both layers: half the paper.
 * Its left edge lies on the folded edge, and is as far beyond the centre line as the thickness of the card asks for.
 *
 * What the other half does not share is marked and named on this one, to be drawn when the card is open: start and finish of the
 * seam, strap and pen loop. Slits that lean are pricked at their middles, because they lean the other way on the other half.
 * @param source a `CoverDesign`, or any job with its pieces and needs; in card for a trial
 */
export function halfCard(source: PatternSource): Drawing {
  const parts = patternParts(source);
  const others = otherPieces(source, parts);
  const serves = served(source);
  const drawing = drawingOf(source, parts, [halfDrawing(source, parts, others), ...ownCards(others, serves)]);
  return { ...drawing, notes: [...halfNotes(source, parts), ...cardNotes(source, serves), ...drawing.notes] };
}

function halfDrawing(source: PatternSource, parts: PatternParts, others: readonly PieceDrawing[]): PieceDrawing {
  const { job, pieces } = source;
  const { print, seam } = parts;
  const whole = pieces.outside;
  const { height } = whole;
  const middle = whole.width / 2;
  const extra = foldExtra(job.mockup.card);
  const width = middle + extra;
  const card = cardLines(source, others, served(source), print);
  // What both halves have in common.
  const common = outsideDrawing(source, { ...seam, starts: [], finishes: [] }, null, null, print, card);
  const ofHalf = (entity: Entity): Entity[] => frontPart(entity, middle, extra);

  const layers = noLayers();
  for (const layer of LAYERS)
    if (!['cut', 'centre', 'direction', 'text'].includes(layer))
      layers[layer].push(...common.layers[layer].flatMap(ofHalf));
  if (leans(job))
    layers.hole = layers.hole.map((slit) => (slit.kind === 'line' ? circle(middleOf(slit), PRICK) : slit));
  // One run, because an outline starts at the back.
  const edge = frontRuns(common.outline, middle, extra).flat();
  const outline = [...edge, line(segmentEnd(edge.at(-1)!), segmentStart(edge[0]!))];
  layers.cut.push(path(outline, true));
  layers.centre.push(line([0, 0], [0, height]));

  const own = ownMarks(source, parts).map((named) => onHalf(named, whole.width, extra));
  layers.mark.push(...own.flatMap(({ marks }) => marks));
  const { spine } = wrapPlaces(source);
  const fold = width - spine.from;
  const arrow = directionMark(source, [fold + 8, height / 2], height * 0.6, UPRIGHT);
  layers.direction.push(...arrow.marks);

  const low = Math.min(job.seam.edgeMargin_mm + 16, height / 4);
  const sums = [
    cutSum('width', width, [given('half of the outside', middle), part('for the fold of the card', extra)]),
    heightSum(source),
  ];
  return letteredPiece(
    source,
    { id: 'half', name: 'Half card', count: 1, width, height, outline, layers, sums },
    [
      `${print.exact(width)} from fold to cut edge`,
      `open: ${print.size(whole.width)} x ${print.size(height)}`,
      ...card.lines,
    ],
    { x: fold, y: 0.15 * height, width: width - fold, height: 0.7 * height },
    [
      ['lay this edge on the fold of the card', [3, height / 2], WORDS, UPRIGHT, 'centre'],
      ...own.flatMap(({ words }) => words),
      ...card.words.flatMap(([text, near, ...rest]): Word[] =>
        near[0] < middle
          ? []
          : [[text.replace('front pocket', 'pocket'), [near[0] - middle + extra, near[1]], ...rest]],
      ),
      ...arrow.words,
      ['fore-edge', [width - 12, low + 1], 3.5],
      ['head', [fold / 2, height - low - 1.5], 3.5],
      ['tail', [fold / 2, low + 1], 3.5],
    ],
  );
}

/** Radius of a pricked middle, mm. */
const PRICK = 0.5;

const middleOf = ({ from, to }: Extract<Segment, { kind: 'line' }>): Vec2 => [
  (from[0] + to[0]) / 2,
  (from[1] + to[1]) / 2,
];

/** Whether slits lean to the seam line: mirrored, such a slit leans the other way. */
const leans = (job: Job): boolean => (holeShape(job).slant ?? 0) % UPRIGHT > TOLERANCE.ratio;

/** The part of an entity at x of `middle` or more, where it lies on the half. What crosses the middle goes on to the fold. */
function frontPart(entity: Entity, middle: number, extra: number): Entity[] {
  switch (entity.kind) {
    case 'line':
    case 'arc':
      return frontSegment(entity, middle, extra);
    case 'path':
      return frontRuns(entity.segments, middle, extra).map((run) => path(run, false));
    case 'hatch': {
      const boundary = entity.boundary.map((at) => fromFold(at, middle, extra));
      return boundary.every(([x]) => x === 0) ? [] : [{ ...entity, boundary }];
    }
    case 'text':
    case 'picture':
      return [];
  }
}

/** The parts of a contour on the half, each of segments that follow on from one another. */
const frontRuns = (contour: Contour, middle: number, extra: number): Segment[][] =>
  connectedRuns(contour.flatMap((each) => frontSegment(each, middle, extra)));

const fromFold = ([x, y]: Vec2, middle: number, extra: number): Vec2 => [
  x <= middle + TOLERANCE.length ? 0 : Math.max(0, x - middle + extra),
  y,
];

function frontSegment(segment: Segment, middle: number, extra: number): Segment[] {
  const low = middle + TOLERANCE.length;
  if (segment.kind === 'line') {
    const { from, to } = segment;
    if (Math.max(from[0], to[0]) <= low) return [];
    const cut = (end: Vec2, other: Vec2): Vec2 => {
      if (end[0] >= middle) return end;
      return [middle, end[1] + ((other[1] - end[1]) * (middle - end[0])) / (other[0] - end[0])];
    };
    return [line(fromFold(cut(from, to), middle, extra), fromFold(cut(to, from), middle, extra))];
  }
  const { centre, sweep } = segment;
  const moved = { ...segment, centre: [centre[0] - middle + extra, centre[1]] as const };
  if (Math.abs(sweep) < 2 * Math.PI)
    return Math.max(segmentStart(segment)[0], segmentEnd(segment)[0]) > middle ? [moved] : [];
  // A hole on the centre line is halved by the fold.
  if (Math.abs(centre[0] - middle) <= TOLERANCE.length) return [{ ...moved, start: -UPRIGHT, sweep: Math.PI }];
  return centre[0] > middle ? [moved] : [];
}

/** Marks that one half has and the other has not, in the frame of the outside. */
function ownMarks(source: PatternSource, { seam, strap, loop }: PatternParts): NamedMarks[] {
  const frame = { origin: source.pieces.outside.width, sign: -1 } as const;
  const sewn = strap === null ? null : strapMarks(source, strap);
  return [
    ...seam.starts.map((hole) => endMark(source, hole, 'start')),
    ...seam.finishes.map((hole) => endMark(source, hole, 'finish')),
    ...(sewn === null || strap === null
      ? []
      : [{ ...sewn, marks: [...sewn.marks, ...holeMarks(source.job, closureHoles(strap), frame)] }]),
    ...(loop === null ? [] : [penLoopMarks(source, loop)]),
  ];
}

/** Marks of either half on this one, their words with the half that they belong to. */
function onHalf({ marks, words }: NamedMarks, whole: number, extra: number): NamedMarks {
  const middle = whole / 2;
  const x = (at: number): number => Math.abs(at - middle) + extra;
  const place = ([u, v]: Vec2): Vec2 => [x(u), v];
  return {
    marks: marks.map((mark): Entity => {
      if (mark.kind === 'line') return line(place(mark.from), place(mark.to));
      return mark.kind === 'arc' ? { ...mark, centre: place(mark.centre) } : mark;
    }),
    words: words.map(([text, near, ...rest]) => [
      `${text}, ${near[0] < middle ? 'back' : 'front'} only`,
      place(near),
      ...rest,
    ]),
  };
}

/** How the half is used, and what the thickness of the card does to it. */
function halfNotes(source: PatternSource, { seam, strap, loop, print }: PatternParts): string[] {
  const { job, pieces } = source;
  const { card } = job.mockup;
  const extra = foldExtra(card);
  const middle = pieces.outside.width / 2;
  const own = [
    ...(seam.starts.length > 0 ? ['start and finish of the seam'] : []),
    ...(strap === null ? [] : ['strap']),
    ...(strap?.tab ? ['buckle tab'] : []),
    ...(loop === null ? [] : ['pen loop']),
  ].join(', ');
  const isHalved = seam.rows.some(({ holes }) => holes.some(({ at }) => Math.abs(at[0] - middle) < TOLERANCE.length));
  const slit = print.size(holeShape(job).size);
  return [
    'Fold the card, its outside face out, and press the crease flat. Lay the half on it, the edge named for the fold along the folded edge. Cut and prick through both layers.',
    `Half of ${print.size(pieces.outside.width)} is ${print.exact(middle)}. The fold of card of ${print.size(card.thickness_mm)} ${extra < 0 ? 'gives' : 'takes'} ${print.small(Math.abs(extra))} of each half, so it is drawn ${print.exact(middle + extra)} wide. For card of another thickness make it again.`,
    ...(own === ''
      ? []
      : [`On one half alone, marked as front or back only: ${own}. Draw these when the card is open.`]),
    ...(leans(job)
      ? [
          `The ${holeNoun(job)} lean, so only their middles are pricked. Open the card and draw each ${slit} long at ${print.angle(slitAngle(job), 'nearest')} to the seam, alike all round.`,
        ]
      : []),
    ...(isHalved ? ['A hole at head and at tail lies on the fold: make it when the card is open.'] : []),
  ];
}
