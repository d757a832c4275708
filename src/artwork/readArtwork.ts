import type { Artwork, JobIssue } from '../core/index.ts';
import type { PictureDecoder } from './picture/decodePicture.ts';
import { packedPixels } from './picture/packedPixels.ts';
import { isPicture, PICTURE_LIMITS, pictureHeader, tooLarge } from './picture/pictureHeader.ts';
import { TRACE_DEFAULTS, type TraceOptions, tracedPicture } from './picture/tracedPicture.ts';
import { Refusal } from './refusal.ts';
import { drawingText, startsAsXml } from './svg/drawingText.ts';
import { readSvg } from './svg/readSvg.ts';

/** A file of the maker's own. Its name only names the artwork: its kind is read from its bytes. */
export interface ArtworkFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** How a picture is taken: the outlines of its dark areas as lines, or its greys laid on the leather as they are. */
export type PictureUse = ({ readonly as: 'lines' } & Partial<TraceOptions>) | { readonly as: 'picture' };

export type ReadArtwork =
  | {
      readonly ok: true;
      /** With an id made from its data, so that the same drawing opened twice is one. */
      readonly artwork: Artwork;
      /** How wide the file says that it is, mm; null where it does not say. */
      readonly width_mm: number | null;
      /** What of the file is not in the artwork, as `3 texts (turn text into paths first)`. */
      readonly leftOut: readonly string[];
    }
  | { readonly ok: false; readonly issue: JobIssue };

/** Why a file of a size is refused before it is read, in bytes; null where it may be read. */
export const sizeIssue = (bytes: number): JobIssue | null =>
  bytes > PICTURE_LIMITS.bytes ? tooLarge(bytes).issue : null;

/**
 * Reads a drawing (SVG) or a picture (PNG, JPEG) of the maker's own as an artwork of a job. Nothing of the file runs, is loaded
 * from elsewhere, or comes through but numbers.
 *
 * @param decode decodes a picture whose header is within the limits: `decodePicture` in a browser
 * @returns the artwork, or why the file is not taken: what was got, what is allowed, what to do
 */
export async function readArtwork(
  file: ArtworkFile,
  decode: PictureDecoder,
  use: PictureUse = { as: 'lines' },
): Promise<ReadArtwork> {
  try {
    return { ok: true, ...(isPicture(file.bytes) ? await pictureArtwork(file, decode, use) : svgArtwork(file)) };
  } catch (error) {
    const refusal = error instanceof Refusal ? error : NOT_WORKED_THROUGH;
    return { ok: false, issue: refusal.issue };
  }
}

/** For what no check foresaw: a library that stumbles over a broken file. */
const NOT_WORKED_THROUGH = new Refusal(
  'unreadable',
  'cannot be worked through',
  'a whole SVG, PNG or JPEG file',
  'save it again from the program that made it',
);

type Read = Omit<Extract<ReadArtwork, { ok: true }>, 'ok'>;

function svgArtwork({ name, bytes }: ArtworkFile): Read {
  if (!startsAsXml(bytes))
    throw new Refusal(
      'type',
      foundKind(bytes),
      'an SVG, PNG or JPEG file',
      'save it in one of these kinds, then open it again',
    );
  const { width_mm, leftOut, finest, ...drawn } = readSvg(drawingText(bytes));
  return { artwork: lineArtwork(name, drawn), width_mm, leftOut: [...leftOut, ...coarse(finest)] };
}

async function pictureArtwork({ name, bytes }: ArtworkFile, decode: PictureDecoder, use: PictureUse): Promise<Read> {
  const grey = await decode(bytes, pictureHeader(bytes));
  if (use.as === 'picture') {
    const { pixels, levels } = packedPixels(grey);
    const { width, height } = grey;
    return {
      artwork: { id: idOf(pixels), name: shortName(name), kind: 'picture', width, height, pixels },
      width_mm: null,
      leftOut: levels === 256 ? [] : [`all but ${levels} greys`],
    };
  }
  const { finest, ...drawn } = tracedPicture(grey, { ...TRACE_DEFAULTS, ...use });
  return { artwork: lineArtwork(name, drawn), width_mm: null, leftOut: coarse(finest) };
}

const lineArtwork = (
  name: string,
  { width, height, lines }: Pick<Extract<Artwork, { kind: 'lines' }>, 'width' | 'height' | 'lines'>,
): Artwork => ({ id: idOf(lines), name: shortName(name), kind: 'lines', width, height, lines });

const coarse = (finest: number): string[] =>
  finest > 1 / 8000 ? [`detail finer than 1/${1 / finest} of its larger side`] : [];

function foundKind(bytes: Uint8Array): string {
  if (bytes.length === 0) return 'is an empty file';
  if (bytes[0] === 0x1f && bytes[1] === 0x8b) return 'is packed (a compressed SVG)';
  return 'is a file of another kind';
}

/** The file's name without folders and ending, 120 characters at most, without signs that cannot be seen. */
function shortName(name: string): string {
  const last = name.replace(/^.*[\\/]/s, '').replace(/\.[a-z0-9]{1,5}$/i, '');
  return [...last.replace(/[\p{C}\s]+/gu, ' ').trim()].slice(0, 60).join('') || 'Drawing';
}

/** 64 bits of a hash, as hexadecimal digits: FNV-1a (Fowler, Noll and Vo 1991), with its offset and prime for 64 bits. */
function idOf(data: string): string {
  let hash = 0xcbf29ce484222325n;
  for (let i = 0; i < data.length; i++) hash = BigInt.asUintN(64, (hash ^ BigInt(data.charCodeAt(i))) * 0x100000001b3n);
  return hash.toString(16).padStart(16, '0');
}
