import { useSyncExternalStore } from 'react';
import type { ViewChoice } from './viewChoice.ts';

const systemIsDark = window.matchMedia('(prefers-color-scheme: dark)');

function subscribe(onChange: () => void): () => void {
  systemIsDark.addEventListener('change', onChange);
  return () => systemIsDark.removeEventListener('change', onChange);
}

/** The scheme in force: the maker's choice, else the system's. */
export function useColourScheme(choice: ViewChoice['scheme']): 'light' | 'dark' {
  const isDark = useSyncExternalStore(subscribe, () => systemIsDark.matches);
  if (choice !== 'system') return choice;
  return isDark ? 'dark' : 'light';
}
