/** Longest name in UTF-8 bytes, ending included: well under the 255 of common file systems. */
const MOST_BYTES = 120;

/** File name of a job without a name. */
const NAMELESS = 'untitled-cover';

/** Names of devices that some file systems refuse, whatever the ending. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/;

const bytes = (text: string): number => new TextEncoder().encode(text).length;

/** Letters and digits of any script in lower case, points within numbers, hyphens for all else. */
const slug = (text: string): string =>
  text
    .normalize('NFC')
    .toLowerCase()
    .normalize('NFC')
    .match(/\p{N}+\.\p{N}+|[\p{L}\p{N}][\p{L}\p{M}\p{N}]*/gu)
    ?.join('-') ?? '';

/**
 * Name of a saved file: the job's name, the variants that tell it from other files of the job, and the ending.
 *
 * It has no character that a file system forbids, is never empty before the ending, and takes at most 120 bytes in
 * UTF-8: the job's name is cut to fit, between grapheme clusters, the variants never.
 * @param name of the job, or any other value
 * @param ending without its first point
 * @param variants such as `mirrored`; empty ones are left out
 */
export function fileName(name: unknown, ending: string, variants: readonly string[] = []): string {
  const tail = [
    ...variants
      .map(slug)
      .filter((variant) => variant !== '')
      .map((variant) => `-${variant}`),
    `.${ending}`,
  ].join('');
  const own = slug(String(name ?? '')) || NAMELESS;
  const head = RESERVED.test(own) && variants.length === 0 ? `${own}-cover` : own;
  let kept = '';
  for (const { segment } of new Intl.Segmenter().segment(head)) {
    if (bytes(kept) + bytes(segment) + bytes(tail) > MOST_BYTES) break;
    kept += segment;
  }
  // A single letter with its marks may be longer than the room.
  return `${kept.replace(/[-.]+$/, '') || NAMELESS}${tail}`;
}
