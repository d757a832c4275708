import { zlibSync } from 'fflate';

/** A picture of bytes, row by row from the top. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** 1 grey, 3 red, green and blue. */
  readonly channels: 1 | 3;
  readonly bytes: Uint8Array;
}

const SIGNATURE = [137, 80, 78, 71, 13, 10, 26, 10];

/** Writes a picture as PNG, 8 bits a channel (W3C Portable Network Graphics Specification, third edition). */
export function png({ width, height, channels, bytes }: Pixels): Uint8Array<ArrayBuffer> {
  const header = new DataView(new ArrayBuffer(13));
  header.setUint32(0, width);
  header.setUint32(4, height);
  header.setUint8(8, 8);
  header.setUint8(9, channels === 1 ? 0 : 2);
  // Each row is written as its difference from the row above (filter 2), which is nothing where a picture is plain.
  const row = width * channels;
  const rows = new Uint8Array(height * (row + 1));
  for (let j = 0; j < height; j++) {
    rows[j * (row + 1)] = 2;
    for (let i = 0; i < row; i++)
      rows[j * (row + 1) + 1 + i] = bytes[j * row + i]! - (j > 0 ? bytes[(j - 1) * row + i]! : 0);
  }
  return joined([
    Uint8Array.from(SIGNATURE),
    ...chunk('IHDR', new Uint8Array(header.buffer)),
    ...chunk('IDAT', zlibSync(rows, { level: 6 })),
    ...chunk('IEND', new Uint8Array()),
  ]);
}

/** Length, name with data, and their check sum. */
function chunk(name: string, data: Uint8Array): Uint8Array[] {
  const named = joined([Uint8Array.from(name, (letter) => letter.charCodeAt(0)), data]);
  return [fourBytes(data.length), named, fourBytes(crc32(named))];
}

function fourBytes(value: number): Uint8Array {
  const bytes = new DataView(new ArrayBuffer(4));
  bytes.setUint32(0, value);
  return new Uint8Array(bytes.buffer);
}

function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** The remainder of each byte by the polynomial of the check sum (annex D of the specification), lowest bit first. */
const REMAINDERS = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? 0xedb88320 ^ (rest >>> 1) : rest >>> 1;
  return rest;
});

function crc32(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) rest = REMAINDERS[(rest ^ byte) & 255]! ^ (rest >>> 8);
  return (rest ^ 0xffffffff) >>> 0;
}
