import type { Shelved } from '../../../src/app/shelf/shelfTrouble.ts';

/** What the shelf answers where it must. */
export async function value<T>(shelved: Promise<Shelved<T>>): Promise<T> {
  const result = await shelved;
  if (!result.ok) throw new Error(result.trouble.message);
  return result.value;
}
