/** Most bytes of a name in UTF-8, its ending with it: under the 255 of common file systems, with room for a folder's own mark. */
const MOST_BYTES = 120;

/** What a job without a name of its own is saved as. */
const NAMELESS = 'untitled-cover';

/** Names of devices that some file systems refuse, whatever the ending. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/;

const bytes = (text: string): number => new TextEncoder().encode(text).length;

/** Letters and digits of any script in lower case, a point only within a number, all else as hyphens. */
const slug = (text: string): string =>
  text
    .normalize('NFC')
    .toLowerCase()
    .normalize('NFC')
    .match(/\p{N}+\.\p{N}+|[\p{L}\p{N}][\p{L}\p{M}\p{N}]*/gu)
    ?.join('-') ?? '';

/**
 * Name of a saved file: the job's name, what sets this file apart from others of the job, and the ending.
 *
 * No character that a file system forbids, never empty before the ending, at most 120 bytes in UTF-8: the job's name is
 * cut, between letters as a reader counts them, and what sets the file apart never.
 * @param name of the job, or whatever stands there
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
  // One letter may carry more marks than there is room for.
  return `${kept.replace(/[-.]+$/, '') || NAMELESS}${tail}`;
}
