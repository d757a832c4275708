import type { Job } from '../../core/index.ts';
import type { ModelKind } from '../../output/model/coverModel.ts';
import { accepting, bytesShape } from '../worker/accepting.ts';
import { WorkerQueue } from '../worker/WorkerQueue.ts';
import type { ModelQuestion } from './model.worker.ts';
import { whenStopped } from './whenStopped.ts';

/**
 * Makes the 3D model of a cover in a worker: it takes some seconds.
 * @param signal ends the work, and rejects with its reason
 * @throws Error where it could not be made
 */
export function makeModel(job: Job, kind: ModelKind, signal: AbortSignal): Promise<Uint8Array<ArrayBuffer>> {
  const queue = new WorkerQueue<ModelQuestion, Uint8Array<ArrayBuffer>>(
    () => new Worker(new URL('./model.worker.ts', import.meta.url), { type: 'module' }),
    accepting(bytesShape),
  );
  return Promise.race([queue.ask({ job, kind }), whenStopped(signal)]).finally(() => queue.close());
}
