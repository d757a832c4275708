import { zlibSync } from 'fflate';
import { ARTWORK_LIMITS } from '../../core/index.ts';
import type { Grey } from './grey.ts';

/** How many greys a picture is kept in, the most that fit being taken. 8 fit always: 3 bits a pixel, 512 x 512 of them. */
const LEVELS = [256, 64, 32, 16, 8] as const;

export interface PackedPixels {
  /** As a job keeps them: deflated (RFC 1950), in base64. */
  readonly pixels: string;
  readonly levels: number;
}

/** The greys of a picture of 512 x 512 at most, in as many levels as the limit of a job leaves room for; white stays white. */
export function packedPixels({ values }: Grey): PackedPixels {
  for (const levels of LEVELS) {
    const rounded = values.map((value) => Math.round((Math.round((value / 255) * (levels - 1)) / (levels - 1)) * 255));
    const pixels = base64(zlibSync(rounded, { level: 9 }));
    if (pixels.length <= ARTWORK_LIMITS.characters) return { pixels, levels };
  }
  throw new RangeError(`A picture of ${values.length} pixels is larger than 512 x 512.`);
}

function base64(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);
}
