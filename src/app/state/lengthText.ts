import { formatLength } from '../../core/units/formatLength.ts';
import { MM_PER_INCH, mm } from '../../core/units/mm.ts';
import type { LengthUnit } from '../../core/units/parseLength.ts';
import { ROUNDING, type Rounding } from '../../core/units/rounding.ts';
import type { Typed } from './jobHistory.ts';

/** Prints lengths in the unit that the maker works in. */
export interface LengthText {
  readonly unit: LengthUnit;
  /** A size: 0.1 mm or 1/64 in, nearest. */
  size(value: number): string;
  /** A small length of a sum or a leather: 0.01 mm, or 1/64 in, nearest. */
  fine(value: number): string;
  /** A size to cut, rounded up. */
  cut(value: number): string;
  /** A gap or overrun: never better than it is. */
  gap(value: number): string;
  /** A line of a sum, in decimals so that a column adds up: 0.01 mm or 0.001 in. */
  inSum(value: number): string;
}

export function lengthText(unit: LengthUnit): LengthText {
  const print =
    (round: Rounding, denominator: 32 | 64 = 32, decimals = 1) =>
    (value: number): string =>
      formatLength(mm(value), { unit, denominator, decimals, round });
  return {
    unit,
    size: print('nearest', 64),
    fine: print('nearest', 64, 2),
    cut: print(ROUNDING.cut),
    gap: print(ROUNDING.gap, 64),
    inSum: (value) => (unit === 'mm' ? value.toFixed(2) : (value / MM_PER_INCH).toFixed(3)),
  };
}

/** A value as a field shows it until the maker types over it: exact in mm, to 1/64 in in inches. */
export function fieldText(value: number, unit: LengthUnit): string {
  if (unit === 'mm') return `${Number(value.toFixed(3))} mm`;
  return formatLength(mm(value), { unit, denominator: 64, decimals: 1, round: 'nearest' });
}

/** A typed text as it must read in the unit now in force, so that a switch of units changes no meaning. */
export function typedText({ text, unit }: Typed, unitNow: LengthUnit): string {
  return unit !== unitNow && /^[\d.,\s]+$/.test(text) && text.trim() !== '' ? `${text.trim()} ${unit}` : text;
}
