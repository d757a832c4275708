import type { Job } from '../../core/job/jobSchema.ts';
import type { ElasticOverRange } from '../../core/report/stripContext.ts';
import { AskedWorker } from '../state/AskedWorker.ts';
import { WorkerDesk } from '../state/WorkerDesk.ts';

export { withStrip } from '../../core/report/withStrip.ts';

/** A desk at which the elastic strip is solved for one job after another. */
export function elasticDesk(
  onAnswer: (job: Job, elastic: ElasticOverRange) => void,
  onFailure: (job: Job, why: Error) => void,
): WorkerDesk<Job, ElasticOverRange> {
  const worker = new AskedWorker<Job, ElasticOverRange>(
    () => new Worker(new URL('./elastic.worker.ts', import.meta.url), { type: 'module' }),
  );
  return new WorkerDesk(worker, () => 'job', onAnswer, onFailure);
}
