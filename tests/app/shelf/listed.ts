import type { Shelf } from '../../../src/app/shelf/shelf.ts';
import type { ShelfJob } from '../../../src/app/shelf/shelfSchema.ts';

/** The jobs on a shelf that must be readable. */
export async function listed(shelf: Shelf): Promise<readonly ShelfJob[]> {
  const list = await shelf.list();
  if (!list.ok) throw new Error(list.trouble.message);
  return list.value;
}
