import { useCallback, useEffect, useState } from 'react';
import type { Shelf, ShelfContent } from './shelf.ts';
import type { ShelfTrouble } from './shelfTrouble.ts';

export interface ReadShelf {
  /** Null until the shelf is read. */
  readonly content: ShelfContent | null;
  readonly trouble: ShelfTrouble | null;
  readonly setTrouble: (trouble: ShelfTrouble | null) => void;
  readonly refresh: () => Promise<void>;
}

/** Removed records are deleted after this, ms: thirty days. */
const KEPT_REMOVED_MS = 30 * 24 * 3600 * 1000;

/** What is on a shelf, read again when this or another window changes it. */
export function useShelfContent(shelf: Shelf): ReadShelf {
  const [content, setContent] = useState<ShelfContent | null>(null);
  const [trouble, setTrouble] = useState<ShelfTrouble | null>(null);
  const refresh = useCallback(async () => {
    const read = await shelf.read();
    if (read.ok) setContent(read.value);
    else setTrouble(read.trouble);
  }, [shelf]);
  useEffect(() => {
    void shelf.forget(Date.now() - KEPT_REMOVED_MS).then(refresh);
    // A page that was left a moment ago may still be saving.
    const stops = [shelf.watch(refresh), shelf.watchOwn(refresh)];
    return () => {
      for (const stop of stops) stop();
    };
  }, [shelf, refresh]);
  return { content, trouble, setTrouble, refresh };
}
