import { useSyncExternalStore } from 'react';

const QUERY = '(prefers-reduced-motion: reduce)';

function subscribe(changed: () => void): () => void {
  const query = window.matchMedia(QUERY);
  query.addEventListener('change', changed);
  return () => query.removeEventListener('change', changed);
}

/** Whether the system asks for less motion. */
export const useReducedMotion = (): boolean => useSyncExternalStore(subscribe, () => window.matchMedia(QUERY).matches);
