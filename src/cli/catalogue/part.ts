import { badWord } from '../badInput.ts';

/** One of several parts of a run, which follow one another without gap: the first is 1. */
export interface Part {
  readonly part: number;
  readonly of: number;
}

/** Most parts of a run: more than any cluster takes at once. */
const MOST = 1_000_000;

/** @throws BadInput for words that are no part, as `0/4` */
export function readPart(text: string): Part {
  const [, part, of] = (/^(\d+)\/(\d+)$/.exec(text) ?? []).map(Number);
  if (part !== undefined && of !== undefined && part >= 1 && part <= of && of <= MOST) return { part, of };
  throw badWord('--part', text, 'a part and how many there are, as 1/16 to 16/16');
}

/** Which of `rows` rows a part has: the first, counted from 0, and the one after its last. No two parts differ by more than a row. */
export const rangeOf = ({ part, of }: Part, rows: number): readonly [number, number] => [
  Math.floor(((part - 1) * rows) / of),
  Math.floor((part * rows) / of),
];
