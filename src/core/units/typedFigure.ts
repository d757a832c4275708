import { type NotANumber, parseTypedNumber, type TypedNumber } from './typedNumber.ts';

/** A number as typed and whatever follows it, which should be the name of a unit. */
export interface TypedFigure {
  readonly number: TypedNumber;
  /** Empty when nothing follows the number. */
  readonly unitName: string;
}

/** Splits normalised text such as `8 1/2 in` or `216mm` into its number and its unit name. */
export function parseTypedFigure(text: string): TypedFigure | NotANumber {
  const body = /^[\d.,/⁄ -]*/.exec(text)?.[0] ?? '';
  const number = parseTypedNumber(body.trim());
  return 'remedy' in number ? number : { number, unitName: text.slice(body.length).trim() };
}
