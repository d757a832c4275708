import { Refusal } from '../refusal.ts';

/** Largest SVG file. */
const SVG_BYTES = 2_000_000;

/** The encodings that a byte order mark tells; UTF-8 where there is none. */
const MARKS = [
  { mark: [0xff, 0xfe], encoding: 'utf-16le' },
  { mark: [0xfe, 0xff], encoding: 'utf-16be' },
  { mark: [0xef, 0xbb, 0xbf], encoding: 'utf-8' },
] as const;

/** Whether a file begins as XML does: a byte order mark or not, white space or not, then `<`. */
export function startsAsXml(bytes: Uint8Array): boolean {
  return decoded(bytes.subarray(0, 1000)).trimStart().startsWith('<');
}

/**
 * The text of an SVG file. Bytes that are no UTF-8 become U+FFFD, which does no harm: of a drawing only numbers are kept.
 *
 * @throws Refusal where the file is over 2 MB
 */
export function drawingText(bytes: Uint8Array): string {
  if (bytes.length > SVG_BYTES)
    throw new Refusal(
      'too_large',
      `is a file of ${(bytes.length / 1e6).toFixed(1)} MB`,
      `at most ${SVG_BYTES / 1e6} MB`,
      'take out pictures and simplify its paths in the drawing program, then open it again',
    );
  return decoded(bytes);
}

function decoded(bytes: Uint8Array): string {
  const encoding = MARKS.find(({ mark }) => mark.every((byte, i) => bytes[i] === byte))?.encoding ?? 'utf-8';
  return new TextDecoder(encoding).decode(bytes);
}
