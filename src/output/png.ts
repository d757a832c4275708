import { Zlib } from 'fflate';
import { crc32 } from './crc32.ts';

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
  const rows = pngRows(width, height, channels);
  rows.add(bytes);
  return joined(rows.end());
}

/** A PNG whose rows come one after the other. */
export interface PngRows {
  /** Takes the next rows, from the top. */
  add(bytes: Uint8Array): void;
  /** The parts of the file, once all rows are there. */
  end(): Uint8Array<ArrayBuffer>[];
}

/** Writes a PNG band by band: it keeps the file as far as it is written and one row, not the picture. */
export function pngRows(width: number, height: number, channels: Pixels['channels']): PngRows {
  const header = new DataView(new ArrayBuffer(13));
  header.setUint32(0, width);
  header.setUint32(4, height);
  header.setUint8(8, 8);
  header.setUint8(9, channels === 1 ? 0 : 2);
  const parts = [Uint8Array.from(SIGNATURE), ...chunk('IHDR', new Uint8Array(header.buffer))];
  const packing = new Zlib({ level: 6 }, (packed) => parts.push(...chunk('IDAT', packed)));
  const row = width * channels;
  let above = new Uint8Array(row);
  return {
    add(bytes) {
      // Each row is written as its difference from the row above (filter 2), which is nothing where a picture is plain.
      const rows = new Uint8Array((bytes.length / row) * (row + 1));
      for (let at = 0, to = 0; at < bytes.length; at += row) {
        rows[to++] = 2;
        for (let i = 0; i < row; i++) rows[to++] = bytes[at + i]! - above[i]!;
        above = bytes.slice(at, at + row);
      }
      packing.push(rows);
    },
    end() {
      packing.push(new Uint8Array(), true);
      return [...parts, ...chunk('IEND', new Uint8Array())];
    },
  };
}

/** Length, name with data, and their check sum (annex D of the specification). */
function chunk(name: string, data: Uint8Array): Uint8Array<ArrayBuffer>[] {
  const named = joined([Uint8Array.from(name, (letter) => letter.charCodeAt(0)), data]);
  return [fourBytes(data.length), named, fourBytes(crc32(named))];
}

function fourBytes(value: number): Uint8Array<ArrayBuffer> {
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
