import { useEffect, useState } from 'react';
import type { LayoutAnswer, LayoutQuestion } from './layoutMessage.ts';

export interface LaidOut extends LayoutAnswer {
  /** What was laid out: while a newer question is worked on, the picture is still of this one. */
  readonly question: LayoutQuestion;
}

export interface LayoutState {
  readonly status: 'laying' | 'laid' | 'failed';
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
    const worker = new Worker(new URL('./layout.worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<LayoutAnswer>) =>
      setState({ status: 'laid', last: { ...data, question: content } });
    worker.onerror = () => setState(({ last }) => ({ status: 'failed', last }));
    worker.postMessage(content);
    return () => worker.terminate();
  }, [asked]);
  return state;
}
