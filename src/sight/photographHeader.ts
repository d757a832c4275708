import { isPicture, sizeInHeader } from '../artwork/picture/pictureHeader.ts';
import { PhotographRefusal } from './photographRefusal.ts';

/** What a photograph may have: decoded, 64 million pixels take 256 MB for a moment. */
export const PHOTOGRAPH_LIMITS = { bytes: 60_000_000, pixels: 64_000_000, leastSide: 800 } as const;

export interface PhotographHeader {
  readonly type: 'image/jpeg' | 'image/png' | 'image/webp' | 'image/avif' | 'image/heic';
  /** Pixels as stored, before they are turned as the camera was held. */
  readonly width: number;
  readonly height: number;
}

const KINDS = 'a photograph as JPEG, PNG, WebP, AVIF or HEIC';
const AGAIN = 'send or copy the photograph itself once more, then choose that file';

/**
 * Kind and size of a photograph by its header, without decoding it.
 *
 * @throws PhotographRefusal where it is none, torn, or over the limits
 */
export function photographHeader(file: string, bytes: Uint8Array): PhotographHeader {
  if (bytes.length === 0) throw new PhotographRefusal(file, 'is an empty file', KINDS, AGAIN);
  if (bytes.length > PHOTOGRAPH_LIMITS.bytes) throw tooManyBytes(file, bytes.length);
  const kind = isPicture(bytes) ? 'JPEG or PNG' : textAt(bytes, 8, 4) === 'WEBP' ? 'WebP' : mediaKind(bytes);
  if (kind === null)
    throw new PhotographRefusal(file, 'is not a picture', KINDS, 'choose the photograph that the camera made');
  const header =
    kind === 'JPEG or PNG'
      ? sizeInHeader(bytes)
      : kind === 'WebP'
        ? webpHeader(bytes)
        : mediaHeader(bytes, kind === 'AVIF' ? 'image/avif' : 'image/heic');
  if (header === undefined || header.width === 0 || header.height === 0 || isTorn(bytes, header.type))
    throw brokenFile(file);
  const { width, height } = header;
  const size = `has ${width} x ${height} pixels`;
  if (Math.max(width, height) < PHOTOGRAPH_LIMITS.leastSide)
    throw new PhotographRefusal(
      file,
      size,
      `at least ${PHOTOGRAPH_LIMITS.leastSide} along the longer side`,
      'choose the photograph in its full size, not a small copy of it',
    );
  if (width * height > PHOTOGRAPH_LIMITS.pixels)
    throw new PhotographRefusal(
      file,
      size,
      `at most ${PHOTOGRAPH_LIMITS.pixels / 1e6} million pixels`,
      'set the camera to 12 megapixel, which are plenty, and take it again',
    );
  return header;
}

export const tooManyBytes = (file: string, bytes: number): PhotographRefusal =>
  new PhotographRefusal(
    file,
    `is a file of ${(bytes / 1e6).toFixed(1)} MB`,
    `at most ${PHOTOGRAPH_LIMITS.bytes / 1e6} MB`,
    'save the photograph as JPEG, then choose that file',
  );

export const brokenFile = (file: string): PhotographRefusal =>
  new PhotographRefusal(file, 'is a picture that is not whole', KINDS, AGAIN);

const textAt = (bytes: Uint8Array, from: number, length: number): string =>
  String.fromCharCode(...bytes.subarray(from, from + length));

/** Whether the end of the picture is missing: of a JPEG its EOI marker, of a PNG its IEND chunk. */
function isTorn(bytes: Uint8Array, type: PhotographHeader['type']): boolean {
  // Other data may follow the picture, and a small one may stand in the header, with an end of its own.
  if (type === 'image/png') return !textAt(bytes, bytes.length - 64, 64).includes('IEND');
  if (type !== 'image/jpeg') return false;
  const data = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 2;
  while (at + 4 <= bytes.length && data.getUint16(at) !== 0xffda)
    at += data.getUint16(at) === 0xffff ? 1 : 2 + data.getUint16(at + 2);
  for (at = bytes.indexOf(0xff, at + 2); at >= 0; at = bytes.indexOf(0xff, at + 1))
    if (bytes[at + 1] === 0xd9) return false;
  return true;
}

/** Size of a WebP (RFC 9649, 2.5 to 2.7). */
function webpHeader(bytes: Uint8Array): PhotographHeader | undefined {
  if (bytes.length < 30) return undefined;
  const data = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const of = (width: number, height: number): PhotographHeader => ({ type: 'image/webp', width, height });
  switch (textAt(bytes, 12, 4)) {
    case 'VP8X':
      return of(1 + (data.getUint32(24, true) & 0xffffff), 1 + (data.getUint32(26, true) >>> 8));
    case 'VP8 ':
      return of(data.getUint16(26, true) & 0x3fff, data.getUint16(28, true) & 0x3fff);
    case 'VP8L':
      return of(1 + (data.getUint32(21, true) & 0x3fff), 1 + ((data.getUint32(21, true) >>> 14) & 0x3fff));
    default:
      return undefined;
  }
}

/** Brands of still pictures in the ISO base media file format (ISO/IEC 23008-12, 10; AV1 Image File Format, 4). */
function mediaKind(bytes: Uint8Array): 'AVIF' | 'HEIC' | null {
  if (textAt(bytes, 4, 4) !== 'ftyp') return null;
  const end = Math.min(bytes.length, 8 + 4 * 16, new DataView(bytes.buffer, bytes.byteOffset).getUint32(0));
  const brands = textAt(bytes, 8, Math.max(0, end - 8));
  if (/avif|avis/.test(brands)) return 'AVIF';
  return /heic|heix|hevc|mif1|heim|heis/.test(brands) ? 'HEIC' : null;
}

/** The largest of the sizes named (ISO/IEC 23008-12, 6.5.3, `ispe`): a picture may be made of tiles that name theirs too. */
function mediaHeader(bytes: Uint8Array, type: PhotographHeader['type']): PhotographHeader | undefined {
  const head = bytes.subarray(0, 1 << 18);
  const data = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let found: PhotographHeader | undefined;
  for (let at = head.indexOf(0x69); at >= 0 && at + 16 <= bytes.length; at = head.indexOf(0x69, at + 1)) {
    if (textAt(bytes, at, 4) !== 'ispe') continue;
    const [width, height] = [data.getUint32(at + 8), data.getUint32(at + 12)];
    if (found === undefined || width * height > found.width * found.height) found = { type, width, height };
  }
  return found;
}
