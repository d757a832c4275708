import type { Grain, MakingState, Way } from '../../../core/index.ts';

export const WAY_WORDS: Readonly<Record<Way, string>> = {
  along: "along the hide's backbone",
  across: "across the hide's backbone",
};

export const GRAIN_WORDS: Readonly<Record<Grain, string>> = { out: 'outside', in: 'inside' };

export const STATE_WORDS: Readonly<Record<MakingState, string>> = {
  dry: 'dry',
  cased: 'cased',
  dyed: 'dyed',
  'wet-formed': 'wet-formed',
};
