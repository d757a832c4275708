import { useEffect, useState } from 'react';
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
}

/**
 * The maker's leathers, read again when they change.
 * @param isShown false while what shows them is out of sight: they are read again when it is back
 */
export function useOwnLeathers(isShown = true): OwnLeathers {
  const [read, setRead] = useState<OwnLeathers>({ leathers: null, trouble: null });
  useEffect(() => {
    if (!isShown) return;
    const refresh = async (): Promise<void> => {
      const list = await theLeathers.list();
      if (list.ok) setRead({ leathers: list.value.map(ownLeather).filter((each) => each !== null), trouble: null });
      else setRead({ leathers: null, trouble: list.trouble });
    };
    void refresh();
    // A page that was left a moment ago may still be saving.
    const stops = [theLeathers.watch(refresh), theLeathers.watchOwn(refresh)];
    return () => {
      for (const stop of stops) stop();
    };
  }, [isShown]);
  return read;
}
