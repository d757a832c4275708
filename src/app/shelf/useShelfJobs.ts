import { useCallback, useEffect, useState } from 'react';
import type { ShelfJob } from './shelfDatabase.ts';
import type { ShelfTrouble } from './shelfTrouble.ts';
import { theShelf } from './theShelf.ts';

export interface ShelfJobs {
  /** Null until they are read. */
  readonly standing: readonly ShelfJob[] | null;
  readonly removed: readonly ShelfJob[];
  readonly trouble: ShelfTrouble | null;
  readonly setTrouble: (trouble: ShelfTrouble | null) => void;
  readonly refresh: () => Promise<void>;
}

/** Removed jobs are forgotten after this, ms: thirty days. */
const KEPT_REMOVED_MS = 30 * 24 * 3600 * 1000;

/** The jobs on the shelf, read anew whenever this or another window changes them. */
export function useShelfJobs(): ShelfJobs {
  const [standing, setStanding] = useState<readonly ShelfJob[] | null>(null);
  const [removed, setRemoved] = useState<readonly ShelfJob[]>([]);
  const [trouble, setTrouble] = useState<ShelfTrouble | null>(null);
  const refresh = useCallback(async () => {
    const [stand, gone] = [await theShelf.list(), await theShelf.list('removed')];
    if (stand.ok) setStanding(stand.value);
    else setTrouble(stand.trouble);
    if (gone.ok) setRemoved(gone.value);
  }, []);
  useEffect(() => {
    void theShelf.forget(Date.now() - KEPT_REMOVED_MS).then(refresh);
    return theShelf.watch(() => void refresh());
  }, [refresh]);
  return { standing, removed, trouble, setTrouble, refresh };
}
