import { useState } from 'react';

/** A file that is being made for the maker, in the words of its name. */
export type Making =
  | { readonly status: 'idle' }
  | { readonly status: 'making'; readonly what: string }
  /** `lacking`: characters that its letters could not print. */
  | { readonly status: 'made'; readonly what: string; readonly lacking: readonly string[] }
  | { readonly status: 'failed'; readonly what: string; readonly why: string };

/** Makes the file, and calls back with the characters that its letters lack. */
type Work = (onLacking: (characters: readonly string[]) => void) => Promise<void>;

/** Begins to make a file. */
export type Make = (what: string, work: Work) => Promise<void>;

/** Makes one file at a time, with its progress. */
export function useMaking(): readonly [Making, Make] {
  const [making, setMaking] = useState<Making>({ status: 'idle' });
  const make: Make = async (what, work) => {
    let lacking: readonly string[] = [];
    setMaking({ status: 'making', what });
    try {
      // Lets the browser show that work has begun before it is kept busy.
      await new Promise((resolve) => setTimeout(resolve, 30));
      await work((characters) => {
        lacking = characters;
      });
      setMaking({ status: 'made', what, lacking });
    } catch (error) {
      setMaking({ status: 'failed', what, why: error instanceof Error ? error.message : String(error) });
    }
  };
  return [making, make];
}
