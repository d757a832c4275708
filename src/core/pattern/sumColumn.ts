import type { Printer } from '../units/printer.ts';
import type { CutSum } from './drawing.ts';

/** One line of a sum as it is printed: `less 2 × 3.27 board in the pocket`. */
interface SumLine {
  readonly name: string;
  readonly times: 1 | 2;
  readonly isLess: boolean;
  /** The length once and `times` over, without sign and unit. */
  readonly each: string;
  readonly whole: string;
}

/** A sum as it is printed: the printed figures of its lines add up to its total exactly. */
export interface SumColumn {
  readonly unit: 'mm' | 'in';
  /** Without the unit. */
  readonly total: string;
  readonly lines: readonly SumLine[];
}

const ROUNDED = { up: 'rounded up', less: 'rounding' } as const;

/**
 * Prints a sum part by part, each to the nearest step of the column; a last line holds the difference to the total, the
 * rounding to the cut step included. No part is adjusted. Parts that print as 0 are left out. A measure whose size is not
 * a whole number of steps has that size behind its name.
 */
export function sumColumn({ total, parts }: CutSum, print: Printer): SumColumn {
  const { unit, steps, text } = print.column(total);
  const line = (name: string, times: 1 | 2, count: number): SumLine => ({
    name,
    times,
    isLess: count < 0,
    each: text(Math.abs(count)),
    whole: text(Math.abs(count) * times),
  });
  const counted = parts
    .filter(({ isRest }) => isRest !== true)
    .map((part) => ({ ...part, count: steps(part.each) }))
    .filter(({ count }) => count !== 0);
  const lines = counted.map(({ name, times, each, count, isGiven }) => {
    const own = print.size(Math.abs(each));
    const isSaid = isGiven !== true || own === `${text(Math.abs(count))} ${unit}`;
    return line(isSaid ? name : `${name} (${own})`, times, count);
  });
  const left = steps(total) - counted.reduce((sum, { count, times }) => sum + count * times, 0);
  const named = parts.findLast(({ isRest, name }) => isRest === true && name !== ROUNDED.up);
  if (left !== 0) lines.push(line(named?.name ?? (left > 0 ? ROUNDED.up : ROUNDED.less), 1, left));
  return { unit, total: text(steps(total)), lines };
}

/** A dimension and its size. */
export const sizeLine = ({ dimension, total }: CutSum, print: Printer): string => `${dimension} ${print.size(total)}`;

/** A dimension and its sum, one part a line. */
export function sumLines(sum: CutSum, print: Printer): string[] {
  const head = sizeLine(sum, print);
  const { lines } = sumColumn(sum, print);
  if (lines.length < 2) return [head];
  return [
    `${head} =`,
    ...lines.map(
      ({ name, times, isLess, each }) => `${isLess ? 'less ' : ''}${times === 1 ? '' : `${times} x `}${each} ${name}`,
    ),
  ];
}

/** The sizes of a pocket or a lining. Its height is that of the outside, which shows the sum. */
export const pieceSumLines = (sums: readonly CutSum[], print: Printer): (string | string[])[] =>
  sums.map((sum) => (sum.dimension === 'height' ? sizeLine(sum, print) : sumLines(sum, print)));
