/** Breaks words into lines that fit; a single word that is wider than the line stands alone. */
export function brokenLines(words: string, width: number, measure: (words: string) => number): string[] {
  const lines: string[] = [];
  for (const word of words.split(' ')) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && measure(longer) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
