import type { CoverDesign } from '../fold/coverDesign.ts';
import { changeOf, isChangeTested, routeWords, TEST_FIRST } from '../leather/changeOf.ts';
import { reachOf } from '../math/box2.ts';
import { type Contour, rectangle, type Segment } from '../math/contour.ts';
import { contourWithin, movedContour, turnedContour } from '../math/contourPart.ts';
import { addScaled, distance, type Vec2 } from '../math/vec2.ts';
import {
  type Drawing,
  type Entity,
  line,
  noLayers,
  type PieceDrawing,
  path,
  pictureFrame,
  tracingId,
} from '../pattern/drawing.ts';
import { letteringOn, type Word } from '../pattern/lettering.ts';
import { patternDrawing } from '../pattern/patternDrawing.ts';
import { type Printer, printer } from '../units/printer.ts';
import { designWarnings } from './designWarnings.ts';
import { FACE_TITLES, warningWords } from './designWords.ts';
import { REGISTER, registerLines, registerMark } from './registerMarks.ts';
import type { ToolingArea } from './toolingArea.ts';
import { designEntities, type TooledFace } from './toolingMarks.ts';

/** Paper beyond the edges of the piece, mm: room for half of each register mark, and for words. */
const BEYOND = 9;

/** Paper beyond the register marks, where it ends within the piece, mm. */
const PAST = 6;

/** Least width of the paper between two ends that are none of the piece, mm: room for the words. */
const LEAST = 110;

/** How far the chords of a cut edge may stray where the paper ends across a curve of it, mm. */
const CHORD = 0.01;

/** Height of the words, mm. */
const WORDS = 2.5;

/**
 * Tracings of all faces that are tooled, in true size for the piece as it is cut: grain side up, head at the top.
 *
 * The cut piece is larger than the finished one by what the leather shrinks in making. Four register marks, rings with a
 * cross, stand on the cut edges at head and tail: on corners of the piece, or whole steps of a rule from one of its ends.
 * The paper is as wide as the face with its designs, and goes on to an end of the piece that is near.
 * @param tooled faces of the same design; those without designs have no tracing
 */
export function tracingDrawing(design: CoverDesign, tooled: readonly TooledFace[]): Drawing {
  const { job } = design;
  const print = printer(job.work.units);
  const { pieces } = patternDrawing(design);
  const traced = tooled
    .filter(({ designs }) => designs.length > 0)
    .map((face) => tracing(face, pieces.find(({ id }) => id === face.area.piece)!, print));
  return {
    title: job.name,
    units: job.work.units,
    faceUp: 'drawn side up',
    pieces: traced.map(({ sheet }) => sheet),
    lengths: [],
    holes: 0,
    notes: [USE, sizeNote(design, print), ...traced.flatMap(({ notes }) => notes)],
  };
}

/** Common practice, no source. */
const USE =
  'Lay each tracing on the grain side of the cut piece, its rings on the places named for them. Tape it down. ' +
  'Where damp leather does not meet all four, lay the centre lines first and share the difference.';

/** By how much a tracing differs from the finished face, and why. */
function sizeNote({ job }: CoverDesign, print: Printer): string {
  const { width: across, height: along } = changeOf(job);
  if (along === 0 && across === 0)
    return 'Drawn in the finished size: this leather keeps its size in making. Leather that is dampened for tooling may not: see Worked, in Construction.';
  const drawn = (change: number, way: string): string =>
    `${print.share(Math.abs(1 / (1 + change) - 1), 2)} ${change > 0 ? 'smaller' : 'larger'} ${way}`;
  return (
    `Drawn for the piece as it is cut: ${drawn(along, 'from head to tail')} and ${drawn(across, 'across')} than on the finished cover. ` +
    `Leather ${routeWords(job)} changes its size by that much until it is dry.${isChangeTested(job) ? '' : ` ${TEST_FIRST}`}`
  );
}

function tracing(tooled: TooledFace, cut: PieceDrawing, print: Printer) {
  const { area, designs } = tooled;
  const piece = area.isTurned ? turnedPiece(cut) : cut;
  const span = drawnSpan(tooled, cut.width);
  const lines = registerLines(piece.outline, cut, span, print.units);
  const ends = paperEnds(lines, span, cut.width);
  const toSheet: Vec2 = [-ends[0], BEYOND];
  const size = { width: ends[1] - ends[0], height: cut.height + 2 * BEYOND };
  const rings = lines.flatMap(({ x }, side) =>
    [0, cut.height].map((edge, i) => ({
      at: addScaled([x, edge], toSheet, 1),
      name: 'ABCD'[2 * side + i]!,
      /** Away from the middle of the paper. */
      outward: [side === 0 ? -1 : 1, i === 0 ? -1 : 1] as const,
    })),
  );
  const layers = drawnLayers(tooled, piece, { toSheet, ends, size });
  layers.mark.push(...rings.flatMap(({ at }) => registerMark(at)));
  const places = lines.map(({ at, from }, side) => {
    const named = side === 0 ? 'rings A and B' : 'rings C and D';
    return `${named}: ${at === 0 ? 'corners' : `${print.size(at)} from ${endWords(area)[from]}`}`;
  });

  const sheet = {
    id: tracingId(area.face),
    name: `${FACE_TITLES[area.face]} tracing` as const,
    count: 1,
    ...size,
    outline: rectangle([0, 0], [size.width, size.height]),
    layers,
    sums: [],
    holes: layers.hole.length,
  };
  const lettering = letteringOn(sheet);
  const besideCentre = onCut(area, area.centre)[0] + toSheet[0] + REACH;
  const words: Word[] = [
    ...rings.map(
      ({ at, name, outward: [x, y] }): Word => [name, [at[0] + x * NEAR_RING, at[1] + y * NEAR_RING], WORDS],
    ),
    ['head', [besideCentre, size.height - PAST_EDGE], WORDS],
    ['tail', [besideCentre, PAST_EDGE], WORDS],
  ];
  const beside = words.flatMap((word) => lettering.word(...word));
  // Off the middle, where designs stand, and off the tail, where the joint of two tiles would cut it.
  const low = { x: 0, y: 0, width: size.width, height: 0.6 * size.height };
  layers.text.push(...lettering.label(sheet.name, ['drawn side up', ...places], low), ...beside);
  const [a, , , d] = rings;
  return {
    sheet: { ...sheet, unwritten: lettering.unwritten },
    notes: [
      `${sheet.name}: ${print.length(distance(a!.at, d!.at))} from ring A at the tail to ring D at the head.`,
      ...designs.flatMap((placed) => [
        ...placed.lacking.map((what) => `${sheet.name} is not whole: ${what}.`),
        ...designWarnings(placed, area).map(
          (warning) => `${FACE_TITLES[area.face]}. ${warningWords(placed.design, warning, print)}`,
        ),
      ]),
    ],
  };
}

