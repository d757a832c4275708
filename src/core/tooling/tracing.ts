import type { CoverDesign } from '../fold/coverDesign.ts';
import { changeOf } from '../leather/changeOf.ts';
import { rectangle } from '../math/contour.ts';
import { contourWithin, movedContour, turnedContour } from '../math/contourPart.ts';
import { addScaled, distance, type Vec2 } from '../math/vec2.ts';
import { type Drawing, line, noLayers, type PieceDrawing, path, pictureFrame, tracingId } from '../pattern/drawing.ts';
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
  const { making } = job;
  const { along, across } = changeOf(job);
  if (along === 0 && across === 0)
    return 'Drawn in the finished size: this leather keeps its size in making. Leather that is dampened for tooling may not: see Worked, in Construction.';
  const drawn = (change: number, way: string): string =>
    `${print.share(Math.abs(1 / (1 + change) - 1), 2)} ${change > 0 ? 'smaller' : 'larger'} ${way}`;
  const isAssumed = making.changeAlong === null || making.changeAcross === null;
  return (
    `Drawn for the piece as it is cut: ${drawn(along, 'from head to tail')} and ${drawn(across, 'across')} than on the finished cover. ` +
    `Leather worked ${making.state} changes its size by that much until it is dry${isAssumed ? ' (assumption: test an offcut)' : ''}.`
  );
}

function tracing({ area, designs }: TooledFace, cut: PieceDrawing, print: Printer) {
  const { clear, centre } = area;
  const { width, height } = cut;
  const piece = area.isTurned ? turnedPiece(cut) : cut;
  const span = drawnSpan({ area, designs }, width);
  const [left, right] = registerLines(piece.outline, { width, height }, span, print.units);
  const drawn = [Math.min(span[0], left.x) - PAST, Math.max(span[1], right.x) + PAST] as const;
  const more = Math.max(0, LEAST - (drawn[1] - drawn[0])) / 2;
  const from = left.reachesEnd ? -BEYOND : drawn[0] - more;
  const to = right.reachesEnd ? width + BEYOND : drawn[1] + more;
  const toSheet: Vec2 = [-from, BEYOND];
  const onSheet = (finished: Vec2): Vec2 => addScaled(onCut(area, finished), toSheet, 1);

  const layers = noLayers();
  const kept = (contour: PieceDrawing['outline']) =>
    contourWithin(contour, from, to, CHORD).map((run) => movedContour(run, toSheet));
  layers.cut.push(...kept(piece.outline).map((run) => path(run, false)));
  layers.hole.push(
    ...piece.layers.hole.flatMap((hole) => (hole.kind === 'line' || hole.kind === 'arc' ? kept([hole]).flat() : [])),
  );
  const size = { width: to - from, height: height + 2 * BEYOND };
  const [x, y] = onSheet(centre);
  const past = BEYOND - REGISTER.cross;
  layers.centre.push(line([x, past], [x, size.height - past]), line([past, y], [size.width - past, y]));
  if (clear !== null)
    layers.area.push(path(rectangle(onSheet([clear.x[0], clear.y[0]]), onSheet([clear.x[1], clear.y[1]])), true));
  layers.tooling.push(...designs.flatMap((placed) => designEntities(placed, onSheet)));
  const marks = [left, right].flatMap(({ x }, side) =>
    [0, height].map((edge, i) => ({ at: addScaled([x, edge], toSheet, 1), name: 'ABCD'[2 * side + i]! })),
  );
  layers.mark.push(...marks.flatMap(({ at }) => registerMark(at)));
  const places = [left, right].map(({ at, from }, side) => {
    const rings = side === 0 ? 'rings A and B' : 'rings C and D';
    return `${rings}: ${at === 0 ? 'corners' : `${print.size(at)} from ${endWords(area)[from]}`}`;
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
  const isLow = (at: Vec2): boolean => at[1] < size.height / 2;
  const words = [
    ...marks.map(
      ({ at, name }): Word => [name, [at[0] - NEAR_RING, at[1] + (isLow(at) ? -NEAR_RING : NEAR_RING)], WORDS],
    ),
    ['head', [x + REACH, size.height - past], WORDS] as const,
    ['tail', [x + REACH, past], WORDS] as const,
  ].flatMap((word) => lettering.word(...word));
  const label = lettering.label(sheet.name, ['drawn side up', ...places], {
    x: 0,
    y: 0,
    ...size,
    height: size.height / 4,
  });
  layers.text.push(...label, ...words);
  const [a, , , d] = marks;
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

/** From a ring to its letter along both axes, and from the centre line to the words at its ends, mm. */
const NEAR_RING = 3;
const REACH = 6;

/** A place of the finished face on the piece as it is cut, the same way up as the face. */
const onCut = ({ growth }: ToolingArea, [x, y]: Vec2): Vec2 => [x / growth[0], y / growth[1]];

/** How far the face with its designs reaches along the cut piece. */
function drawnSpan({ area, designs }: TooledFace, width: number): readonly [number, number] {
  let [from, to] = area.whole.x;
  for (const { lines, pictures } of designs)
    for (const points of [...lines, ...pictures.map(pictureFrame)])
      for (const [x] of points) [from, to] = [Math.min(from, x), Math.max(to, x)];
  return [Math.max(0, from / area.growth[0]), Math.min(width, to / area.growth[0])];
}

/** A piece half a turn round: cut edge and holes. */
function turnedPiece({ width, height, outline, layers, ...piece }: PieceDrawing): PieceDrawing {
  const hole = layers.hole.flatMap((each) =>
    each.kind === 'line' || each.kind === 'arc' ? turnedContour([each], width, height) : [],
  );
  return { ...piece, width, height, outline: turnedContour(outline, width, height), layers: { ...layers, hole } };
}

/** The ends of a piece at the left and at the right of its face. */
function endWords({ piece, face }: ToolingArea): Readonly<Record<'left' | 'right', string>> {
  if (piece === 'outside') return { left: 'the back cut edge', right: 'the front cut edge' };
  if (piece === 'strap') return { left: 'the free end', right: 'the sewn end' };
  const [edge, mouth] = ['the fore-edge', 'the mouth'];
  return face === 'frontPocket' ? { left: edge, right: mouth } : { left: mouth, right: edge };
}
