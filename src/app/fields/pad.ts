import { findFieldNote, isLeather, type JobPath, type LengthUnit } from '../../core/index.ts';

/**
 * Keys that the number pad of a telephone lacks for an entry. A fraction is parted from a whole number by itself.
 * An entry without such a list takes any text.
 */
export type PadKeys = readonly string[];

/** The eighths of a ruler, and the keys that write any other fraction. */
const INCH_KEYS: PadKeys = ['1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8', '/', ' '];
const WEIGHT_KEYS: PadKeys = ['-', ' oz', ' mm', '1/2'];

const lengthKeys = (unit: LengthUnit): PadKeys => (unit === 'in' ? INCH_KEYS : []);

/** The keys for the value at a path, typed in `unit` where it is a length. */
export function padKeys(path: JobPath, unit: LengthUnit): PadKeys {
  if (isLeather(path)) return WEIGHT_KEYS;
  const note = findFieldNote(path);
  if (note?.unit === 'mm') return lengthKeys(unit);
  return note !== undefined && note.min < 0 ? ['-'] : [];
}

/** What a key writes after a text: a fraction after a digit is parted from it. */
export const keyedText = (key: string, before: string): string =>
  key.includes('/') && key.length > 1 && /\d$/.test(before) ? ` ${key}` : key;
