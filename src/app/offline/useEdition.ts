import { useEffect, useState } from 'react';
import type { EditionAnswer, EditionRequest } from './editionMessage.ts';

export interface Edition {
  /** A newer edition is here and is not yet in use. */
  readonly isWaiting: boolean;
  /** It was asked for and refused, because other windows are open. */
  readonly othersAreOpen: boolean;
  readonly takeIt: () => void;
  readonly dismiss: () => void;
}

/** Keeps the page for use without a network, and watches for newer editions. Only the built page does so. */
export function useEdition(): Edition {
  const [waiting, setWaiting] = useState<ServiceWorker | null>(null);
  const [othersAreOpen, setOthersAreOpen] = useState(false);

  useEffect(() => {
    if (import.meta.env.DEV || !('serviceWorker' in navigator)) return;
    const onAnswer = ({ data }: MessageEvent<EditionAnswer>): void => {
      if (data === 'othersAreOpen') setOthersAreOpen(true);
      // The job on the bench is kept, so a fresh start shows it again.
      if (data === 'taken') window.location.reload();
    };
    navigator.serviceWorker.addEventListener('message', onAnswer);
    navigator.serviceWorker.startMessages();
    void register(setWaiting);
    return () => navigator.serviceWorker.removeEventListener('message', onAnswer);
  }, []);

  return {
    isWaiting: waiting !== null,
    othersAreOpen,
    takeIt: () => waiting?.postMessage('take' satisfies EditionRequest),
    dismiss: () => setWaiting(null),
  };
}

async function register(onWaiting: (worker: ServiceWorker) => void): Promise<void> {
  try {
    const registration = await navigator.serviceWorker.register('./sw.js');
    const tell = (): void => {
      // On a first visit nothing is replaced, so nothing waits.
      if (registration.waiting !== null && registration.active !== null) onWaiting(registration.waiting);
    };
    tell();
    registration.addEventListener('updatefound', () => {
      registration.installing?.addEventListener('statechange', tell);
    });
  } catch {
    // Without a worker the page works as any other: with a network.
  }
}
