import { lettersOf } from '../../artwork/faces/lettersOf.ts';
import { coverDesign, type Job, type PartRelief, partReliefs, toolingAreas } from '../../core/index.ts';
import { serveQuestions } from '../worker/serveQuestions.ts';

/** The reliefs of a job; null where they are those of the answer before. */
export type ReliefAnswer = readonly PartRelief[] | null;

let last = '';

serveQuestions<Job, ReliefAnswer>(
  async (job) => {
    const design = coverDesign(job);
    const { designs, artworks, line_mm } = job.tooling;
    const places = toolingAreas(design).map(({ face, size, clear, centre }) => [face, size, clear, centre]);
    const now = JSON.stringify([designs, artworks, line_mm, places]);
    if (now === last) return null;
    const reliefs = partReliefs(design, await lettersOf(designs));
    last = now;
    return reliefs;
  },
  (answer) => (answer ?? []).map(({ map }) => map.depths.buffer),
);
