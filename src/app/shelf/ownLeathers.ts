import { useCallback, useEffect, useState } from 'react';
import { openLeather, type TakenLeather } from '../../core/index.ts';
import type { ShelfRecord } from './shelfSchema.ts';
import type { ShelfTrouble } from './shelfTrouble.ts';
import { theLeathers } from './theLeathers.ts';

/** A leather as it is kept; null for one that this version cannot read. */
function ownLeather({ id, revision, document }: ShelfRecord): TakenLeather | null {
  const opened = openLeather(document);
  return opened.ok ? { id, revision, leather: opened.document } : null;
}

export interface OwnLeathers {
  /** Those last changed first; null until they are read. */
  readonly leathers: readonly TakenLeather[] | null;
  readonly trouble: ShelfTrouble | null;
  readonly refresh: () => Promise<void>;
}

/**
 * The maker's leathers, read again when another window changes them.
 * @param isShown false while what shows them is out of sight: they are read again when it is back, with what this window has changed
 */
export function useOwnLeathers(isShown = true): OwnLeathers {
  const [read, setRead] = useState<Omit<OwnLeathers, 'refresh'>>({ leathers: null, trouble: null });
  const refresh = useCallback(async (): Promise<void> => {
    const list = await theLeathers.list();
    if (list.ok) setRead({ leathers: list.value.map(ownLeather).filter((each) => each !== null), trouble: null });
    else setRead({ leathers: null, trouble: list.trouble });
  }, []);
  useEffect(() => {
    if (!isShown) return;
    void refresh();
    return theLeathers.watch(() => void refresh());
  }, [isShown, refresh]);
  return { ...read, refresh };
}
