import { tilePixels } from '../../artwork/tiles/tilePixels.ts';
import { TILES, type TileName } from '../../artwork/tiles/tiles.ts';
import type { Pixels } from '../png.ts';

/** Most pixels along a side in a file: a tenth of a millimetre each on the grain side. */
const MOST = 256;

/** Length of a surface that a side of the tile covers, mm. */
export const tileSide = (name: TileName): number => TILES[name].side_mm;

/**
 * The picture of a tile for a file, its first row at the head: one channel of shades in sRGB, or three of normals, red to
 * the right, green up, blue out of the surface.
 */
export function tilePicture(name: TileName): Pixels {
  const tile = TILES[name];
  const pixels = tilePixels(tile);
  const share = Math.max(1, Math.floor(tile.size / MOST));
  const size = Math.floor(tile.size / share);
  const channels = tile.kind === 'tone' ? 1 : 3;
  const bytes = new Uint8Array(size * size * channels);
  for (let j = 0; j < size; j++)
    for (let i = 0; i < size; i++)
      for (let c = 0; c < channels; c++) {
        let sum = 0;
        for (let y = 0; y < share; y++)
          for (let x = 0; x < share; x++)
            sum += pixels[4 * ((share * (size - 1 - j) + y) * tile.size + share * i + x) + c]!;
        bytes[(j * size + i) * channels + c] = Math.round(sum / (share * share));
      }
  return { width: size, height: size, channels, bytes };
}

/** A picture of shades in a colour, `#rrggbb`; both in sRGB, as a renderer multiplies them. */
export function coloured({ width, height, bytes: shades }: Pixels, colour: string): Pixels {
  const parts = [1, 3, 5].map((at) => linear(Number.parseInt(colour.slice(at, at + 2), 16)));
  const bytes = new Uint8Array(3 * shades.length);
  shades.forEach((shade, i) => {
    for (let c = 0; c < 3; c++) bytes[3 * i + c] = encoded(parts[c]! * linear(shade));
  });
  return { width, height, channels: 3, bytes };
}

/** Light of a byte in sRGB, 0 to 1 (IEC 61966-2-1). */
export const linear = (byte: number): number => {
  const value = byte / 255;
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
};

const encoded = (light: number): number =>
  Math.round(255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055));
