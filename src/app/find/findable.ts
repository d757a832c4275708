import { termIn, termOf, WORDS, type Word } from '../../core/index.ts';

/** Something that can be gone to or done, by its plain name. */
export interface Findable {
  readonly name: string;
  /** Where it is, in the words of the page. */
  readonly where: string;
  /** Further words that lead to it. */
  readonly also?: string;
  /** Listed before anything is typed. */
  readonly isUsual?: boolean;
  readonly go: () => void;
}

/** Lower case without accents. */
const plain = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();

/** What the terms in a text are never called: whoever types that means them. */
function neverCalled(text: string): readonly string[] {
  const term = termIn(text);
  return term === null ? [] : [...termOf(term.word).not, ...neverCalled(term.after)];
}

/** How well each word is met: at the start of the name, at the start of a word of it, within it, by another word for it. */
const RANKS = 4;

function rank(name: string, also: string, text: string, words: readonly string[]): number {
  if (!words.every((word) => name.includes(word) || also.includes(word))) return RANKS;
  if (name.startsWith(text)) return 0;
  const starts = ` ${name}`.replace(/[^\p{L}\p{N}]+/gu, ' ');
  if (words.every((word) => starts.includes(` ${word}`))) return 1;
  return words.every((word) => name.includes(word)) ? 2 : 3;
}

/** Those that hold every word of a text in their name or in another word for it, best first; the usual ones for none. */
export function found(all: readonly Findable[], text: string): readonly Findable[] {
  const wanted = plain(text).trim();
  const words = wanted.split(/\s+/).filter(Boolean);
  if (words.length === 0) return all.filter(({ isUsual }) => isUsual);
  const ranked = all.map((each) => {
    const also = plain([each.where, each.also ?? '', ...neverCalled(each.name)].join(' '));
    return { each, rank: rank(plain(each.name), also, wanted, words) };
  });
  return ranked
    .filter((entry) => entry.rank < RANKS)
    .sort((a, b) => a.rank - b.rank)
    .map(({ each }) => each);
}

/** The term that a text is, or that it is the wrong word for. */
export function meantTerm(text: string): Word | null {
  const wanted = plain(text).trim();
  const isSaid = (said: string): boolean => wanted !== '' && plain(said) === wanted;
  return (
    WORDS.find((word) => isSaid(word) || isSaid(termOf(word).plural ?? '') || termOf(word).not.some(isSaid)) ?? null
  );
}
