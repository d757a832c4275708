/** What came of reading something a maker typed: a value and how it was understood, or a refusal to show beside the field. */
export type Reading<T> = { readonly ok: true; readonly value: T; readonly understood: string } | Refusal;

export interface Refusal {
  readonly ok: false;
  /** What was got, what is allowed and what to do, in one line. */
  readonly message: string;
  /** What to do, alone. */
  readonly remedy: string;
}

const QUOTED_LENGTH = 40;

/** Builds the one line every refused field shows; `got` is quoted, cut at 40 characters. */
export function refusal(got: string, allowed: string, remedy: string): Refusal {
  const printable = Array.from(got.trim().replace(/\p{C}/gu, '\u{fffd}'));
  const clipped =
    printable.length > QUOTED_LENGTH ? `${printable.slice(0, QUOTED_LENGTH).join('')}…` : printable.join('');
  const shown = clipped === '' ? 'nothing' : `“${clipped}”`;
  return { ok: false, message: `Got ${shown}; allowed: ${allowed}. ${remedy}`, remedy };
}
