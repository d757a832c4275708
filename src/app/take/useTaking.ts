import { useEffect, useRef, useState } from 'react';

/** Something that is taken away, in the word of its name. */
export type Taking =
  | { readonly status: 'idle' }
  /** `share` of the work that is done, 0 to 1; null where it is not known. */
  | { readonly status: 'taking'; readonly what: string; readonly share: number | null }
  | { readonly status: 'taken' | 'stopped'; readonly what: string }
  | { readonly status: 'failed'; readonly what: string; readonly why: string };

/** Work that tells how far it has come, and ends when it is told to. */
export type TakingWork = (tell: (share: number) => void, signal: AbortSignal) => Promise<void>;

/** Takes one thing away at a time. */
export function useTaking() {
  const [taking, setTaking] = useState<Taking>({ status: 'idle' });
  const work = useRef<AbortController>(null);
  useEffect(() => () => work.current?.abort(), []);
  const take = async (what: string, run: TakingWork): Promise<void> => {
    const stop = new AbortController();
    work.current = stop;
    setTaking({ status: 'taking', what, share: null });
    try {
      // Lets the browser show that work has begun before it is kept busy.
      await pause();
      await run((share) => setTaking({ status: 'taking', what, share }), stop.signal);
      setTaking({ status: 'taken', what });
    } catch (error) {
      if (stop.signal.aborted) setTaking({ status: 'stopped', what });
      else setTaking({ status: 'failed', what, why: error instanceof Error ? error.message : String(error) });
    }
  };
  return { taking, take, cancel: () => work.current?.abort() };
}

/** Gives the page time to draw and to hear what is pressed. */
export const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 20));
