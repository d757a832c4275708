import { lettersOf } from '../../artwork/faces/lettersOf.ts';
import { coverColours, coverDesign, type Job, partReliefs } from '../../core/index.ts';
import { foldedGlb } from '../../output/glb/foldedGlb.ts';
import { sequenceTakes } from '../../output/glb/sequenceTakes.ts';
import { serveQuestions } from '../worker/serveQuestions.ts';

serveQuestions<Job, Uint8Array<ArrayBuffer>>(
  async (job) => {
    const design = coverDesign(job);
    const { bytes } = await foldedGlb(sequenceTakes(design), {
      name: job.name,
      colours: coverColours(job),
      reliefs: partReliefs(design, await lettersOf(job.tooling.designs)),
      reliefDepth: job.tooling.depth_mm,
    });
    return bytes;
  },
  ({ buffer }) => [buffer],
);
