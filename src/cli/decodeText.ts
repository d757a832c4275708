/** Marks that a text may begin with, and the encoding that each stands for. */
const MARKS = [
  { encoding: 'utf-8', bytes: [0xef, 0xbb, 0xbf] },
  { encoding: 'utf-16le', bytes: [0xff, 0xfe] },
  { encoding: 'utf-16be', bytes: [0xfe, 0xff] },
] as const;

/** Longest mark, in bytes. */
export const MARK_BYTES = 3;

/** The mark at the beginning of a text; without one the text is in UTF-8. */
export const markOf = (start: Uint8Array): { readonly encoding: string; readonly bytes: readonly number[] } =>
  MARKS.find(({ bytes }) => bytes.every((byte, i) => start[i] === byte)) ?? { encoding: 'utf-8', bytes: [] };

/** What a text may be, and what to do where it is not. */
export const TEXT_ALLOWED = 'text in UTF-8, or in UTF-16 with its mark';
export const TEXT_REMEDY = 'save it as UTF-8';

export type DecodedText = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly got: string };

/**
 * Reads bytes as text, in the encoding that their mark names unless one is given; the mark is left out.
 * @returns the text, or the first byte that is none or the first U+0000, with its place counted from 1; never a text in
 *   which U+FFFD stands for what could not be read
 */
export function decodeText(bytes: Uint8Array, { encoding } = markOf(bytes)): DecodedText {
  let text: string;
  try {
    text = new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    if (encoding !== 'utf-8') return { ok: false, got: `${encoding.toUpperCase()} that breaks off or is damaged` };
    const at = badByte(bytes);
    const byte = bytes[at]!.toString(16).toUpperCase().padStart(2, '0');
    return { ok: false, got: `0x${byte} at byte ${at + 1}, which is not UTF-8` };
  }
  const at = text.indexOf('\0');
  if (at === -1) return { ok: true, text };
  return { ok: false, got: `U+0000 as character ${at + 1}: UTF-16 without its mark, or no text` };
}

/** Where the first sequence of bytes begins that is not UTF-8; the bytes must hold one. */
function badByte(bytes: Uint8Array): number {
  // The first `low` bytes may begin a text in UTF-8, the first `high` may not.
  let low = 0;
  let high = bytes.length + 1;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (beginning(bytes.subarray(0, middle)) === null) high = middle;
    else low = middle;
  }
  return Buffer.byteLength(beginning(bytes.subarray(0, low))!);
}

/** The whole characters of bytes that may begin a text in UTF-8, else null. */
function beginning(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes, { stream: true });
  } catch {
    return null;
  }
}