/** Where the paper begins and ends along the piece: beyond an end of it that is near, else beyond its register marks. */
function paperEnds(
  [left, right]: ReturnType<typeof registerLines>,
  span: readonly [number, number],
  width: number,
): readonly [from: number, to: number] {
  const [from, to] = [Math.min(span[0], left.x) - PAST, Math.max(span[1], right.x) + PAST];
  const more = Math.max(0, LEAST - (to - from)) / 2;
  return [left.reachesEnd ? -BEYOND : from - more, right.reachesEnd ? width + BEYOND : to + more];
}

interface Paper {
  readonly toSheet: Vec2;
  readonly ends: readonly [number, number];
  readonly size: { readonly width: number; readonly height: number };
}

/** Cut edge and holes of the piece, centre lines, clear part and designs of the face, on the paper. */
function drawnLayers({ area, designs }: TooledFace, { outline, layers: cut }: PieceDrawing, paper: Paper) {
  const { toSheet, ends, size } = paper;
  const onSheet = (finished: Vec2): Vec2 => addScaled(onCut(area, finished), toSheet, 1);
  const onPaper = (contour: Contour) => contourWithin(contour, ...ends, CHORD).map((run) => movedContour(run, toSheet));
  const layers = noLayers();
  layers.cut.push(...onPaper(outline).map((run) => path(run, false)));
  layers.hole.push(...segmentsOf(cut.hole).flatMap((hole) => onPaper([hole]).flat()));
  const [x, y] = onSheet(area.centre);
  layers.centre.push(
    line([x, PAST_EDGE], [x, size.height - PAST_EDGE]),
    line([PAST_EDGE, y], [size.width - PAST_EDGE, y]),
  );
  if (area.clear !== null) {
    const [left, right] = area.clear.x;
    const [low, high] = area.clear.y;
    layers.area.push(path(rectangle(onSheet([left, low]), onSheet([right, high])), true));
  }
  layers.tooling.push(...designs.flatMap((placed) => designEntities(placed, onSheet)));
  return layers;
}

/** From the edge of the paper to the end of a centre line, which crosses the edge of the piece by as much as a ring's cross, mm. */
const PAST_EDGE = BEYOND - REGISTER.cross;

/** From a ring to its letter along both axes, and from the centre line to the words at its ends, mm. */
const NEAR_RING = 3;
const REACH = 6;

/** A place of the finished face on the piece as it is cut, the same way up as the face. */
const onCut = ({ growth }: ToolingArea, [x, y]: Vec2): Vec2 => [x / growth[0], y / growth[1]];

/** How far the face with its designs reaches along the cut piece. */
function drawnSpan({ area, designs }: TooledFace, width: number): readonly [number, number] {
  const lines = designs.flatMap(({ lines, pictures }) => [...lines, ...pictures.map(pictureFrame)]);
  const reach = reachOf(lines)?.x ?? area.whole.x;
  const [from, to] = [Math.min(area.whole.x[0], reach[0]), Math.max(area.whole.x[1], reach[1])];
  return [Math.max(0, from / area.growth[0]), Math.min(width, to / area.growth[0])];
}

/** Holes and slits: circles and lines. */
const segmentsOf = (holes: readonly Entity[]): Segment[] =>
  holes.filter((hole) => hole.kind === 'line' || hole.kind === 'arc');

/** A piece half a turn round: cut edge and holes. */
function turnedPiece({ width, height, outline, layers, ...piece }: PieceDrawing): PieceDrawing {
  const hole = turnedContour(segmentsOf(layers.hole), width, height);
  return { ...piece, width, height, outline: turnedContour(outline, width, height), layers: { ...layers, hole } };
}

/** The ends of a piece at the left and at the right of its face. */
function endWords({ piece, face }: ToolingArea): Readonly<Record<'left' | 'right', string>> {
  if (piece === 'outside') return { left: 'the back cut edge', right: 'the front cut edge' };
  if (piece === 'strap') return { left: 'the free end', right: 'the sewn end' };
  const [edge, mouth] = ['the fore-edge', 'the mouth'];
  return face === 'frontPocket' ? { left: edge, right: mouth } : { left: mouth, right: edge };
}
