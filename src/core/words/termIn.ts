import { termOf, type Word } from './vocabulary.ts';
import { WORDS } from './words.ts';

/** A text cut at the first term in it. */
export interface TermInText {
  readonly before: string;
  readonly word: Word;
  /** The term as it stands in the text, perhaps with a capital or in the plural. */
  readonly said: string;
  readonly after: string;
}

const SAID: ReadonlyMap<string, Word> = new Map(
  WORDS.flatMap((word) => [word, termOf(word).plural].flatMap((said) => (said ? [[said.toLowerCase(), word]] : []))),
);

/** Longest first, so that "spare wrap" is found before "wrap". */
const ANY_TERM = new RegExp(
  `(?<![\\p{L}-])(?:${[...SAID.keys()].sort((a, b) => b.length - a.length).join('|')})(?![\\p{L}-])`,
  'iu',
);

/** Finds the first term in a text, such as the title of a field or of a check; null where there is none. */
export function termIn(text: string): TermInText | null {
  const found = ANY_TERM.exec(text);
  const word = found ? SAID.get(found[0].toLowerCase()) : undefined;
  if (found === null || word === undefined) return null;
  const [said] = found;
  return { before: text.slice(0, found.index), word, said, after: text.slice(found.index + said.length) };
}
