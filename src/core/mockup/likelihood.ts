import type { Printer } from '../units/printer.ts';

/** Least chance of each word, most certain first. A choice of this project. */
const WORDS = [
  { from: 0.95, word: 'almost certain' },
  { from: 0.8, word: 'very likely' },
  { from: 0.5, word: 'likely' },
  { from: 0.2, word: 'possible' },
  { from: 0.05, word: 'unlikely' },
  { from: 0, word: 'very unlikely' },
] as const;

/** A chance of an explanation in a word and in percent; what is not certain is never said to be 0 or 100. */
export function likelihood(chance: number, { share }: Printer): string {
  const { word } = WORDS.find(({ from }) => chance >= from)!;
  if (chance < 0.01) return `${word}, under ${share(0.01)}`;
  return chance > 0.99 && chance < 1 ? `${word}, over ${share(0.99)}` : `${word}, ${share(chance)}`;
}
