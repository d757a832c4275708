/** A figure and what stays on its line: the fraction of an inch behind it, and its unit. */
const TOGETHER = /(\d) (?=\d+\/\d|(?:mm|in)\b)/g;

/** Words whose figures are not broken from their fraction or unit at the end of a line. */
export const unbroken = (words: string): string => words.replace(TOGETHER, '$1\u00a0');

/** Breaks words into lines that fit, figures kept together; a single word that is wider than the line stands alone. */
export function brokenLines(words: string, width: number, measure: (words: string) => number): string[] {
  const lines: string[] = [];
  for (const kept of unbroken(words).split(' ')) {
    const word = kept.replaceAll('\u00a0', ' ');
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && measure(longer) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
