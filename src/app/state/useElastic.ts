import { useEffect, useRef, useState } from 'react';
import type { CoverDesign, ElasticOverRange, Job, Report } from '../../core/index.ts';
import type { WorkerQueue } from '../worker/WorkerQueue.ts';

/** The strip's answer for the open job: on its way, here, or not to be had, with the reason in words for the maker. */
export type ElasticState =
  | { readonly status: 'solving' }
  | { readonly status: 'solved'; readonly addTo: (report: Report, design: CoverDesign) => Report }
  | { readonly status: 'gaveUp'; readonly why: string; readonly retry: () => void };

const SOLVING: ElasticState = { status: 'solving' };

/** Solves the elastic strip for a job in a worker; until its answer is here the closed form stands alone. */
export function useElastic(job: Job): ElasticState {
  const desk = useRef<WorkerQueue<Job, ElasticOverRange> | null>(null);
  const newest = useRef(job);
  const [answer, setAnswer] = useState<{ readonly job: Job; readonly state: ElasticState } | null>(null);

  useEffect(() => {
    let isWanted = true;
    const giveUp = (failed: Job, { message }: Error): void =>
      setAnswer({ job: failed, state: { status: 'gaveUp', why: message, retry } });
    const retry = (): void => {
      setAnswer(null);
      if (desk.current === null) void open();
      else desk.current.ask(newest.current);
    };
    const open = async (): Promise<void> => {
      try {
        const { elasticQueue, withStrip } = await import('./elasticQueue.ts');
        if (!isWanted) return;
        desk.current = elasticQueue(
          (solved, elastic) =>
            setAnswer({
              job: solved,
              state: { status: 'solved', addTo: (report, design) => withStrip(report, design, elastic) },
            }),
          giveUp,
        );
        desk.current.ask(newest.current);
      } catch (error) {
        giveUp(newest.current, error as Error);
      }
    };
    void open();
    return () => {
      isWanted = false;
      desk.current?.close();
      desk.current = null;
    };
  }, []);

  useEffect(() => {
    newest.current = job;
    desk.current?.ask(job);
  }, [job]);

  // Given up once, it stays so until a worker answers: what is tried again with every edit is not shown as on its way.
  return answer !== null && (answer.job === job || answer.state.status === 'gaveUp') ? answer.state : SOLVING;
}
