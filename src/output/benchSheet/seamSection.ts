import {
  type CoverDesign,
  type CoverSupplies,
  type Drawing,
  holeNoun,
  isPunchedTogether,
  type Printer,
  runLength,
  type SeamRun,
  seamHoles,
  sideName,
  strideGroups,
} from '../../core/index.ts';
import { ironWords } from '../ironWords.ts';
import { type Block, heading, text } from './block.ts';

/** The seam: where it runs, its holes by side and by piece, and the layers that it goes through. */
export function seamSection(design: CoverDesign, supplies: CoverSupplies, drawing: Drawing, say: Printer): Block[] {
  const { seam } = design.job;
  const rows = seamHoles(design).rows;
  if (rows.length === 0) return [heading('Seam'), text('There is no room for a seam: see the notes.')];
  const pieces = drawing.pieces.filter(({ holes }) => holes > 0);
  const each = pieces.map(
    ({ name, holes, count }) => `${name.toLowerCase()} ${holes}${count > 1 ? ` each, ${count} times` : ''}`,
  );
  return [
    heading('Seam'),
    text(
      `${seam.style === 'saddle' ? 'Saddle stitch' : `Lacing, ${seam.style}`}, ${say.size(seam.edgeMargin_mm)} from the cut edge, ` +
        `pitch ${say.size(seam.pitch_mm)} asked.`,
    ),
    ...(seam.iron === null ? [] : [text(`Holes by ${ironWords(seam.iron, say)}.`)]),
    text(`${supplies.holes} ${holeNoun(design.job)} through the cover. Pitches: ${pitchWords(design, say)}.`),
    text(
      isPunchedTogether(design.job)
        ? 'Punched after cementing, through all layers at once.'
        : `In the pieces: ${each.join('; ')}.`,
    ),
    ...layersOf(supplies).map(({ layers, stack, length }) =>
      text(
        `${layers === 1 ? 'One layer' : `${layers} layers`}, ${say.fine(stack)} at the thick end: ${say.length(length)} of seam.`,
      ),
    ),
  ];
}

/** How many pitches each side of the seam has, and how long they are. */
export const pitchWords = (design: CoverDesign, say: Printer): string =>
  seamHoles(design)
    .rows.map((row) => {
      const groups = strideGroups(row, 0, row.intervals).map(({ count, pitch }) => ({ count, size: say.fine(pitch) }));
      const spaces =
        groups.length === 1
          ? ` at ${groups[0]!.size}`
          : `: ${groups.map(({ count, size }) => `${count} of ${size}`).join(', ')}`;
      return `${sideName(row.side)} ${row.intervals}${spaces}`;
    })
    .join('; ');

interface Stack {
  readonly layers: number;
  readonly stack: number;
  readonly length: number;
}

/** Stacks of the seam, the thickest first, each with its total length. */
function layersOf({ seams }: CoverSupplies): Stack[] {
  const stacks = new Map<string, Stack>();
  const key = ({ layers, stack }: SeamRun): string => `${layers} ${stack.toFixed(6)}`;
  for (const run of seams.flatMap(({ runs }) => runs)) {
    const length = (stacks.get(key(run))?.length ?? 0) + runLength(run);
    stacks.set(key(run), { layers: run.layers, stack: run.stack, length });
  }
  return [...stacks.values()].sort((a, b) => b.stack - a.stack);
}
