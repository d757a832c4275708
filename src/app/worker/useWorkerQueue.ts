import { useEffect, useState } from 'react';
import type { Accepts, WorkerPort } from './AskedWorker.ts';
import { type QueueOptions, WorkerQueue } from './WorkerQueue.ts';

/** A queue whose worker ends with the component. */
export function useWorkerQueue<Q, A>(
  start: () => WorkerPort<Q>,
  accepts: Accepts<Q, A>,
  options?: QueueOptions,
): WorkerQueue<Q, A> {
  const [queue] = useState(() => new WorkerQueue(start, accepts, options));
  useEffect(() => () => queue.close(), [queue]);
  return queue;
}
