import { useEffect, useState } from 'react';
import * as z from 'zod/mini';
import type { CoverDesign, Job, PartRelief } from '../../core/index.ts';
import { accepting, bytesShape } from '../worker/accepting.ts';
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

const pair = z.tuple([z.number(), z.number()]);
const reliefShape = z.looseObject({
  part: z.string(),
  map: z.looseObject({ origin: pair, size: pair, columns: z.number(), rows: z.number(), depths: bytesShape }),
  scale: pair,
  offset: pair,
});
const isReliefAnswer = accepting<ReliefAnswer>(z.nullable(z.array(reliefShape)));

/** The reliefs of a cover, worked out in a worker that runs only for a cover with tooling. */
export function useReliefs({ job }: CoverDesign): Reliefs {
  // Null stands for the answer before, which must therefore not be dropped.
  const queue = useWorkerQueue<Job, ReliefAnswer>(startWorker, isReliefAnswer, { tellsStale: true });
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
      (error: Error) => setFound(({ reliefs }) => ({ of: job, reliefs, failure: error.message })),
    );
  }, [queue, job, isTooled]);
  if (!isTooled) return NONE;
  return { ...found, reliefs: found.failure === null ? found.reliefs : [], isPending: found.of !== job };
}
