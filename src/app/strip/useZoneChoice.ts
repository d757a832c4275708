import { useCallback, useMemo, useState } from 'react';
import type { SegmentId } from '../../core/index.ts';

/** The stretch that is lit on strip, scene and pattern at once, and the one chosen to be tuned. */
export interface ZoneChoice {
  readonly lit: SegmentId | null;
  readonly chosen: SegmentId | null;
  /** Lights a stretch while it is pointed at or has the focus; null goes back to the chosen one. */
  light(id: SegmentId | null): void;
  /** Chooses a stretch; choosing it once more lets it go. */
  choose(id: SegmentId): void;
}

export function useZoneChoice(): ZoneChoice {
  const [pointed, light] = useState<SegmentId | null>(null);
  const [chosen, setChosen] = useState<SegmentId | null>(null);
  const choose = useCallback((id: SegmentId) => setChosen((before) => (before === id ? null : id)), []);
  return useMemo(() => ({ lit: pointed ?? chosen, chosen, light, choose }), [pointed, chosen, choose]);
}
