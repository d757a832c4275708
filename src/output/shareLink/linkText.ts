import { strFromU8, strToU8, zlibSync } from 'fflate';
import { type JobIssue, jobIssue } from '../../core/index.ts';
import { inflateWithin } from './inflateWithin.ts';
import { LINK_DICTIONARIES } from './linkDictionary.ts';

/** Longest fragment made and read, in characters: a job takes 50 to 500, more with hides drawn point by point. */
export const MAX_LINK_CHARACTERS = 16_000;

/** Most bytes of JSON that a link may hold. */
const MAX_LINK_BYTES = 128_000;

/** Layout of links made now: zlib against its dictionary, in base64url (RFC 4648 section 5) without padding. */
const LAYOUT = 5;

const SHAPE = /^(\d{1,4})\.([A-Za-z0-9_-]+)$/;

const isLayout = (layout: number): layout is keyof typeof LINK_DICTIONARIES => layout in LINK_DICTIONARIES;

/**
 * Packs a value as text for the fragment of an address, which browsers never send to a server: `4.<text>`.
 * @param before characters of the fragment before it
 * @returns null where it would be too long to be read
 */
export function linkText(value: object, before: number): string | null {
  const bytes = strToU8(JSON.stringify(value));
  const packed = zlibSync(bytes, { level: 9, dictionary: LINK_DICTIONARIES[LAYOUT] });
  const base64 = btoa(strFromU8(packed, true));
  const text = `${LAYOUT}.${base64.replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '')}`;
  return bytes.length > MAX_LINK_BYTES || before + text.length > MAX_LINK_CHARACTERS ? null : text;
}

/** What was packed, from JSON and not checked further; or why nothing was read. */
export type ReadLink =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly issues: readonly JobIssue[] };

/**
 * Unpacks the fragment of an address.
 * @param prefix what stands before the packed text
 * @returns the value, or why not: a link damaged, too long, unpacking to too much or of a later layout; never throws
 */
export function readLinkText(fragment: string, prefix: RegExp): ReadLink {
  if (fragment.length > MAX_LINK_CHARACTERS)
    return refusedLink('too_large', `${fragment.length} characters`, `at most ${MAX_LINK_CHARACTERS} characters`);
  const match = SHAPE.exec(fragment.replace(prefix, ''));
  if (match === null) return refusedLink('unreadable', 'a link with missing or foreign characters', SOUND);
  const layout = Number(match[1]);
  if (!isLayout(layout))
    return refusedLink('choice', `a link of layout ${layout}`, `layout 1 to ${LAYOUT}`, 'open it with a newer version');
  const packed = bytesOf(match[2]!);
  const bytes = packed && inflateWithin(packed, LINK_DICTIONARIES[layout], MAX_LINK_BYTES);
  if (bytes === null) return refusedLink('unreadable', 'a link that is cut off or altered', SOUND);
  try {
    return { ok: true, value: JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)) };
  } catch {
    return refusedLink('not_json', 'a link that does not hold a job', SOUND);
  }
}

const SOUND = 'a link as the share command made it';

function bytesOf(text: string): Uint8Array | null {
  try {
    return strToU8(atob(text.replaceAll('-', '+').replaceAll('_', '/')), true);
  } catch {
    return null;
  }
}

/** The refusal of a link. */
export function refusedLink(
  code: JobIssue['code'],
  got: string,
  allowed: string,
  remedy = 'ask for the link again, or for the job as a file',
): Extract<ReadLink, { ok: false }> {
  return { ok: false, issues: [jobIssue(code, '(link)', got, allowed, remedy)] };
}
