import type { Check } from '../../core/index.ts';

/** Where on the cover a check looks. */
export type Spot = 'foreEdge' | 'head' | 'tail' | 'spine' | 'pockets';

const SPOTS: Readonly<Partial<Record<Check['id'], Spot>>> = {
  closes: 'foreEdge',
  foreEdge: 'foreEdge',
  head: 'head',
  tail: 'tail',
  opens: 'spine',
  foldStrain: 'spine',
  springsOpen: 'spine',
  pocketHolds: 'pockets',
  pocketLoads: 'pockets',
  seamMargin: 'foreEdge',
  seats: 'foreEdge',
};

/** The place in the picture that a check speaks of; null where it has none. */
export const checkSpot = (id: Check['id']): Spot | null => SPOTS[id] ?? null;
