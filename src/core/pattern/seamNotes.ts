import type { Job } from '../job/jobSchema.ts';
import { printer } from '../units/printer.ts';
import { PITCH_TOLERANCE } from './evenPitch.ts';
import { type SeamLayer, type SeamRow, type SeamSide, slitAngle } from './seam.ts';
import { SLIT_CLEAR } from './seamLayering.ts';

const NAMES: Readonly<Record<SeamLayer, string>> = {
  outside: 'outside',
  frontPocket: 'front pocket',
  backPocket: 'back pocket',
  lining: 'lining',
  frontTurnedEnd: 'front turned end',
  backTurnedEnd: 'back turned end',
};
const SIDE_NAMES: Readonly<Record<SeamSide, string>> = {
  tail: 'Tail',
  backForeEdge: 'Back fore-edge',
  head: 'Head',
  frontForeEdge: 'Front fore-edge',
};

/** Says what the maker must know of a seam: sides too short, layers to trim, pockets that meet, slits that run together. */
export function seamNotes(job: Job, rows: readonly SeamRow[], meets: boolean, left: ReadonlySet<string>): string[] {
  const { fine, gap, size } = printer(job.work.units);
  const notes = rows
    .filter(({ off }) => Math.abs(off) > PITCH_TOLERANCE + 1e-9)
    .map(
      ({ side, length, intervals, pitch }) =>
        `${SIDE_NAMES[side]}: ${gap(length)} is too short for a pitch of ${size(job.seam.pitch_mm)}; it takes ${intervals} of ${fine(pitch)}.`,
    );
  if (meets)
    notes.push(
      'The pockets meet or overlap in the middle: make them shallower. Their mouths are not kept clear of holes.',
    );
  for (const layer of left)
    notes.push(
      `A hole comes too near the end of the ${NAMES[layer as SeamLayer]} to be made in it: trim that layer clear of the hole.`,
    );
  const slit = job.construction.slitWidth_mm * Math.cos(slitAngle(job));
  const least = Math.min(...rows.map(({ pitch }) => pitch));
  if (job.seam.method === 'lacing' && slit > least - SLIT_CLEAR)
    notes.push(
      `Slits of ${size(job.construction.slitWidth_mm)} run into each other at a pitch of ${fine(least)}: take a narrower lace, a wider pitch or a steeper slit.`,
    );
  return notes;
}
