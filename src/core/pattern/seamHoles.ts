import { contourLength, placeAlong, rectangle } from '../math/contour.ts';
import type { Vec2 } from '../math/vec2.ts';
import { printer } from '../units/printer.ts';
import { cornerBend, type EndRow, endRow, endRowSpan } from './endRow.ts';
import { divided, placeOfHole } from './evenPitch.ts';
import { madeSeam } from './madeSeam.ts';
import { pieceCorner, seamCorner } from './pieceCorner.ts';
import { sincePunched } from './pieces.ts';
import type { PatternSource, Seam, SeamHole, SeamRow } from './seam.ts';
import { layerSteps, layersAt, type SeamLayering, seamLayering } from './seamLayering.ts';
import { seamNotes } from './seamNotes.ts';

/** Holes between the mouth of the back pocket and the start of the seam. Common practice, no source. */
const HIDDEN_HOLES = 2;

/**
 * Places every hole of the seam, once for all layers: a layer has the holes of the outside that it lies under.
 *
 * Each side has a whole number of intervals, its pitch measured along the seam line; head and tail take the pitch that lets
 * the pocket mouths end between two holes (`evenPitch`, `sizePieces`). With an iron each interval is its stride, and the sizes
 * are chosen for that (`strideSizes`); what does not fill a side is shared by strides in its middle (`wholeStrides`). A corner has one hole in the middle of its seam line,
 * which is where the two lines meet if it is square. Separate pockets: one closed seam. Turned ends: a row at head and one
 * at tail, first and last hole a margin (or half the turn, if more) from the middle of the fold. The seam starts and
 * finishes in the back pocket at the tail, where the ends are hidden between the layers; a row of turned ends at its two
 * folds. Those of a made cover are the holes as punched, moved with the leather.
 */
export function seamHoles(source: PatternSource): Seam {
  const { cut } = source.pieces;
  if (cut !== undefined) return madeSeam(seamHoles({ ...source, pieces: cut }), sincePunched(source.pieces));
  const layering = seamLayering(source);
  const row = endRow(source, layering);
  if (row === null) return noSeam(source);
  return source.pieces.pocket.count === 0 ? turnedSeam(source, layering, row) : closedSeam(source, layering, row);
}

function closedSeam(source: PatternSource, layering: SeamLayering, end: EndRow): Seam {
  const { job, pieces } = source;
  const { width, height } = pieces.outside;
  const margin = job.seam.edgeMargin_mm;
  const { corner: cut, isLimited } = pieceCorner(job, pieces);
  const corner = seamCorner(cut, margin);
  const line = rectangle([margin, margin], [width - margin, height - margin], corner);
  const round = contourLength(line);
  const bend = cornerBend(source);
  const up = height - margin - margin - 2 * corner.size + bend;
  const foreEdge = { length: up, ...divided(job, up) };
  let start = bend / 2;
  const rows = (['tail', 'backForeEdge', 'head', 'frontForeEdge'] as const).map((side, i): SeamRow => {
    const { length, intervals, pitch, off, uneven } = i % 2 === 0 ? end : foreEdge;
    const holes = Array.from({ length: intervals }, (_, k): SeamHole => {
      const { point, heading } = placeAlong(line, (start + placeOfHole({ pitch, uneven }, k)) % round);
      const isCorner = k === 0;
      return {
        at: point,
        heading: isCorner ? (Math.PI / 2) * i - Math.PI / 4 : heading,
        side,
        isCorner,
        layers: layersAt(layering, point[0], pitch).through,
      };
    });
    start += length;
    return { side, length, intervals, pitch, off, uneven, holes };
  });
  const loop = rows.flatMap(({ holes }) => holes);
  const inPocket = loop.findIndex(({ layers }) => layers.includes('backPocket'));
  const first = inPocket + HIDDEN_HOLES;
  const { gap, size } = printer(job.work.units);
  const cornerNote = `The corners are made ${gap(cut.size)}: there is no room for ${size(job.seam.cornerRadius_mm)}.`;
  return {
    isClosed: true,
    lines: [line],
    rows,
    starts: [loop[first % loop.length]!],
    finishes: [loop[(first + loop.length - 1) % loop.length]!],
    steps: layerSteps(layering),
    notes: [...seamNotes(job, rows, layering, pieces.outside), ...(isLimited ? [cornerNote] : [])],
  };
}

function turnedSeam({ job, pieces }: PatternSource, layering: SeamLayering, end: EndRow): Seam {
  const { width, height } = pieces.outside;
  const margin = job.seam.edgeMargin_mm;
  const { origin, length, intervals, pitch, off } = end;
  const rows = (['tail', 'head'] as const).map((side): SeamRow => {
    const isTail = side === 'tail';
    const holes = Array.from({ length: intervals + 1 }, (_, k): SeamHole => {
      const along = origin + k * pitch;
      const at: Vec2 = isTail ? [along, margin] : [width - along, height - margin];
      const layers = layersAt(layering, at[0], pitch).through;
      return { at, heading: isTail ? 0 : Math.PI, side, isCorner: false, layers };
    });
    return { side, length, intervals, pitch, off, holes };
  });
  const asksCorner = job.seam.cornerRadius_mm > 0 && job.construction.corners !== 'square';
  const cornerNote = 'Turned ends have no corners at the fore-edge to take off: all corners stay square.';
  return {
    isClosed: false,
    lines: [
      [{ kind: 'line', from: [origin, margin], to: [width - origin, margin] }],
      [{ kind: 'line', from: [width - origin, height - margin], to: [origin, height - margin] }],
    ],
    rows,
    starts: rows.map(({ holes }) => holes[0]!),
    finishes: rows.map(({ holes }) => holes.at(-1)!),
    steps: layerSteps(layering),
    notes: [...seamNotes(job, rows, layering, pieces.outside), ...(asksCorner ? [cornerNote] : [])],
  };
}

function noSeam(source: PatternSource): Seam {
  const room = printer(source.job.work.units).gap(Math.max(0, endRowSpan(source).length));
  const note = `No seam: between the two turned ends there is room for ${room}. Make the ends shorter or the outside wider.`;
  return { isClosed: false, lines: [], rows: [], starts: [], finishes: [], steps: [], notes: [note] };
}

/** Holes in all, each counted once through however many layers. */
export const holeCount = ({ rows }: Seam): number => rows.reduce((sum, { holes }) => sum + holes.length, 0);
