import { coverDesign, type Job } from '../../core/index.ts';
import { foldedGlb } from '../../output/glb/foldedGlb.ts';
import { sequenceTakes } from '../../output/glb/sequenceTakes.ts';
import { PALETTE } from '../scene/material/palette.ts';
import { serveQuestions } from '../worker/serveQuestions.ts';

serveQuestions<Job, Uint8Array<ArrayBuffer>>(
  async (job) => (await foldedGlb(sequenceTakes(coverDesign(job)), { name: job.name, colours: PALETTE })).bytes,
  ({ buffer }) => [buffer],
);
