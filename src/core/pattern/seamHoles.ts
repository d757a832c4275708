import { contourLength, corneredContour, placeAlong } from '../math/contour.ts';
import type { Vec2 } from '../math/vec2.ts';
import { printer } from '../units/printer.ts';
import { cornerBend, endRowSpan } from './endRow.ts';
import { evenPitch } from './evenPitch.ts';
import { pieceCorner, seamCorner } from './pieceCorner.ts';
import type { PatternSource, Seam, SeamHole, SeamRow } from './seam.ts';
import { seamLayering } from './seamLayering.ts';
import { seamNotes } from './seamNotes.ts';

/** The layers by name, beside the function that places their holes. */
export type { SeamLayer } from './seam.ts';

/**
 * Places every hole of the seam, once for all layers: a layer has the holes of the outside that it lies under.
 *
 * The rules: each side has a whole number of intervals at the nearest pitch that lets the pocket mouths lie clear between
 * two holes (`evenPitch`; where none does, the pockets are cut so that one does, and a lining always: `pieces`); a corner has one hole in the middle of its seam line, which is where the two lines meet if it is square;
 * pitch is measured along the seam line. Separate pockets: one closed seam. Turned ends: a row at head and one at tail,
 * first and last hole a margin (or half the turn, if more) from the middle of the fold. The seam starts and finishes in
 * the back pocket at the tail, where the ends are hidden between the layers; a row of a turned end at its two folds.
 */
export function seamHoles(source: PatternSource): Seam {
  return source.pieces.pocket.count === 0 ? turnedSeam(source) : closedSeam(source);
}

function closedSeam(source: PatternSource): Seam {
  const { job, pieces } = source;
  const { width, height } = pieces.outside;
  const margin = job.seam.edgeMargin_mm;
  const { corner: cut, isLimited } = pieceCorner(job, pieces);
  const corner = seamCorner(cut, margin);
  const [right, top] = [width - margin, height - margin];
  const line = corneredContour(
    (
      [
        [margin, margin],
        [right, margin],
        [right, top],
        [margin, top],
      ] as const
    ).map((at) => ({ at, corner })),
  );
  const round = contourLength(line);
  const bend = cornerBend(source);
  const layers = seamLayering(source);
  const { origin, length: along } = endRowSpan(source);
  const up = top - margin - 2 * corner.size + bend;
  const ends = evenPitch(along, job.seam.pitch_mm, layers.along(origin));
  const foreEdges = evenPitch(up, job.seam.pitch_mm);
  let start = bend / 2;
  const rows = (['tail', 'backForeEdge', 'head', 'frontForeEdge'] as const).map((side, i): SeamRow => {
    const [length, even] = i % 2 === 0 ? [along, ends] : [up, foreEdges];
    const holes = Array.from({ length: even.intervals }, (_, k): SeamHole => {
      const { point, heading } = placeAlong(line, (start + k * even.pitch) % round);
      const isCorner = k === 0;
      return {
        at: point,
        heading: isCorner ? (Math.PI / 2) * i - Math.PI / 4 : heading,
        side,
        isCorner,
        layers: layers.layersAt(point[0], even.pitch),
      };
    });
    start += length;
    return { side, length, ...even, holes };
  });
  const loop = rows.flatMap(({ holes }) => holes);
  const inPocket = loop.findIndex(({ side, layers }) => side === 'tail' && layers.includes('backPocket'));
  const first = Math.max(0, inPocket + HIDDEN_HOLES);
  const notes = seamNotes(job, rows, layers.meets, layers.left);
  const print = printer(job.work.units);
  if (isLimited)
    notes.push(
      `The corners are made ${print.gap(cut.size)}: there is no room for ${print.size(job.seam.cornerRadius_mm)}.`,
    );
  return {
    isClosed: true,
    lines: [line],
    rows,
    starts: [loop[first % loop.length]!],
    finishes: [loop[(first + loop.length - 1) % loop.length]!],
    steps: layers.steps,
    notes,
  };
}

/** Holes between the mouth of the back pocket and the start of the seam. Common practice, no source. */
const HIDDEN_HOLES = 2;

function turnedSeam(source: PatternSource): Seam {
  const { job, pieces } = source;
  const { width, height } = pieces.outside;
  const margin = job.seam.edgeMargin_mm;
  const { origin: from, length } = endRowSpan(source);
  const layers = seamLayering(source);
  const asksCorner = job.seam.cornerRadius_mm > 0 && job.construction.corners !== 'square';
  const squareNote = asksCorner
    ? ['Turned ends have no corners at the fore-edge to take off: all corners stay square.']
    : [];
  if (length < job.seam.pitch_mm) {
    const note = `No seam: between the two turned ends there is room for ${printer(job.work.units).gap(Math.max(0, length))}. Make the ends shorter or the outside wider.`;
    return { isClosed: false, lines: [], rows: [], starts: [], finishes: [], steps: [], notes: [note] };
  }
  const even = evenPitch(length, job.seam.pitch_mm, layers.along(from));
  const rows = (['tail', 'head'] as const).map((side): SeamRow => {
    const isTail = side === 'tail';
    const holes = Array.from({ length: even.intervals + 1 }, (_, k): SeamHole => {
      const along = from + k * even.pitch;
      const at: Vec2 = isTail ? [along, margin] : [width - along, height - margin];
      return {
        at,
        heading: isTail ? 0 : Math.PI,
        side,
        isCorner: false,
        layers: layers.layersAt(at[0], even.pitch),
      };
    });
    return { side, length, ...even, holes };
  });
  return {
    isClosed: false,
    lines: [
      [{ kind: 'line', from: [from, margin], to: [width - from, margin] }],
      [{ kind: 'line', from: [width - from, height - margin], to: [from, height - margin] }],
    ],
    rows,
    starts: rows.map(({ holes }) => holes[0]!),
    finishes: rows.map(({ holes }) => holes.at(-1)!),
    steps: layers.steps,
    notes: [...seamNotes(job, rows, layers.meets, layers.left), ...squareNote],
  };
}

/** Holes in all, each counted once through however many layers. */
export const holeCount = ({ rows }: Seam): number => rows.reduce((sum, { holes }) => sum + holes.length, 0);
