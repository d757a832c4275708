import { type DoubtPath, fieldNote, GIVE_OR_TAKE, type Origin, type Printer } from '../../core/index.ts';

/** Where a value comes from, in the words of the form. */
export const ORIGIN_WORDS: Readonly<Record<Origin, string>> = {
  measured: 'measured',
  typed: 'typed',
  usual: 'usual',
  assumed: 'assumed',
  photograph: 'off a photograph',
};

/**
 * A standard uncertainty as what a maker may be off by, as `0.5 mm`.
 * @param path an input, or the scale of a tool, whose uncertainty is a share
 */
export function giveOrTake(path: string, u: number, print: Printer): string {
  const value = GIVE_OR_TAKE * u;
  const unit = path.startsWith('scale of ') ? '%' : fieldNote(`doubts.${path as DoubtPath}.u`).unit;
  if (unit === '%') return print.share(value, 2);
  if (unit !== 'mm') return String(Number(value.toFixed(3)));
  return print.units === 'mm' ? print.fine(value) : print.small(value);
}
