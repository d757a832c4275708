import { lettersOf } from '../../artwork/faces/lettersOf.ts';
import type { Job } from '../../core/index.ts';
import { coverModel, type ModelKind } from '../../output/model/coverModel.ts';
import { serveQuestions } from '../worker/serveQuestions.ts';

/** A model to make. */
export interface ModelQuestion {
  readonly job: Job;
  readonly kind: ModelKind;
}

serveQuestions<ModelQuestion, Uint8Array<ArrayBuffer>>(
  async ({ job, kind }) => coverModel(job, kind, await lettersOf(job.tooling.designs)),
  ({ buffer }) => [buffer],
);
