import type { StoreKey } from 'idb';
import type { ShelfDatabase, ShelfSchema, StoreName } from './shelfSchema.ts';

/** A record as it stands; undefined where the browser cannot read it. */
export interface ReadRecord<Name extends StoreName> {
  readonly key: StoreKey<ShelfSchema, Name>;
  readonly record: unknown;
}

/**
 * All records of a store in the order of their keys. Where the browser gives up on one of them, as after a fault of the disk,
 * the others are read one by one.
 */
export async function readAll<Name extends StoreName>(
  database: ShelfDatabase,
  name: Name,
  range?: IDBKeyRange,
): Promise<readonly ReadRecord<Name>[]> {
  const { store } = database.transaction(name);
  const keys = store.getAllKeys(range);
  try {
    const [known, records] = await Promise.all([keys, store.getAll(range)]);
    return known.map((key, i) => ({ key, record: records[i] }));
  } catch {
    const known = await keys.catch(() => database.getAllKeys(name, range));
    // Each in a transaction of its own, for a failed request ends its transaction.
    return Promise.all(
      known.map(async (key) => ({ key, record: await database.get(name, key).catch(() => undefined) })),
    );
  }
}
