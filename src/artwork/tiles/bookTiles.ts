import { lattice, valueNoise } from './noise.ts';
import type { Tile } from './tilePixels.ts';

/** Threads each way in one tile of book cloth, and the tile's side. */
const THREADS = 24;
const CLOTH_TILE_MM = 14;

/** Plain weave: over and under change from thread to thread. */
function weave(u: number, v: number): number {
  const [x, y] = [u * THREADS, v * THREADS];
  const over = (Math.floor(x) + Math.floor(y)) % 2 === 0;
  const across = Math.sin(Math.PI * (x % 1));
  const along = Math.sin(Math.PI * (y % 1));
  return over ? across * (0.55 + 0.45 * along) : along * (0.55 + 0.45 * across);
}

const clothTone = (u: number, v: number): number =>
  0.62 + 0.26 * weave(u, v) + 0.1 * valueNoise(u * 24, v * 3, 3, 21) + 0.06 * valueNoise(u * 4, v * 4, 4, 22);

const clothHeight = (u: number, v: number): number => 0.12 * weave(u, v);

/** Edges of leaves: some stand out, some lie back in shadow. */
const LEAVES = 80;
const leafTone = (u: number, v: number): number => {
  const leaf = Math.floor(v * LEAVES);
  const gap = 1 - Math.abs(2 * ((v * LEAVES) % 1) - 1);
  return 0.7 + 0.1 * lattice(leaf, 0, 31) + 0.16 * Math.min(1, gap * 2.2) + 0.04 * valueNoise(u * 12, v * 48, 12, 33);
};

/** Silk of the head band, wound in two alternating tones. */
const bandTone = (u: number): number => (Math.floor(u * 2) % 2 === 0 ? 1 : 0.24) * (0.8 + 0.2 * Math.sin(u * 12.56));

export const BOOK_TILES = {
  cloth: { kind: 'tone', size: 256, side_mm: CLOTH_TILE_MM, at: clothTone },
  clothRelief: { kind: 'relief', size: 256, side_mm: CLOTH_TILE_MM, at: clothHeight },
  leaves: { kind: 'tone', size: 256, side_mm: 14, at: leafTone },
  band: { kind: 'tone', size: 64, side_mm: 2.4, at: bandTone },
} as const satisfies Record<string, Tile>;
