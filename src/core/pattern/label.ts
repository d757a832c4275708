import { formatLength } from '../units/formatLength.ts';
import { mm } from '../units/mm.ts';
import { ROUNDING, type Rounding } from '../units/rounding.ts';
import type { CutSum } from './drawing.ts';
import type { PatternSource } from './seam.ts';

export type Units = 'mm' | 'in';

/** Which face of a piece is seen: card has no grain. */
export const faceUp = ({ isCard = false }: PatternSource): string => (isCard ? 'outside face up' : 'grain side up');

/** How often a piece is cut, and which of its faces is seen. */
export const cutWords = (count: number, source: PatternSource): string => `cut ${count}, ${faceUp(source)}`;

/** Prints a length of the pattern: to 0.1 mm, or in fractions of an inch, 1/16 for cut sizes and 1/64 for their parts. */
export function printed(value: number, units: Units, round: Rounding = 'nearest'): string {
  const denominator = round === ROUNDING.cut ? 16 : 64;
  return formatLength(mm(value), { unit: units, denominator, decimals: 1, round });
}

/** Prints a part of a sum to 0.01 mm without idle zeros, or to the nearest 1/64 in, so that the sum can be followed. */
const exact = (value: number, units: Units): string =>
  units === 'mm' ? `${Math.round(value * 100 + 1e-6) / 100}` : printed(value, units).replace(' in', '');

/** A dimension and its sum, one part a line. Parts that print as nothing are not written, though they are in the sum. */
export function sumLines({ dimension, total, parts }: CutSum, units: Units): string[] {
  const head = `${dimension} ${printed(total, units, ROUNDING.cut)}`;
  return [
    parts.length > 1 ? `${head} =` : head,
    ...(parts.length > 1
      ? parts
          .filter(({ each }) => exact(Math.abs(each), units) !== '0')
          .map(
            ({ name, times, each }) =>
              `${each < 0 ? 'less ' : ''}${times === 1 ? '' : `${times} x `}${exact(Math.abs(each), units)} ${name}`,
          )
      : []),
  ];
}
