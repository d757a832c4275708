let format: Intl.ListFormat | undefined;

/** Words in a row: `A, B and C`; empty where there are none. */
export function listed(words: readonly string[]): string {
  format ??= new Intl.ListFormat('en-GB');
  return format.format(words);
}
