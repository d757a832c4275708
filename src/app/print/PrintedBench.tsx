import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';
import type { Place } from '../state/place.ts';
import { loadPrintedLetters } from '../state/printedLetters.ts';
import { BenchPage } from './BenchPage.tsx';

/** Parts of the workbench that are lists to hand over or to work by, and are printed as they are. */
const PRINTED_AS_THEY_ARE = ['drafting', 'work', 'supplies', 'quote'];

/** From most places a print is one page of the open job, made when it is asked for. */
export default function PrintedBench({ place: { id, part } }: { readonly place: Place }) {
  const [isPrinting, setPrinting] = useState(false);
  useEffect(() => {
    // What is seen comes first.
    const later = setTimeout(loadPrintedLetters, 2000);
    return () => clearTimeout(later);
  }, []);
  useEffect(() => {
    // At once: a print waits for nothing.
    const begin = (): void => flushSync(() => setPrinting(true));
    const end = (): void => setPrinting(false);
    window.addEventListener('beforeprint', begin);
    window.addEventListener('afterprint', end);
    return () => {
      window.removeEventListener('beforeprint', begin);
      window.removeEventListener('afterprint', end);
    };
  }, []);
  if (!isPrinting || (id === 'workbench' && PRINTED_AS_THEY_ARE.includes(part))) return null;
  return <BenchPage />;
}
