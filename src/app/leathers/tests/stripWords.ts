import type { Grain, Way } from '../../../core/index.ts';

export const WAY_WORDS: Readonly<Record<Way, string>> = {
  along: "along the hide's backbone",
  across: "across the hide's backbone",
};

export const GRAIN_WORDS: Readonly<Record<Grain, string>> = { out: 'outside', in: 'inside' };
