import { useEffect, useState } from 'react';
import type { CoverDesign, Job, PartRelief } from '../../core/index.ts';
import { useWorkerQueue } from '../worker/useWorkerQueue.ts';
import type { ReliefAnswer } from './relief.worker.ts';

/** What is tooled into the cover, as far as it is worked out. */
export interface Reliefs {
  /** Of the cover shown, or of the one before while `isPending`. */
  readonly reliefs: readonly PartRelief[];
  readonly isPending: boolean;
  /** Why there are none, in words for the maker. */
  readonly failure: string | null;
}

const NONE: Reliefs = { reliefs: [], isPending: false, failure: null };

const startWorker = () => new Worker(new URL('./relief.worker.ts', import.meta.url), { type: 'module' });

/** The reliefs of a cover, worked out in a worker that runs only for a cover with tooling. */
export function useReliefs({ job }: CoverDesign): Reliefs {
  const queue = useWorkerQueue<Job, ReliefAnswer>(startWorker);
  const [found, setFound] = useState<{ readonly of: Job | null } & Omit<Reliefs, 'isPending'>>({ of: null, ...NONE });
  const isTooled = job.tooling.designs.length > 0;
  useEffect(() => {
    if (!isTooled) {
      queue.close();
      setFound({ of: null, ...NONE });
      return;
    }
    queue.ask(job).then(
      (answer) => setFound((last) => ({ of: job, reliefs: answer ?? last.reliefs, failure: null })),
      (error: Error) => setFound({ of: job, reliefs: [], failure: error.message }),
    );
  }, [queue, job, isTooled]);
  return isTooled ? { ...found, isPending: found.of !== job } : NONE;
}
