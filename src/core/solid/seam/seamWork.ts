import type { Job } from '../../job/jobSchema.ts';
import { holeShape } from '../../pattern/seam.ts';

/** Cross-section of a strand, mm: thread is round, lace flat. A needle is round and ends in a point. */
export interface StrandSection {
  readonly kind: 'round' | 'flat' | 'needle';
  readonly width: number;
  readonly thickness: number;
}

/** What a seam is worked with. */
export interface SeamWork {
  readonly style: Job['seam']['style'];
  readonly section: StrandSection;
  /** Stitches sewn twice at start and finish. */
  readonly backStitches: number;
  readonly slit: number | null;
  readonly opening: number;
}

/** Lace fills its slit; a thread is as thick as the job says. */
export function seamWork(job: Job): SeamWork {
  const { seam, supplies, finish } = job;
  const isLaced = seam.method === 'lacing';
  const { size, slant } = holeShape(job);
  return {
    style: seam.style,
    section: isLaced
      ? { kind: 'flat', width: size, thickness: supplies.laceThickness_mm }
      : { kind: 'round', width: finish.thread_mm, thickness: finish.thread_mm },
    backStitches: isLaced ? 0 : supplies.backStitches,
    slit: slant,
    opening: size,
  };
}
