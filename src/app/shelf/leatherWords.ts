import { colourWords, type JobRecord, printer } from '../../core/index.ts';
import type { ShelfRecord } from './shelfSchema.ts';

const { size, weights } = printer('mm');

/** What a leather can be found by: its name, its weight as sold and in mm, its kind, its looks and its notes. */
export const leatherWords = ({ name, document }: ShelfRecord): string => `${name} ${wordsOfLeather(document)}`;

/** As `leatherWords`, of a document. */
export function wordsOfLeather(document: JobRecord): string {
  const { name, min_mm, max_mm, colour, tannage, temper, surface, finish, notes } = document;
  const isSold = typeof min_mm === 'number' && typeof max_mm === 'number';
  const sold = isSold ? [weights(min_mm, max_mm), size(min_mm), size(max_mm)] : [];
  const shown = typeof colour === 'string' && /^#[0-9a-f]{6}$/.test(colour) ? colourWords(colour) : '';
  return [name, ...sold, tannage, temper, surface, shown, finish, notes].join(' ');
}
