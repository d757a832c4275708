import { isRecord } from '../../core/index.ts';
import type { ShelfRecord } from './shelfSchema.ts';

/** Lower case without accents. */
const plain = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();

/** What a job can be found by: its name, and the kind, sizes, seam and pockets that it names. */
export function jobWords({ name, document }: ShelfRecord): string {
  const { book, seam, pockets } = document;
  const named = [book, seam, pockets].filter(isRecord).flatMap((part) => Object.values(part));
  return [name, ...named.filter((value) => typeof value !== 'object')].join(' ');
}

/**
 * A search among records, whose words are prepared once.
 * @param wordsOf a record, by which it can be found
 * @returns those that contain every word of a text, in their order; all for an empty text
 */
export function shelfSearch<Kept>(
  records: readonly Kept[],
  wordsOf: (record: Kept) => string,
): (text: string) => readonly Kept[] {
  const prepared = records.map((record) => ({ record, words: plain(wordsOf(record)) }));
  return (text) => {
    const wanted = plain(text).split(/\s+/).filter(Boolean);
    if (wanted.length === 0) return records;
    return prepared.filter(({ words }) => wanted.every((word) => words.includes(word))).map(({ record }) => record);
  };
}
