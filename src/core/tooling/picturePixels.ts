import { unzlibSync } from 'fflate';
import type { Artwork } from '../job/toolingSchema.ts';
import { cached } from './cached.ts';

type Picture = Extract<Artwork, { kind: 'picture' }>;

/**
 * The grey of a picture's pixels, row by row from the top; null where its data are not what its size says.
 *
 * Unpacking stops at the size of the picture, so that a small text cannot fill the memory.
 */
export function picturePixels({ width, height, pixels }: Picture): Uint8Array | null {
  return cached(unpacked, pixels, KEPT, () => {
    try {
      const out = unzlibSync(fromBase64(pixels), { out: new Uint8Array(width * height) });
      return out.length === width * height ? out : null;
    } catch {
      // Damaged data have no pixels.
      return null;
    }
  });
}

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Bytes of a base64 text (RFC 4648); a foreign character counts as zero bits, which the unpacking then refuses. */
function fromBase64(text: string): Uint8Array {
  const digits = text.replace(/=+$/, '');
  const bytes = new Uint8Array(Math.floor((digits.length * 3) / 4));
  let [bits, held, at] = [0, 0, 0];
  for (const digit of digits) {
    bits = (bits << 6) | Math.max(0, DIGITS.indexOf(digit));
    held += 6;
    if (held < 8) continue;
    held -= 8;
    bytes[at++] = (bits >> held) & 255;
  }
  return bytes;
}

const KEPT = 12;
const unpacked = new Map<string, Uint8Array | null>();
