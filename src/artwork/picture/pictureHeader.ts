import { count, Refusal } from '../refusal.ts';

/** What a picture may have: its file, its pixels and its longer side. Decoded, 16 million pixels take 64 MB. */
export const PICTURE_LIMITS = { bytes: 8_000_000, pixels: 16_000_000, side: 8000 } as const;

export type PictureLimits = Readonly<Record<keyof typeof PICTURE_LIMITS, number>>;

export interface PictureHeader {
  readonly type: 'image/png' | 'image/jpeg';
  /** Pixels as stored, before a JPEG is turned by its orientation. */
  readonly width: number;
  readonly height: number;
}

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const JPEG = [0xff, 0xd8, 0xff];

const startsWith = (bytes: Uint8Array, mark: readonly number[]): boolean => mark.every((byte, i) => bytes[i] === byte);

/** Whether the first bytes are those of a PNG or JPEG; the name of a file says nothing. */
export const isPicture = (bytes: Uint8Array): boolean => startsWith(bytes, PNG) || startsWith(bytes, JPEG);

/**
 * Type and size of a PNG (ISO/IEC 15948, 11.2.2) or JPEG (ITU-T T.81, B.2.2), read from its header without decoding it; undefined
 * where the header is broken.
 */
export function sizeInHeader(bytes: Uint8Array): PictureHeader | undefined {
  const header = startsWith(bytes, PNG) ? pngHeader(bytes) : jpegHeader(bytes);
  return header !== undefined && header.width > 0 && header.height > 0 ? header : undefined;
}

/**
 * Type and size of a PNG or JPEG within limits.
 *
 * @throws Refusal where the header is broken or says more than `limits`
 */
export function pictureHeader(bytes: Uint8Array, limits: PictureLimits = PICTURE_LIMITS): PictureHeader {
  const { bytes: most, pixels, side } = limits;
  if (bytes.length > most) throw tooLarge(bytes.length, most);
  const header = sizeInHeader(bytes);
  if (header === undefined)
    throw new Refusal(
      'unreadable',
      'is a picture whose header is broken',
      'a whole PNG or JPEG',
      'save it again from a picture program',
    );
  const { width, height } = header;
  if (width * height > pixels || Math.max(width, height) > side)
    throw new Refusal(
      'too_large',
      `is a picture of ${count(width)} x ${count(height)} pixels`,
      `at most ${pixels / 1e6} million pixels (as ${count(Math.sqrt(pixels))} x ${count(Math.sqrt(pixels))}), no side over ${count(side)}`,
      SMALLER,
    );
  return header;
}

/** The refusal of a file of so many bytes. */
export const tooLarge = (bytes: number, most: number = PICTURE_LIMITS.bytes): Refusal =>
  new Refusal('too_large', `is a file of ${megabytes(bytes)} MB`, `at most ${megabytes(most)} MB`, SMALLER);

const SMALLER = 'make the picture smaller, 1,000 pixels wide are plenty, then open it again';

const megabytes = (bytes: number): string => (bytes / 1e6).toFixed(1);

const view = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

function pngHeader(bytes: Uint8Array): PictureHeader | undefined {
  const data = view(bytes);
  const isWhole = bytes.length >= 33 && data.getUint32(8) === 13 && data.getUint32(12) === 0x49484452;
  return isWhole ? { type: 'image/png', width: data.getUint32(16), height: data.getUint32(20) } : undefined;
}

/** The largest of the frames, should there be several, as a decoder may take any. */
function jpegHeader(bytes: Uint8Array): PictureHeader | undefined {
  const data = view(bytes);
  let [width, height] = [0, 0];
  for (let at = 2; at + 4 <= bytes.length; ) {
    const marker = data.getUint16(at);
    if (marker === 0xffff) {
      at++;
      continue;
    }
    if (marker < 0xff01) return undefined;
    const length = data.getUint16(at + 2);
    const isFrame = marker >= 0xffc0 && marker <= 0xffcf && ![0xffc4, 0xffc8, 0xffcc].includes(marker);
    if (isFrame) {
      if (at + 9 > bytes.length) return undefined;
      height = Math.max(height, data.getUint16(at + 5));
      width = Math.max(width, data.getUint16(at + 7));
    }
    if (marker === 0xffda) return width > 0 ? { type: 'image/jpeg', width, height } : undefined;
    if (length < 2) return undefined;
    at += 2 + length;
  }
  return undefined;
}
