import { leastChange } from '../leather/changeOf.ts';
import { rectangle } from '../math/contour.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import type { Printer } from '../units/printer.ts';
import { asCut, cutSum, lengthSum, part } from './cutSums.ts';
import { type CutSum, line, noLayers, type PieceDrawing, path } from './drawing.ts';
import { holeMarks } from './holeMarks.ts';
import { letteredPiece } from './letteredPiece.ts';
import type { NamedMarks } from './lettering.ts';
import type { PatternSource, Seam, SeamHole } from './seam.ts';
import { sizeLine } from './sumColumn.ts';

/** A loop for a pen: a strip folded round it, both ends caught in the fore-edge seam of the front. */
export interface PenLoop {
  readonly width: number;
  readonly sum: CutSum;
  /** Height of its middle on the outside, from the tail cut edge. */
  readonly middle: number;
  /** Holes of the seam that go through its two ends. */
  readonly holes: readonly SeamHole[];
}

/** Least distance of a hole from the loop's cut edge, as a share of the pitch; half where holes allow. */
const CLEAR = 0.3;
/** Least distance between loop and strap, mm. Common practice, no source. */
const BESIDE = 1;

/**
 * Length of the loop: 2 pi (r + K t) round the pen, on the neutral line, with r half of pen and ease, plus two ends of two
 * margins each, from the cover's cut edge to a margin beyond the seam. The full circle makes the neck, where the loop
 * closes, a little long. The loop is cut from the outside's leather, thick end, in any direction, and so for the way in which that
 * leather shrinks more.
 * @returns null where the job has no loop or the fore-edge no seam
 */
export function penLoopOf(source: PatternSource, seam: Seam): PenLoop | null {
  const { job, pieces, needs } = source;
  const { penLoop, strap } = job.construction;
  const row = seam.rows.find(({ side }) => side === 'frontForeEdge');
  if (penLoop === null || row === undefined) return null;
  const { thickness, neutral } = needs.thick.leathers.outside;
  const radius = (penLoop.pen_mm + penLoop.ease_mm) / 2 + neutral * thickness;
  const parts = [part('round the pen', 2 * Math.PI * radius), part('end in the seam', 2 * job.seam.edgeMargin_mm, 2)];
  // A strap takes the middle of the fore-edge; holes move the loop by up to half a pitch.
  const { height } = pieces.outside;
  const above = (beside: number): number => (height + beside + penLoop.width_mm + row.pitch) / 2 + BESIDE;
  const wished = strap === null ? height / 2 : Math.max(0.75 * height, above(strap.width_mm));
  const least = strap === null ? 0 : (height + strap.width_mm) / 2 + BESIDE;
  const straight = row.holes.filter(
    ({ isCorner, at }) =>
      !isCorner && Math.abs(at[0] - job.seam.edgeMargin_mm) < TOLERANCE.length && at[1] >= least + CLEAR * row.pitch,
  );
  const most = Math.floor(penLoop.width_mm / row.pitch - 2 * CLEAR + TOLERANCE.ratio) + 1;
  const nearest = [...straight].sort((a, b) => Math.abs(a.at[1] - wished) - Math.abs(b.at[1] - wished)).slice(0, most);
  const heights = nearest.map(({ at }) => at[1]);
  // About its holes; where they are few between strap and corner, as near to the strap as it may be.
  const about = (Math.min(...heights) + Math.max(...heights)) / 2;
  const caught = Math.max(...heights) + CLEAR * row.pitch - penLoop.width_mm / 2;
  const isCrowded = strap !== null && heights.length < most;
  const free = isCrowded ? Math.min(about, caught) : about;
  const middle = heights.length === 0 ? wished : Math.max(least + penLoop.width_mm / 2, free);
  return {
    width: penLoop.width_mm,
    sum: lengthSum(job, asCut(job, parts, leastChange(job))),
    middle,
    holes: nearest.sort((a, b) => a.at[1] - b.at[1]),
  };
}

export function penLoopDrawing(source: PatternSource, loop: PenLoop, print: Printer): PieceDrawing {
  const { job, isCard = false } = source;
  const [length, width] = [loop.sum.total, loop.width];
  const margin = job.seam.edgeMargin_mm;
  const layers = noLayers();
  const outline = rectangle([0, 0], [length, width]);
  layers.cut.push(path(outline, true));
  for (const x of [2 * margin, length - 2 * margin]) layers.fold.push(line([x, 0], [x, width]));
  const holes = loop.holes.map((hole) => ({ ...hole, at: [0, hole.at[1] - loop.middle + width / 2] as const }));
  layers.hole.push(...holeMarks(job, holes, { origin: margin, sign: 1 }));
  layers.hole.push(...holeMarks(job, holes, { origin: length - margin, sign: -1 }));
  const sums = [loop.sum, cutSum('height', width, [], 'width of the loop')];
  return letteredPiece(
    source,
    { id: 'penLoop', name: 'Pen loop', count: 1, width: length, height: width, outline, layers, sums },
    [...(isCard ? [] : ['in any direction']), sizeLine(loop.sum, print)],
    { x: 2 * margin + 1, y: 0.1 * width, width: length - 4 * margin - 2, height: 0.8 * width },
  );
}

/** Where the loop is caught, on the outside seen from its grain side: the front fore-edge is at the right. */
export function penLoopMarks({ job, pieces }: PatternSource, loop: PenLoop): NamedMarks {
  const { width } = pieces.outside;
  const inner = width - 2 * job.seam.edgeMargin_mm;
  const sides = [loop.middle - loop.width / 2, loop.middle + loop.width / 2];
  return {
    marks: sides.map((y) => line([width, y], [inner, y])),
    words: [['pen loop', [inner - 2, loop.middle], 2.5, Math.PI / 2, 'mark']],
  };
}
