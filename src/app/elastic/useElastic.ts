import { useEffect, useRef, useState } from 'react';
import type { Job } from '../../core/job/jobSchema.ts';
import { ElasticDesk } from './ElasticDesk.ts';
import type { ElasticOverRange } from './elasticMessage.ts';

/** The strip's answer for the open job: on its way, here, or not to be had. */
export type ElasticState =
  | { readonly status: 'solving' }
  | { readonly status: 'solved'; readonly elastic: ElasticOverRange }
  | { readonly status: 'failed' };

const SOLVING: ElasticState = { status: 'solving' };
const FAILED: ElasticState = { status: 'failed' };

/** Solves the elastic strip for a job in a worker; until its answer is here the closed form stands alone. */
export function useElastic(job: Job): ElasticState {
  const desk = useRef<ElasticDesk | null>(null);
  const [answer, setAnswer] = useState<{ readonly job: Job; readonly state: ElasticState } | null>(null);

  useEffect(() => {
    const worker = new Worker(new URL('./elastic.worker.ts', import.meta.url), { type: 'module' });
    desk.current = new ElasticDesk(
      worker,
      (solved, elastic) => setAnswer({ job: solved, state: { status: 'solved', elastic } }),
      (failed) => setAnswer({ job: failed, state: FAILED }),
    );
    return () => {
      desk.current?.close();
      desk.current = null;
    };
  }, []);

  useEffect(() => desk.current?.ask(job), [job]);

  return answer?.job === job ? answer.state : SOLVING;
}
