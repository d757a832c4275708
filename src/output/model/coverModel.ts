import { coverColours, coverDesign, type Job, type LetterFaces, partReliefs } from '../../core/index.ts';
import { foldedGlb } from '../glb/foldedGlb.ts';
import { sequenceTakes } from '../glb/sequenceTakes.ts';
import { coverUsdz } from '../usdz/coverUsdz.ts';

/** The files that a model is written in: GLB packed or not, with the making as an animation, and USDZ at rest. */
export type ModelKind = 'packed' | 'plain' | 'usdz';

/**
 * The 3D model of a job as a file; takes some seconds.
 * @param letters the faces of its titles; a title in another is left out
 */
export async function coverModel(job: Job, kind: ModelKind, letters: LetterFaces): Promise<Uint8Array<ArrayBuffer>> {
  const design = coverDesign(job);
  const { name } = job;
  const colours = coverColours(job);
  if (kind === 'usdz') return coverUsdz(design, { name, colours });
  const { bytes } = await foldedGlb(sequenceTakes(design), {
    name,
    colours,
    reliefs: partReliefs(design, letters),
    reliefDepth: job.tooling.depth_mm,
    isPacked: kind === 'packed',
  });
  return bytes;
}
