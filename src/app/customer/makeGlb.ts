import type { Job } from '../../core/index.ts';
import { WorkerQueue } from '../worker/WorkerQueue.ts';

/**
 * Makes the 3D model of a cover in a worker: it takes about a second.
 * @throws Error where it could not be made
 */
export function makeGlb(job: Job): Promise<Uint8Array<ArrayBuffer>> {
  const queue = new WorkerQueue<Job, Uint8Array<ArrayBuffer>>(
    () => new Worker(new URL('./glb.worker.ts', import.meta.url), { type: 'module' }),
  );
  return queue.ask(job).finally(() => queue.close());
}
