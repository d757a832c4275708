import { Children, type ReactNode, useEffect, useState } from 'react';
import { nextTask } from '../loading/nextTask.ts';

/** Mounts its children one after the other, each in a task of its own: all at once they would hold the page up. */
export function InTurn({ children }: { readonly children: readonly ReactNode[] }) {
  const [count, setCount] = useState(0);
  const isWhole = count >= children.length;
  useEffect(() => {
    let isGone = false;
    if (!isWhole) void nextTask().then(() => !isGone && setCount(count + 1));
    return () => {
      isGone = true;
    };
  }, [count, isWhole]);
  return Children.toArray(children.slice(0, count));
}
