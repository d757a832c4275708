import { useCallback, useEffect, useState } from 'react';
import type { ShelfContent } from './shelf.ts';
import type { ShelfTrouble } from './shelfTrouble.ts';
import { theShelf } from './theShelf.ts';

export interface ShelfJobs {
  /** Null until the shelf is read. */
  readonly content: ShelfContent | null;
  readonly trouble: ShelfTrouble | null;
  readonly setTrouble: (trouble: ShelfTrouble | null) => void;
  readonly refresh: () => Promise<void>;
}

/** Removed jobs are deleted after this, ms: thirty days. */
const KEPT_REMOVED_MS = 30 * 24 * 3600 * 1000;

/** The jobs on the shelf, read again when this or another window changes them. */
export function useShelfJobs(): ShelfJobs {
  const [content, setContent] = useState<ShelfContent | null>(null);
  const [trouble, setTrouble] = useState<ShelfTrouble | null>(null);
  const refresh = useCallback(async () => {
    const read = await theShelf.read();
    if (read.ok) setContent(read.value);
    else setTrouble(read.trouble);
  }, []);
  useEffect(() => {
    void theShelf.forget(Date.now() - KEPT_REMOVED_MS).then(refresh);
    return theShelf.watch(() => void refresh());
  }, [refresh]);
  return { content, trouble, setTrouble, refresh };
}
