import { VOCABULARY, type Word } from './vocabulary.ts';

/** Every term, in the order of the alphabet. */
export const WORDS: readonly Word[] = (Object.keys(VOCABULARY) as Word[]).sort((a, b) => a.localeCompare(b, 'en'));
