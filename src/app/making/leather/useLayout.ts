import { useEffect, useState } from 'react';
import { AskedWorker } from '../../worker/AskedWorker.ts';
import type { LayoutAnswer, LayoutQuestion } from './layoutMessage.ts';

export interface LaidOut extends LayoutAnswer {
  /** What was laid out: while a newer question is worked on, the picture is still of this one. */
  readonly question: LayoutQuestion;
}

export interface LayoutState {
  readonly status: 'laying' | 'laid' | 'failed';
  /** Why it failed, in words for the maker. */
  readonly why?: string;
  /** The last answer; null until there is a first. */
  readonly last: LaidOut | null;
}

/**
 * Lays pieces out in a worker; the last layout stays until the new one is there.
 *
 * Every question has a worker of its own, which ends when a newer question comes: no answer can be stale.
 * @param question asked anew only where its content differs
 */
export function useLayout(question: LayoutQuestion): LayoutState {
  const [state, setState] = useState<LayoutState>({ status: 'laying', last: null });
  const asked = JSON.stringify(question);
  useEffect(() => {
    const content = JSON.parse(asked) as LayoutQuestion;
    setState(({ last }) => ({ status: 'laying', last }));
    const worker = new AskedWorker<LayoutQuestion, LayoutAnswer>(
      () => new Worker(new URL('./layout.worker.ts', import.meta.url), { type: 'module' }),
    );
    worker.ask(content).then(
      (answer) => setState({ status: 'laid', last: { ...answer, question: content } }),
      ({ message }: Error) => setState(({ last }) => ({ status: 'failed', last, why: message })),
    );
    return () => worker.close();
  }, [asked]);
  return state;
}
