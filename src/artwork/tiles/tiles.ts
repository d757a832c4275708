import { BOOK_TILES } from './bookTiles.ts';
import { LEATHER_TILES } from './leatherTiles.ts';
import type { Tile } from './tilePixels.ts';

/** The tiles of all surfaces. */
export const TILES = { ...LEATHER_TILES, ...BOOK_TILES };

export type TileName = keyof typeof TILES;

/** The tiles of a look: the light one shows no relief. */
export const tilesOf = (look: 'full' | 'light'): [TileName, Tile][] =>
  (Object.entries(TILES) as [TileName, Tile][]).filter(([, { kind }]) => look === 'full' || kind === 'tone');
