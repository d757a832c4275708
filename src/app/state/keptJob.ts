import * as z from 'zod/mini';
import { type JobHistory, type JobKey, placeOf, type Written } from './jobHistory.ts';

/** Bump the version when the shape below changes: an older copy is then not read. */
const KEY = 'coverwright.open-job.v1';

const keptSchema = z.object({
  document: z.looseObject({}),
  // Zod's records weigh 0.5 kB in the first script.
  typed: z.catchall(z.object({}), z.object({ text: z.string(), unit: z.enum(['mm', 'in']) })),
  place: z.optional(z.object({ id: z.string(), revision: z.number(), isSaved: z.boolean() })),
  mark: z.optional(z.number()),
  key: z.optional(z.string()),
  window: z.optional(z.string()),
});

/** A job as it was left, and its place on the shelf; `isSaved` if the shelf has just this state. */
export interface Kept extends Written {
  readonly place?: { readonly id: string; readonly revision: number; readonly isSaved: boolean };
  /**
   * When any window last wrote its copy, ms since 1970 and never before a save that was then known. A later save on the
   * shelf means that the copy is out of date. Absent in a copy of an earlier version.
   */
  readonly mark?: number | undefined;
  /** Key of the job in its history. Absent in a copy of an earlier version. */
  readonly key?: JobKey | undefined;
  /** The journal of the window that kept it (`shelf/Journal.ts`). */
  readonly window?: string | undefined;
}

let seen = 0;
let window: string | undefined;

/** Notes the time of a save, so that no later copy looks older even after the clock was set back. */
export function sawShelf(savedAt: number): void {
  seen = Math.max(seen, savedAt);
}

/** A time that is later than all that were seen, ms since 1970. */
export function nextMark(): number {
  seen = Math.max(Date.now(), seen + 1);
  return seen;
}

/** Names this window's journal in every later copy. */
export function keepsJournal(name: string): void {
  window = name;
}

/** The copy that this window left, and the last one of any window; null where none can be read. */
export interface KeptCopies {
  readonly own: Kept | null;
  readonly any: Kept | null;
}

export function keptCopies(): KeptCopies {
  return { own: readFrom(() => sessionStorage), any: readFrom(() => localStorage) };
}

/** The job that was open when the page was left, in this window or else in any; null if none can be read. */
export const keptJob = (): Kept | null => keptOf(keptCopies());

/** As `keptJob`, of copies that were read. */
export function keptOf({ own, any }: KeptCopies): Kept | null {
  const kept = own ?? any;
  const marks = [own?.mark, any?.mark].filter((mark) => mark !== undefined);
  return kept && (marks.length === 0 ? kept : { ...kept, mark: Math.max(...marks) });
}

/**
 * Keeps the open job in this browser, for this window and for the next one that is opened, with its place on the shelf.
 * Returns false where the browser refuses, as in a private window or when full.
 */
export function keepJob(history: JobHistory): boolean {
  const { document, typed, key } = history;
  const place = placeOf(history);
  const kept: Kept = {
    document,
    typed,
    key,
    window,
    mark: nextMark(),
    ...(place && { place: { id: place.id, revision: place.revision, isSaved: place.document === document } }),
  };
  const text = JSON.stringify(kept);
  writeTo(() => sessionStorage, text);
  return writeTo(() => localStorage, text);
}

// A browser without storage may throw as soon as it is accessed.
function readFrom(storage: () => Storage) {
  try {
    return keptSchema.parse(JSON.parse(storage().getItem(KEY) ?? ''));
  } catch {
    return null;
  }
}

function writeTo(storage: () => Storage, text: string): boolean {
  try {
    storage().setItem(KEY, text);
    return true;
  } catch {
    return false;
  }
}
