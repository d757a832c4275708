import type { Job } from '../job/jobSchema.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { printer } from '../units/printer.ts';
import { listed } from '../words/listed.ts';
import { PITCH_TOLERANCE } from './evenPitch.ts';
import type { Piece } from './pieces.ts';
import { holeShape, SEAM_LAYERS, SEAM_SIDES, type SeamRow } from './seam.ts';
import { layersAt, type SeamLayering, SLIT_CLEAR } from './seamLayering.ts';

/** Names that start a sentence, as a list that does. */
const inSentence = ([first, ...others]: readonly string[]): string =>
  listed([first!, ...others.map((name) => name.toLowerCase())]);

/** Sides whose middle strides are longer or shorter than the iron's, those that are alike together. */
function unevenSides(rows: readonly SeamRow[]) {
  const uneven = rows.flatMap((row) => (row.uneven === undefined ? [] : [{ row, uneven: row.uneven }]));
  const alike = (a: SeamRow) => uneven.filter(({ row }) => row.length === a.length);
  return uneven
    .filter(({ row }) => alike(row)[0]!.row === row)
    .map((each) => ({ ...each, sides: inSentence(alike(each.row).map(({ row }) => SEAM_SIDES[row.side])) }));
}

/** The next sizes, below and above, at which a side is whole strides. */
function wholeSizes({ side, length }: SeamRow, width: number, height: number, stride: number): number[] {
  const rest = (side === 'tail' || side === 'head' ? width : height) - length;
  return [Math.floor(length / stride), Math.ceil(length / stride)].filter((n) => n > 0).map((n) => rest + n * stride);
}

/** Says what the maker must know of a seam: sides too short, layers to trim, pockets that meet, slits that run together. */
export function seamNotes(
  job: Job,
  rows: readonly SeamRow[],
  layering: SeamLayering,
  { width, height }: Piece,
): string[] {
  const { exact, fine, gap, size, small } = printer(job.work.units);
  const notes = rows
    .filter(({ off }) => Math.abs(off) > PITCH_TOLERANCE + TOLERANCE.ratio)
    .map(
      ({ side, length, intervals, pitch }) =>
        `${SEAM_SIDES[side]}: ${gap(length)} is too short for a pitch of ${size(job.seam.pitch_mm)}; it takes ${intervals} of ${fine(pitch)}.`,
    );
  for (const { sides, row, uneven } of unevenSides(rows))
    notes.push(
      `${sides}: the middle ${uneven.count} of ${row.intervals} strides are ${small(uneven.pitch)}, not ${size(row.pitch)}. Make their holes one by one on the marks. ` +
        `Whole strides would take a ${row.side === 'tail' || row.side === 'head' ? 'width' : 'height'} of ` +
        wholeSizes(row, width, height, job.seam.pitch_mm).map(exact).join(' or ') +
        '.',
    );
  if (layering.meets)
    notes.push(
      'The pockets meet or overlap in the middle: make them shallower. Their mouths are not kept clear of holes.',
    );
  const tooNear = rows.flatMap(({ holes, pitch }) =>
    holes.flatMap(({ at }) => layersAt(layering, at[0], pitch).tooNear),
  );
  for (const layer of new Set(tooNear))
    notes.push(`A hole comes too near the end of the ${SEAM_LAYERS[layer]}: trim that layer clear of the hole.`);
  const { size: long, slant } = holeShape(job);
  const slit = long * Math.cos(slant ?? 0);
  const least = Math.min(...rows.map(({ pitch }) => pitch));
  if (slant !== null && slit > least - SLIT_CLEAR)
    notes.push(
      `Slits of ${size(long)} run into each other at a pitch of ${fine(least)}. Take a narrower lace, a wider pitch or a steeper slit.`,
    );
  if (slant === null && long >= least)
    notes.push(
      `Holes of ${size(long)} run into each other at a pitch of ${fine(least)}. Take a smaller hole or a wider pitch.`,
    );
  return notes;
}
