import { useSyncExternalStore } from 'react';

/** Whether the screen is as asked, now and as it changes. Paper has no columns either way. */
function screenIs(asked: string): () => boolean {
  const query = window.matchMedia(`screen and ${asked}`);
  const subscribe = (onChange: () => void): (() => void) => {
    query.addEventListener('change', onChange);
    return () => query.removeEventListener('change', onChange);
  };
  return () => useSyncExternalStore(subscribe, () => query.matches);
}

// As in the style sheets.
/** Whether the page is too narrow for the cards beside the picture. */
export const useNarrow = screenIs('(max-width: 1023px)');

/** Whether the page is that of a telephone held upright: one thing at a time. */
export const useTelephone = screenIs('(max-width: 699px)');
