import { useSyncExternalStore } from 'react';

/** As in bench.css; paper has no columns either way. */
const narrow = window.matchMedia('screen and (max-width: 1023px)');

function subscribe(onChange: () => void): () => void {
  narrow.addEventListener('change', onChange);
  return () => narrow.removeEventListener('change', onChange);
}

/** Whether the page is too narrow for columns side by side. */
export const useNarrow = (): boolean => useSyncExternalStore(subscribe, () => narrow.matches);
