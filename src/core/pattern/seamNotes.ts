import type { Job } from '../job/jobSchema.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { printer } from '../units/printer.ts';
import { PITCH_TOLERANCE } from './evenPitch.ts';
import { SEAM_LAYERS, SEAM_SIDES, type SeamRow, slitAngle } from './seam.ts';
import { layersAt, type SeamLayering, SLIT_CLEAR } from './seamLayering.ts';

/** Says what the maker must know of a seam: sides too short, layers to trim, pockets that meet, slits that run together. */
export function seamNotes(job: Job, rows: readonly SeamRow[], layering: SeamLayering): string[] {
  const { fine, gap, size } = printer(job.work.units);
  const notes = rows
    .filter(({ off }) => Math.abs(off) > PITCH_TOLERANCE + TOLERANCE.ratio)
    .map(
      ({ side, length, intervals, pitch }) =>
        `${SEAM_SIDES[side]}: ${gap(length)} is too short for a pitch of ${size(job.seam.pitch_mm)}; it takes ${intervals} of ${fine(pitch)}.`,
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
  const slit = job.construction.slitWidth_mm * Math.cos(slitAngle(job));
  const least = Math.min(...rows.map(({ pitch }) => pitch));
  if (job.seam.method === 'lacing' && slit > least - SLIT_CLEAR)
    notes.push(
      `Slits of ${size(job.construction.slitWidth_mm)} run into each other at a pitch of ${fine(least)}. Take a narrower lace, a wider pitch or a steeper slit.`,
    );
  return notes;
}
