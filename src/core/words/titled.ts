import type { Word } from './vocabulary.ts';

/** A term as a title, with a capital. */
export const titled = (word: Word): string => `${word.charAt(0).toUpperCase()}${word.slice(1)}`;
