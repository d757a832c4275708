import { cells, valueNoise } from './noise.ts';
import type { Tile } from './tilePixels.ts';

/** Side of the grain tile: large enough that its pebbles of about 1.1 mm do not visibly repeat. */
const GRAIN_TILE_MM = 30;
const PEBBLES = 27;
const PIXELS = 512;

/** Height of the grain, mm: pebbles with soft tops, creases between them, a fine tooth on all. */
function grainHeight(u: number, v: number): number {
  const bendU = 0.9 * (valueNoise(u * 9, v * 9, 9, 3) - 0.5);
  const bendV = 0.9 * (valueNoise(u * 9, v * 9, 9, 4) - 0.5);
  const { inside, cell } = cells(u * PEBBLES + bendU, v * PEBBLES + bendV, PEBBLES, 1);
  const top = 1 - (1 - Math.min(1, inside / 0.42)) ** 2;
  return 0.1 * top * (0.75 + 0.25 * cell) + 0.012 * valueNoise(u * 128, v * 128, 128, 5);
}

function grainTone(u: number, v: number): number {
  const crease = Math.min(1, grainHeight(u, v) / 0.075);
  const cloud = 0.6 * valueNoise(u * 5, v * 5, 5, 8) + 0.4 * valueNoise(u * 14, v * 14, 14, 9);
  return 0.6 + 0.27 * crease + 0.12 * cloud;
}

/** Nap of the flesh side: short fibres in all directions. */
function fleshTone(u: number, v: number): number {
  const nap = valueNoise(u * 96, v * 32, 32, 11) + valueNoise(u * 32, v * 96, 32, 12);
  return 0.7 + 0.1 * nap + 0.06 * valueNoise(u * 6, v * 6, 6, 13);
}

const fleshHeight = (u: number, v: number): number => 0.05 * valueNoise(u * 64, v * 64, 64, 14);

/** Cut edge: ends of fibres in all directions. Stretched along the edge they would look like wood. */
const edgeTone = (u: number, v: number): number =>
  0.7 + 0.16 * valueNoise(u * 64, v * 64, 64, 15) + 0.1 * valueNoise(u * 24, v * 24, 24, 16);

export const LEATHER_TILES = {
  grain: { kind: 'tone', size: PIXELS, side_mm: GRAIN_TILE_MM, at: grainTone },
  grainRelief: { kind: 'relief', size: PIXELS, side_mm: GRAIN_TILE_MM, at: grainHeight },
  flesh: { kind: 'tone', size: 256, side_mm: 22, at: fleshTone },
  fleshRelief: { kind: 'relief', size: 256, side_mm: 22, at: fleshHeight },
  edge: { kind: 'tone', size: 128, side_mm: 9, at: edgeTone },
} as const satisfies Record<string, Tile>;
