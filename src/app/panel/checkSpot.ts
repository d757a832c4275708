import type { Check } from '../../core/index.ts';
import type { Spot } from '../scene/spot.ts';

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
