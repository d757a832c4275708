import { type DoubtPath, fieldNote, GIVE_OR_TAKE, MM_PER_INCH, type Origin, type Printer } from '../../core/index.ts';

/** Where a value comes from, in the words of the form. */
export const ORIGIN_WORDS: Readonly<Record<Origin, string>> = {
  measured: 'measured',
  typed: 'typed',
  usual: 'usual',
  assumed: 'assumed',
  photograph: 'off a photograph',
};

/** A small computed length, to so many decimals of a millimetre; in inches to one more, for a fraction would misstate it. */
export const smallLength = (value: number, print: Printer, decimals = 2): string =>
  print.units === 'mm'
    ? `${print.number(value, decimals)} mm`
    : `${print.number(value / MM_PER_INCH, decimals + 1)} in`;

/**
 * A standard uncertainty as what a maker may be off by, as `0.5 mm`.
 * @param path an input, or the scale of a tool, whose uncertainty is a share
 */
export function giveOrTake(path: string, u: number, print: Printer): string {
  const value = GIVE_OR_TAKE * u;
  const unit = path.startsWith('scale of ') ? '%' : fieldNote(`doubts.${path as DoubtPath}.u`).unit;
  if (unit === '%') return print.share(value, 2);
  if (unit !== 'mm') return String(Number(value.toFixed(3)));
  return print.units === 'mm' ? print.fine(value) : smallLength(value, print);
}
