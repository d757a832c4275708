import { useState } from 'react';
import { shareFragment } from '../../output/shareLink/shareLink.ts';
import { useBenchStore } from '../state/BenchContext.tsx';

/** An address that holds the open job; null for a job too long for one. */
export interface Shared {
  readonly link: string | null;
  readonly isCopied: boolean;
}

export interface Sharing {
  readonly shared: Shared | null;
  readonly share: () => Promise<void>;
  readonly dismiss: () => void;
}

/** Writes the open job into an address and copies it. */
export function useSharing(): Sharing {
  const { getState } = useBenchStore();
  const [shared, setShared] = useState<Shared | null>(null);
  const share = async (): Promise<void> => {
    const fragment = shareFragment(getState().history.good.document);
    if (fragment === null) return setShared({ link: null, isCopied: false });
    const { origin, pathname, search } = window.location;
    const link = `${origin}${pathname}${search}${fragment}`;
    try {
      await navigator.clipboard.writeText(link);
      setShared({ link, isCopied: true });
    } catch {
      // Pages that are not secure, and browsers that ask first, may refuse.
      setShared({ link, isCopied: false });
    }
  };
  return { shared, share, dismiss: () => setShared(null) };
}
