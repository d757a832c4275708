import * as z from 'zod/mini';
import type { Step, Written } from './jobHistory.ts';
import { placeOf } from './place.ts';

/** Bump the version when the shape below changes: an older one is then left alone and not read. */
const KEY = 'coverwright.open-job.v1';

const keptSchema = z.object({
  document: z.looseObject({}),
  typed: z.record(z.string(), z.object({ text: z.string(), unit: z.enum(['mm', 'in']) })),
  place: z.optional(z.object({ id: z.string(), revision: z.number(), isSaved: z.boolean() })),
});

/** A job as it was left, and where it stands on the shelf; `isSaved` when it stands there just as it was left. */
interface Kept extends Written {
  readonly place?: { readonly id: string; readonly revision: number; readonly isSaved: boolean };
}

/** The job that was open when the page was left, in this window or else in any, or null where nothing readable was kept. */
export function keptJob(): Kept | null {
  return readFrom(() => sessionStorage) ?? readFrom(() => localStorage);
}

/**
 * Keeps the open job in this browser, for this window and for the next one that is opened, with its place on the shelf.
 * Returns false where the browser refuses, as in a private window or when full.
 */
export function keepJob({ document, typed, key }: Step): boolean {
  const place = placeOf(key);
  const kept: Kept = {
    document,
    typed,
    ...(place && { place: { id: place.id, revision: place.revision, isSaved: place.document === document } }),
  };
  const text = JSON.stringify(kept);
  writeTo(() => sessionStorage, text);
  return writeTo(() => localStorage, text);
}

// A browser that keeps nothing may refuse as soon as the storage is named.
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
