import { coverDesign } from '../../core/fold/coverDesign.ts';
import { foldedGlb } from '../../output/glb/foldedGlb.ts';
import { sequenceTakes } from '../../output/glb/sequenceTakes.ts';
import { PALETTE } from '../scene/material/palette.ts';
import type { GlbAnswer, GlbQuestion } from './glbMessage.ts';

const answer = (value: GlbAnswer, transfer: Transferable[] = []): void => self.postMessage(value, { transfer });

self.onmessage = async ({ data: { job } }: MessageEvent<GlbQuestion>) => {
  try {
    const { bytes } = await foldedGlb(sequenceTakes(coverDesign(job)), { name: job.name, colours: PALETTE });
    answer({ bytes }, [bytes.buffer]);
  } catch (error) {
    answer({ failure: error instanceof Error ? error.message : String(error) });
  }
};
