import { capital } from './capital.ts';

/** Words as a sentence of their own. */
export const sentence = (words: string): string => `${capital(words)}.`;
