/** The remainder of each byte by the polynomial 0xedb88320, lowest bit first. */
const REMAINDERS = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? 0xedb88320 ^ (rest >>> 1) : rest >>> 1;
  return rest;
});

/** Check sum of PNG, gzip and ISO/IEC 8802-3, 32 bits: any change within four bytes in a row alters it. */
export function crc32(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) rest = REMAINDERS[(rest ^ byte) & 255]! ^ (rest >>> 8);
  return (rest ^ 0xffffffff) >>> 0;
}
