import type { TileName } from './material/tiles.ts';

/** The look that the scene starts with. */
export type WarmUpQuestion = 'full' | 'light';

/** Pixels of the tiles of that look. */
export type WarmUpAnswer = readonly (readonly [TileName, Uint8Array])[];
