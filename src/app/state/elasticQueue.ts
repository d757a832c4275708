import type { ElasticOverRange, Job } from '../../core/index.ts';
import { AskedWorker } from '../worker/AskedWorker.ts';
import { WorkerQueue } from '../worker/WorkerQueue.ts';

export { withStrip } from '../../core/index.ts';

/** A desk at which the elastic strip is solved for one job after another. */
export function elasticQueue(
  onAnswer: (job: Job, elastic: ElasticOverRange) => void,
  onFailure: (job: Job, why: Error) => void,
): WorkerQueue<Job, ElasticOverRange> {
  const worker = new AskedWorker<Job, ElasticOverRange>(
    () => new Worker(new URL('./elastic.worker.ts', import.meta.url), { type: 'module' }),
  );
  return new WorkerQueue(worker, () => 'job', onAnswer, onFailure);
}
