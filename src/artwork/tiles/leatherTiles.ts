import { cells, valueNoise } from './noise.ts';
import type { Tile } from './tilePixels.ts';

/** Side of the grain tile: large enough that its pebbles of about 0.8 mm do not visibly repeat. */
const GRAIN_TILE_MM = 30;
const PEBBLES = 38;
const PIXELS = 512;

/** Height of the grain, mm: flat pebbles with narrow valleys between them, a fine tooth on all. */
function grainHeight(u: number, v: number): number {
  const bendU = 0.9 * (valueNoise(u * 9, v * 9, 9, 3) - 0.5);
  const bendV = 0.9 * (valueNoise(u * 9, v * 9, 9, 4) - 0.5);
  const { inside, cell } = cells(u * PEBBLES + bendU, v * PEBBLES + bendV, PEBBLES, 1);
  const top = 1 - (1 - Math.min(1, inside / 0.36)) ** 2;
  return 0.05 * top * (0.75 + 0.25 * cell) + 0.008 * valueNoise(u * 128, v * 128, 128, 5);
}

/** Finish gathers in the valleys: darker than the pebbles. */
function grainTone(u: number, v: number): number {
  const valley = Math.min(1, grainHeight(u, v) / 0.038);
  const cloud = 0.6 * valueNoise(u * 5, v * 5, 5, 8) + 0.4 * valueNoise(u * 14, v * 14, 14, 9);
  return 0.66 + 0.24 * valley + 0.08 * cloud;
}

/** Height of a hide over a hand's breadth, mm: it is nowhere quite flat, and fine growth wrinkles run through parts of it. */
function hideHeight(u: number, v: number): number {
  const swell = 0.5 * valueNoise(u * 5, v * 5, 5, 41) + 0.16 * valueNoise(u * 13, v * 13, 13, 42);
  const bend = valueNoise(u * 6, v * 6, 6, 43);
  const line = 2 * valueNoise(u * 24 + 5 * bend, v * 12 + 3 * bend, 12, 44) - 1;
  const where = Math.max(0, 2.2 * valueNoise(u * 4, v * 4, 4, 45) - 0.9);
  return swell - 0.03 * where * Math.exp(-((line / 0.16) ** 2));
}

/** Height of leather creased by folding, mm: short wrinkles along v. */
const creaseHeight = (u: number, v: number): number =>
  0.09 * Math.abs(2 * valueNoise(u * 18 + 3 * valueNoise(u * 3, v * 3, 3, 51), v * 6, 6, 52) - 1);

/** Short fibres that run in four ways over one another, 0 to 1. */
function fibres(u: number, v: number, seed: number): number {
  const [across, along] = [
    valueNoise(u * 96, v * 24, 24, seed) + valueNoise(u * 24, v * 96, 24, seed + 1),
    valueNoise(u * 72 + v * 72, u * 24 - v * 24, 24, seed + 2) +
      valueNoise(u * 24 + v * 24, u * 72 - v * 72, 24, seed + 3),
  ];
  return (across + along) / 4;
}

/** Nap of the flesh side: fibres in all directions, some of them raised. */
const fleshTone = (u: number, v: number): number =>
  0.42 + 0.78 * fibres(u, v, 11) + 0.08 * valueNoise(u * 6, v * 6, 6, 13);

const fleshHeight = (u: number, v: number): number =>
  0.22 * fibres(u, v, 11) + 0.03 * valueNoise(u * 64, v * 64, 64, 14);

/** Fibre of the cut: bundles, of which the knife shows ends and lengths. */
const edgeTone = (u: number, v: number): number =>
  0.35 + 0.5 * fibres(u, v, 15) + 0.3 * valueNoise(u * 24, v * 24, 24, 16);

export const LEATHER_TILES = {
  grain: { kind: 'tone', size: PIXELS, side_mm: GRAIN_TILE_MM, at: grainTone },
  grainRelief: { kind: 'relief', size: PIXELS, side_mm: GRAIN_TILE_MM, at: grainHeight },
  hideRelief: { kind: 'relief', size: PIXELS, side_mm: 150, at: hideHeight },
  creaseRelief: { kind: 'relief', size: 256, side_mm: 16, at: creaseHeight },
  flesh: { kind: 'tone', size: 256, side_mm: 22, at: fleshTone },
  fleshRelief: { kind: 'relief', size: 256, side_mm: 22, at: fleshHeight },
  edge: { kind: 'tone', size: 256, side_mm: 9, at: edgeTone },
} as const satisfies Record<string, Tile>;
