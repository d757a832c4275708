import { useState } from 'react';

/** A file that is being made for the maker, in the words of its name. */
export type Making =
  | { readonly status: 'idle' }
  | { readonly status: 'making' | 'made'; readonly what: string }
  | { readonly status: 'failed'; readonly what: string; readonly why: string };

/** Makes one file at a time and says how it goes. */
export function useMaking(): readonly [Making, (what: string, work: () => Promise<void>) => Promise<void>] {
  const [making, setMaking] = useState<Making>({ status: 'idle' });
  const make = async (what: string, work: () => Promise<void>): Promise<void> => {
    setMaking({ status: 'making', what });
    try {
      // Lets the browser show that work has begun before it is kept busy.
      await new Promise((resolve) => setTimeout(resolve, 30));
      await work();
      setMaking({ status: 'made', what });
    } catch (error) {
      setMaking({ status: 'failed', what, why: error instanceof Error ? error.message : String(error) });
    }
  };
  return [making, make];
}
