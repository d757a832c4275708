import { useCallback, useMemo, useState } from 'react';
import type { SegmentId } from '../../core/index.ts';

/** The stretch that is highlighted on strip, scene and pattern, and the one chosen for tuning. */
export interface ZoneChoice {
  readonly lit: SegmentId | null;
  readonly chosen: SegmentId | null;
  /** Highlights a stretch while it is pointed at or has the focus; null returns to the chosen one. */
  light(id: SegmentId | null): void;
  /** Chooses a stretch; choosing it again clears the choice. */
  choose(id: SegmentId): void;
}

export function useZoneChoice(): ZoneChoice {
  const [pointed, light] = useState<SegmentId | null>(null);
  const [chosen, setChosen] = useState<SegmentId | null>(null);
  const choose = useCallback((id: SegmentId) => setChosen((before) => (before === id ? null : id)), []);
  return useMemo(() => ({ lit: pointed ?? chosen, chosen, light, choose }), [pointed, chosen, choose]);
}
