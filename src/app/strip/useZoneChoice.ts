import { useCallback, useMemo, useState } from 'react';

/** The stretch that is lit on strip, scene and pattern at once, and the one chosen to be tuned. */
export interface ZoneChoice {
  readonly lit: string | null;
  readonly chosen: string | null;
  /** Lights a stretch while it is pointed at or has the focus; null goes back to the chosen one. */
  light(id: string | null): void;
  /** Chooses a stretch; choosing it once more lets it go. */
  choose(id: string): void;
}

export function useZoneChoice(): ZoneChoice {
  const [pointed, light] = useState<string | null>(null);
  const [chosen, setChosen] = useState<string | null>(null);
  const choose = useCallback((id: string) => setChosen((before) => (before === id ? null : id)), []);
  return useMemo(() => ({ lit: pointed ?? chosen, chosen, light, choose }), [pointed, chosen, choose]);
}
