import type { Job } from '../../core/job/jobSchema.ts';

export interface GlbQuestion {
  readonly job: Job;
}

export type GlbAnswer = { readonly bytes: Uint8Array<ArrayBuffer> } | { readonly failure: string };
