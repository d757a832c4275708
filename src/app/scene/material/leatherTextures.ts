import type { Texture } from 'three';
import type { Look } from './coverMaterials.ts';
import { cells, valueNoise } from './noise.ts';
import { reliefTile, toneTile } from './tile.ts';

/** Side of the grain picture. Pebbles of about 1.1 mm repeat far enough apart that the eye does not catch it. */
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

/** Nap of the flesh side: short fibres that lie every way. */
function fleshTone(u: number, v: number): number {
  const nap = valueNoise(u * 96, v * 32, 32, 11) + valueNoise(u * 32, v * 96, 32, 12);
  return 0.7 + 0.1 * nap + 0.06 * valueNoise(u * 6, v * 6, 6, 13);
}

const fleshHeight = (u: number, v: number): number => 0.05 * valueNoise(u * 64, v * 64, 64, 14);

/** Burnished edge: fibres along the edge, rubbed smooth. */
const edgeTone = (u: number, v: number): number =>
  0.66 + 0.2 * valueNoise(u * 8, v * 64, 8, 15) + 0.14 * valueNoise(u * 48, v * 48, 48, 16);

export interface LeatherTextures {
  readonly grain: Texture;
  readonly grainRelief: Texture | null;
  readonly flesh: Texture;
  readonly fleshRelief: Texture | null;
  readonly edge: Texture;
}

/** Pictures for a look: the light one shows no relief. */
export const leatherTextures = (look: Look): LeatherTextures => ({
  grain: toneTile(PIXELS, GRAIN_TILE_MM, grainTone),
  grainRelief: look === 'light' ? null : reliefTile(PIXELS, GRAIN_TILE_MM, grainHeight),
  flesh: toneTile(256, 22, fleshTone),
  fleshRelief: look === 'light' ? null : reliefTile(256, 22, fleshHeight),
  edge: toneTile(128, 9, edgeTone),
});
