import { Unzlib, zlibSync } from 'fflate';

/** Compressed bytes handed over at a time: deflate grows by 1032 at most, so one slice makes at most 66 kB. */
const SLICE = 64;

/** Bytes of the checksum at the end of a zlib stream (RFC 1950 section 2.2). */
const CHECKSUM_BYTES = 4;

/**
 * Inflates a zlib stream (RFC 1950), giving up as soon as it grows past `limit`, and compares its Adler-32 checksum.
 * @param packed the stream, compressed against `dictionary`
 * @param limit most bytes that may come out
 * @returns the bytes; null for a stream that is damaged, cut off, followed by more bytes, or too large; never throws
 */
export function inflateWithin(packed: Uint8Array, dictionary: Uint8Array, limit: number): Uint8Array | null {
  const chunks: Uint8Array[] = [];
  let size = 0;
  try {
    const stream = new Unzlib({ dictionary }, (chunk) => {
      chunks.push(chunk);
      size += chunk.length;
    });
    for (let at = 0; at < packed.length; at += SLICE) {
      stream.push(packed.subarray(at, at + SLICE), at + SLICE >= packed.length);
      if (size > limit) return null;
    }
  } catch {
    return null;
  }
  const bytes = joined(chunks, size);
  return endsAlike(packed, zlibSync(bytes, { level: 0 })) ? bytes : null;
}

function joined(chunks: readonly Uint8Array[], size: number): Uint8Array {
  const bytes = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}

/** The library ignores the checksum when it inflates, but writes one when it deflates: that one is compared. */
function endsAlike(a: Uint8Array, b: Uint8Array): boolean {
  const [endA, endB] = [a.slice(-CHECKSUM_BYTES), b.slice(-CHECKSUM_BYTES)];
  return endA.length === CHECKSUM_BYTES && endA.every((byte, i) => byte === endB[i]);
}
