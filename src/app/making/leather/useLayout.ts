import { useEffect, useState } from 'react';
import * as z from 'zod/mini';
import type { LayoutQuestion } from '../../../output/layout/layoutQuestions.ts';
import { accepting } from '../../worker/accepting.ts';
import { useWorkerQueue } from '../../worker/useWorkerQueue.ts';
import type { LayoutAnswer } from './layout.worker.ts';

export interface LaidOut extends LayoutAnswer {
  /** What was laid out; the picture shows it while a newer question is worked on. */
  readonly question: LayoutQuestion;
}

export interface LayoutState {
  readonly status: 'laying' | 'laid' | 'failed';
  /** Why it failed, in words for the maker. */
  readonly why?: string;
  /** The last answer; null until there is a first. */
  readonly last: LaidOut | null;
}

const startWorker = () => new Worker(new URL('./layout.worker.ts', import.meta.url), { type: 'module' });

const isLayoutAnswer = accepting<LayoutAnswer>(
  z.looseObject({
    layout: z.looseObject({
      placed: z.array(z.looseObject({})),
      unplaced: z.array(z.string()),
      area: z.number(),
      used: z.number(),
      yield: z.number(),
    }),
    faults: z.array(z.string()),
  }),
);

/**
 * Lays pieces out in a worker; the last layout stays until the new one is there. A layout takes long, so a newer
 * question ends the worker.
 * @param question asked again only where its content differs
 */
export function useLayout(question: LayoutQuestion): LayoutState {
  const [state, setState] = useState<LayoutState>({ status: 'laying', last: null });
  const queue = useWorkerQueue<LayoutQuestion, LayoutAnswer>(startWorker, isLayoutAnswer);
  const asked = JSON.stringify(question);
  useEffect(() => {
    const content = JSON.parse(asked) as LayoutQuestion;
    setState(({ last }) => ({ status: 'laying', last }));
    queue.ask(content).then(
      (answer) => setState({ status: 'laid', last: { ...answer, question: content } }),
      ({ message }: Error) => setState(({ last }) => ({ status: 'failed', last, why: message })),
    );
    return () => queue.close();
  }, [queue, asked]);
  return state;
}
