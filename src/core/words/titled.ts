import { capital } from './capital.ts';
import type { Word } from './vocabulary.ts';

/** A term as a title, with a capital. */
export const titled = (word: Word): string => capital(word);
