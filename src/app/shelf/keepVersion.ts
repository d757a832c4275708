import type { IDBPObjectStore } from 'idb';
import { versionsOf } from './shelfDatabase.ts';
import type { RecordStore, ShelfRecord, ShelfSchema, VersionStore } from './shelfSchema.ts';

/** Least time between two versions; undo covers the steps in between. */
export const VERSION_SPACING_MS = 5 * 60_000;

/** Versions kept of one record; the oldest is dropped first. */
export const MAX_VERSIONS = 50;

type Versions = IDBPObjectStore<ShelfSchema, (RecordStore | VersionStore)[], VersionStore, 'readwrite'>;

/** Keeps the state of a record that is about to be overwritten, unless the last version is nearly as recent. */
export async function keepVersion(versions: Versions, { id, revision, document, savedAt }: ShelfRecord): Promise<void> {
  const keys = await versions.getAllKeys(versionsOf(id));
  const last = keys.length === 0 ? undefined : await versions.get(keys.at(-1)!);
  if (last !== undefined && savedAt - last.savedAt < VERSION_SPACING_MS) return;
  await versions.put({ id, revision, document, savedAt });
  for (const key of keys.slice(0, Math.max(0, keys.length + 1 - MAX_VERSIONS))) await versions.delete(key);
}
