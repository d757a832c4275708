import { strFromU8, strToU8, zlibSync } from 'fflate';
import { isRecord, type JobIssue, type JobRecord, jobIssue, type OpenedJob, openJob } from '../../core/index.ts';
import { inflateWithin } from './inflateWithin.ts';
import { LINK_DICTIONARIES } from './linkDictionary.ts';

/** Longest link made and read, in characters: a job takes 50 to 500, more with hides drawn point by point. */
export const MAX_LINK_CHARACTERS = 16_000;

/** Most bytes of JSON that a link may hold. */
const MAX_LINK_BYTES = 128_000;

/** Layout of links made now: zlib against its dictionary, in base64url (RFC 4648 section 5) without padding. */
const LAYOUT = 4;

const SHAPE = /^#?job=(\d{1,4})\.([A-Za-z0-9_-]+)$/;

const isLayout = (layout: number): layout is keyof typeof LINK_DICTIONARIES => layout in LINK_DICTIONARIES;

/** Whether an address's fragment claims to hold a job, sound or damaged. */
export const isShareFragment = (fragment: string): boolean => /^#?job=/.test(fragment);

/**
 * Writes a whole job as the fragment of an address, which browsers never send to a server: `#job=4.<text>`.
 * @param document the job as written
 * @returns the fragment, or null where it would be too long to be read: such a job goes as a file
 */
export function shareFragment(document: JobRecord): string | null {
  const bytes = strToU8(JSON.stringify(document));
  const packed = zlibSync(bytes, { level: 9, dictionary: LINK_DICTIONARIES[LAYOUT] });
  const base64 = btoa(strFromU8(packed, true));
  const fragment = `#job=${LAYOUT}.${base64.replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '')}`;
  return bytes.length > MAX_LINK_BYTES || fragment.length > MAX_LINK_CHARACTERS ? null : fragment;
}

/**
 * The job without the maker's own drawings and the designs made of them, which are too long for a link.
 * @returns null where it has none
 */
export function withoutDrawings(document: JobRecord): JobRecord | null {
  const { tooling } = document;
  if (!isRecord(tooling) || !Array.isArray(tooling.artworks)) return null;
  const { artworks: _, designs, ...rest } = tooling;
  const kept = Array.isArray(designs) ? designs.filter((design) => !isRecord(design) || design.kind !== 'drawing') : [];
  return { ...document, tooling: { ...rest, designs: kept } };
}

/**
 * Reads the job back out of an address's fragment.
 * @param fragment with or without its leading `#`
 * @returns the job, or why nothing was opened: a link damaged, too long, unpacking to too much, of a later layout, or
 *   holding an invalid job; never throws
 */
export function readShareFragment(fragment: string): OpenedJob {
  if (fragment.length > MAX_LINK_CHARACTERS)
    return refused('too_large', `${fragment.length} characters`, `at most ${MAX_LINK_CHARACTERS} characters`);
  const match = SHAPE.exec(fragment);
  if (match === null) return refused('unreadable', 'a link with missing or foreign characters', SOUND);
  const layout = Number(match[1]);
  if (!isLayout(layout))
    return refused('choice', `a link of layout ${layout}`, `layout 1 to ${LAYOUT}`, 'open it with a newer version');
  const packed = bytesOf(match[2]!);
  const bytes = packed && inflateWithin(packed, LINK_DICTIONARIES[layout], MAX_LINK_BYTES);
  if (bytes === null) return refused('unreadable', 'a link that is cut off or altered', SOUND);
  try {
    return openJob(JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)));
  } catch {
    return refused('not_json', 'a link that does not hold a job', SOUND);
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

function refused(
  code: JobIssue['code'],
  got: string,
  allowed: string,
  remedy = 'ask for the link again, or for the job as a file',
): OpenedJob {
  return { ok: false, issues: [jobIssue(code, '(link)', got, allowed, remedy)] };
}
