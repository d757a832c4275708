import { type ReactNode, useEffect, useState } from 'react';

/** After this a part that is being fetched counts as late, ms. */
const LATE = 20_000;

/** Placeholder of a part while it is fetched; `children` gets whether that takes suspiciously long. */
export function Awaited({ children }: { readonly children: (isLate: boolean) => ReactNode }) {
  const [isLate, setLate] = useState(false);
  useEffect(() => {
    const timer = setTimeout(setLate, LATE, true);
    return () => clearTimeout(timer);
  }, []);
  return children(isLate);
}

/** @param name of the part, as `the form` */
export const awaitedWords = (name: string, isLate: boolean): string =>
  isLate
    ? `${name} has not come yet. Wait, or reload the page: your job is kept. What is here works without it.`
    : `${name} is being fetched.`;
