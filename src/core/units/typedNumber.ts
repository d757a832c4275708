/** A number as typed, kept as a ratio of whole numbers so that a change of unit rounds only once. */
export interface TypedNumber {
  readonly numerator: number;
  readonly denominator: number;
  /** Typed with a fraction bar: `3/8`, `8 1/2`, `8½`. */
  readonly isFraction: boolean;
  /** The number in plain writing: `8 1/2`, `21.6`. */
  readonly text: string;
}

/** Why a text is no number, as advice to the maker; null when there is nothing better to say than "not a number". */
export interface NotANumber {
  readonly remedy: string | null;
}

/** Digits a typed number may have on each side of the point; more than this would exceed what a double can hold. */
const MAX_DIGITS = 9;

const TOO_LONG = `Write at most ${MAX_DIGITS} digits on each side of the point or bar.`;

const tooLong = (...parts: string[]): boolean => parts.some((part) => part.length > MAX_DIGITS);

const DECIMAL = /^(\d*)(?:([.,])(\d*))?$/;
const FRACTION = /^(?:(\d+)[ -])?(\d+) ?[/⁄] ?(\d+)$/;

/** Characters to put in plain form: a run of raised or lowered digits, else one at a time; full-width digits pass. */
const SPECIAL = /[⁰¹²³⁴-⁹]+|[₀-₉]+|[\u{80}-\u{ff0f}\u{ff1a}-\u{10ffff}]/gu;

/**
 * Brings typed text to one spelling: lower case, plain digits and spaces, every dash `-`, every inch mark `"`, every
 * foot mark `'`, and `8½` or `8¹⁄₂` as `8 1⁄2`.
 *
 * A special character that stands for digits is set off by spaces: run together, `8½` would become 81/2. The fraction
 * slash `⁄` stays distinct from `/`, because in a leather weight `4/5` is a range while `⅘` is not.
 */
export function normaliseTyped(text: string): string {
  return text
    .replace(SPECIAL, (special) => {
      const plain = special.normalize('NFKC');
      return /\d/.test(plain) ? ` ${plain} ` : plain;
    })
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[‐‑‒–—―−]/g, '-')
    .replace(/[′’‘`´]/g, "'")
    .replace(/[“”„]|''/g, '"')
    .replace(/\s+/g, ' ')
    .trim();
}

/**
 * Reads a normalised unsigned number: `216`, `21.6`, `.5`, `3/8`, `8 1/2` or `8-1/2`.
 *
 * A point is always a decimal point. A comma is a decimal comma, except before exactly three digits after a whole part
 * that could start a thousands group: `1,234` may mean 1.234 or 1234, so it is refused; `0,125` and `21,6` are plain.
 */
export function parseTypedNumber(text: string): TypedNumber | NotANumber {
  const fraction = FRACTION.exec(text);
  if (fraction) return readFraction(fraction[1], fraction[2]!, fraction[3]!);

  const decimal = DECIMAL.exec(text);
  if (!decimal) {
    const hasTwoMarks = /^[\d.,]+$/.test(text);
    return { remedy: hasTwoMarks ? 'Write one decimal point or comma and no thousands separator.' : null };
  }
  const [, whole = '', mark, decimals = ''] = decimal;
  if (whole === '' && decimals === '') return { remedy: null };
  if (mark === ',' && /^[1-9]\d{0,2}$/.test(whole) && decimals.length === 3) {
    return { remedy: `Write ${whole}.${decimals} or ${whole}${decimals}: the comma could mean either.` };
  }
  if (tooLong(whole, decimals)) return { remedy: TOO_LONG };
  const plain = `${Number(whole)}${decimals === '' ? '' : `.${decimals}`}`;
  return { numerator: Number(whole + decimals), denominator: 10 ** decimals.length, isFraction: false, text: plain };
}

/** Takes the minus sign off normalised text: the sign of its number, and the unsigned rest. */
export const signOf = (text: string): readonly [sign: 1 | -1, unsigned: string] =>
  text.startsWith('-') ? [-1, text.slice(1).trim()] : [1, text];

/** A number as typed and whatever follows it, which should be the name of a unit. */
export interface TypedFigure {
  readonly number: TypedNumber;
  /** Empty when nothing follows the number. */
  readonly unitName: string;
}

/** Splits normalised text such as `8 1/2 in` or `216mm` into its number and its unit name. */
export function parseTypedFigure(text: string): TypedFigure | NotANumber {
  const [body] = /[\d.,/⁄ -]*/.exec(text)!;
  const number = parseTypedNumber(body.trim());
  return 'remedy' in number ? number : { number, unitName: text.slice(body.length) };
}

function readFraction(whole: string | undefined, over: string, under: string): TypedNumber | NotANumber {
  if (tooLong(whole ?? '', over, under)) return { remedy: TOO_LONG };
  const [w, n, d] = [Number(whole ?? 0), Number(over), Number(under)];
  if (d === 0) return { remedy: 'The lower number of a fraction cannot be 0: write for example 1/2.' };
  if (whole !== undefined && n >= d) {
    return { remedy: `After a whole number the fraction must be less than 1, as in 8 1/2; ${n}/${d} is not.` };
  }
  return {
    numerator: w * d + n,
    denominator: d,
    isFraction: true,
    text: whole === undefined ? `${n}/${d}` : `${w} ${n}/${d}`,
  };
}
