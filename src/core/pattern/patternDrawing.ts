import { type Printer, printer } from '../units/printer.ts';
import { buckleTabDrawing } from './buckleTab.ts';
import type { Drawing, PieceDrawing, ToolingMarks } from './drawing.ts';
import { liningDifference } from './foldZones.ts';
import { faceUp } from './letteredPiece.ts';
import { liningDrawing } from './liningDrawing.ts';
import { outsideDrawing } from './outsideDrawing.ts';
import { type PenLoop, penLoopDrawing, penLoopOf } from './penLoop.ts';
import { pocketDrawings } from './pocketDrawing.ts';
import { ribbonOf } from './ribbon.ts';
import type { PatternSource, Seam } from './seam.ts';
import { holeCount, seamHoles } from './seamHoles.ts';
import { type Strap, strapDrawing, strapOf } from './strap.ts';

/**
 * Draws every piece of a worked-out job: cut, fold and seam lines, holes, skive zones, marks, names and sums, lengths
 * written in the unit that the job is worked in.
 * @param source a `CoverDesign`, or any job with its pieces and needs
 * @param tooling what is tooled on its pieces; where pockets are, front and back are drawn apart
 * @returns plain data, one entry a piece; never throws for a parsed job. `notes` says what does not work out.
 */
export function patternDrawing(source: PatternSource, tooling: ToolingMarks = {}): Drawing {
  const parts = patternParts(source);
  const { seam, strap, loop, print } = parts;
  return drawingOf(source, parts, [
    outsideDrawing(source, seam, strap, loop, print, null, tooling.outside),
    ...otherPieces(source, parts, tooling),
  ]);
}

/** What the pieces of a job are drawn from. */
export interface PatternParts {
  readonly seam: Seam;
  readonly strap: Strap | null;
  readonly loop: PenLoop | null;
  readonly print: Printer;
}

export function patternParts(source: PatternSource): PatternParts {
  const seam = seamHoles(source);
  return { seam, strap: strapOf(source), loop: penLoopOf(source, seam), print: printer(source.job.work.units) };
}

/** Every piece but the outside. */
export function otherPieces(
  source: PatternSource,
  { seam, strap, loop, print }: PatternParts,
  tooling: ToolingMarks = {},
): PieceDrawing[] {
  const { pocket, lining } = source.pieces;
  return [
    ...(pocket.count === 0 ? [] : pocketDrawings(source, seam, print, tooling)),
    ...(lining?.width ? [liningDrawing(source, lining, seam, print)] : []),
    ...(strap === null ? [] : [strapDrawing(source, strap, print, tooling.strap)]),
    ...(strap?.tab ? [buckleTabDrawing(source, strap.tab, print)] : []),
    ...(loop === null ? [] : [penLoopDrawing(source, loop, print)]),
  ];
}

/** A drawing of these pieces of a job. */
export function drawingOf(
  source: PatternSource,
  { seam, strap, loop, print }: PatternParts,
  drawn: readonly PieceDrawing[],
): Drawing {
  const { job } = source;
  const ribbon = ribbonOf(source);
  return {
    title: job.name,
    units: job.work.units,
    faceUp: faceUp(source),
    pieces: drawn,
    lengths: ribbon === null ? [] : [ribbon],
    holes: holeCount(seam),
    notes: [
      ...seam.notes,
      ...strokeNotes(source),
      ...liningNotes(source, print),
      ...fittingNotes(source, strap, loop),
      ...drawn.flatMap(unwrittenNotes),
    ],
  };
}

/** How the strokes on the pieces are read. */
const strokeNotes = ({ job: { seam } }: PatternSource): string[] =>
  seam.iron?.teeth.some((count) => count > 1)
    ? [
        'Each stroke starts with a tooth in the last hole of the one before. A short mark inside the seam shows where a last stroke starts further back.',
      ]
    : [];

/** Words that the piece has no room for. */
const unwrittenNotes = ({ name, unwritten }: PieceDrawing): string[] =>
  unwritten.length === 0 ? [] : [`${name}, not written on the piece for want of room: ${unwrittenWords(unwritten)}.`];

/** Lines of a label after one another. */
export const unwrittenWords = (unwritten: readonly string[]): string => unwritten.join('; ').replaceAll('=; ', '= ');

function liningNotes(source: PatternSource, print: Printer): string[] {
  const { job, pieces } = source;
  if (!pieces.lining?.width) return [];
  const isCentre = job.construction.lining === 'centre';
  const shorter = `Round the closed spine the ${isCentre ? '' : 'full '}lining's path is ${print.length(liningDifference(source))} shorter than the outside's`;
  return [
    isCentre
      ? `${shorter}: it stands loose by that much when the book is closed.`
      : `${shorter}. Sewn flat it puckers there by that much. Cemented with the cover bent, it runs over by that much. Trim it, then punch it through the holes of the outside.`,
  ];
}

function fittingNotes({ job }: PatternSource, strap: Strap | null, loop: PenLoop | null): string[] {
  const shape = job.construction.strap?.shape ?? 'strap';
  const notes = strap === null ? [] : [`Sew the ${shape} to the back of the cover before the pockets are joined.`];
  if (strap !== null && job.seam.iron !== null)
    notes.push(`Holes that sew the ${shape} on are spaced evenly, not by the iron. Make them one by one on the marks.`);
  if (strap?.tab) notes.push('Sew the buckle tab to the front then too, the bar of the buckle in its fold.');
  if (loop === null) return notes;
  if (loop.holes.length === 0) notes.push('The fore-edge seam has no hole that the pen loop could be caught by.');
  return notes;
}
