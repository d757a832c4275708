import { termOf } from '../src/core/words/vocabulary.ts';
import { WORDS } from '../src/core/words/words.ts';

const anywhere = (said: string): RegExp =>
  new RegExp(`(?<![\\p{L}-])${said.replace(/ /g, '\\s+')}(?![\\p{L}-])`, 'giu');

const TERMS = WORDS.map((word) => ({
  word,
  said: [word, termOf(word).plural].flatMap((said) => (said ? [anywhere(said)] : [])),
  not: termOf(word).not.map(anywhere),
}));

type Span = readonly [from: number, to: number];

const spansOf = (said: RegExp, text: string): Span[] =>
  [...text.matchAll(said)].map(({ index, 0: found }) => [index, index + found.length]);

/**
 * Lists what a text calls otherwise than the vocabulary does, as `slack: say gap`. A synonym that is part of a longer term is
 * none: "paper strip round the book" does not say "strip round".
 */
export function wordsAgainst(text: string): string[] {
  const terms = TERMS.flatMap(({ said }) => said.flatMap((one) => spansOf(one, text)));
  const isInTerm = ([from, to]: Span): boolean =>
    terms.some(([start, end]) => start < to && end > from && (start < from || end > to));
  return TERMS.flatMap(({ word, not }) =>
    not
      .flatMap((synonym) => spansOf(synonym, text))
      .filter((span) => !isInTerm(span))
      .map(([from, to]) => `${text.slice(from, to)}: say ${word}`),
  );
}

/** A hyphen that stands for a minus sign, as in " -0.03 mm"; makers read U+2212. */
export const hyphenMinus = (text: string): string[] => text.match(/(?<=^|\s)-[\d.…]*\d/gu) ?? [];
