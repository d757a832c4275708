/** What came of reading something a maker typed: a value and how it was understood, or a refusal to show beside the field. */
export type Reading<T> = { readonly ok: true; readonly value: T; readonly understood: string } | Refusal;

export interface Refusal {
  readonly ok: false;
  /** What was got, what it should be and what to do, in one line. */
  readonly message: string;
  /** What to do, alone. */
  readonly remedy: string;
}

const QUOTED_LENGTH = 40;

/** Builds the one line every refused field shows: `“abc” is not a length. Write ...`; `got` is quoted, cut at 40 characters. */
export function refusal(got: string, wanted: string, remedy: string, allowed = ''): Refusal {
  const printable = Array.from(got.trim().replace(/\p{C}/gu, '\u{fffd}'));
  const clipped =
    printable.length > QUOTED_LENGTH ? `${printable.slice(0, QUOTED_LENGTH).join('')}…` : printable.join('');
  const said = clipped === '' ? 'Nothing is typed' : `“${clipped}” is not ${wanted}`;
  return {
    ok: false,
    message: [`${said}.`, remedy, allowed && `Allowed: ${allowed}.`].filter(Boolean).join(' '),
    remedy,
  };
}
