import type { ExploreField } from '../../core/explore/exploreField.ts';
import { formatFraction } from '../../core/units/fraction.ts';
import { MM_PER_OUNCE } from '../../core/units/leatherWeight.ts';
import { MM_PER_INCH } from '../../core/units/mm.ts';

/** How a number is printed and its axis divided: in what unit, and in fractions or decimals. */
export interface Figure {
  readonly unit: string;
  /** Model units (mm, degrees) in one of the unit printed. */
  readonly size: number;
  /** Finest fraction printed; null for decimals. */
  readonly denominator: number | null;
  readonly decimals: number;
  /** Whether a value that is no such fraction is printed in decimals, not as the nearest fraction. */
  readonly isExact?: boolean;
}

const MM: Figure = { unit: 'mm', size: 1, denominator: null, decimals: 1 };
const FINE_MM: Figure = { ...MM, decimals: 2 };
const INCH: Figure = { unit: 'in', size: MM_PER_INCH, denominator: 64, decimals: 0 };
const EXACT_INCH: Figure = { ...INCH, decimals: 3, isExact: true };
const OUNCE: Figure = { unit: 'oz', size: MM_PER_OUNCE, denominator: 8, decimals: 2, isExact: true };
const DEGREE: Figure = { unit: '°', size: 1, denominator: null, decimals: 1 };
const RATIO: Figure = { unit: '', size: 1, denominator: null, decimals: 3 };

/** Figure of a result in the units of the bench. */
export function resultFigure(unit: 'mm' | 'deg' | '', units: 'mm' | 'in'): Figure {
  if (unit === 'mm') return units === 'mm' ? FINE_MM : INCH;
  return unit === 'deg' ? DEGREE : RATIO;
}

/** Figure of small lengths that a fraction would misstate: 0.01 mm, or 0.001 in. */
export const smallFigure = (units: 'mm' | 'in'): Figure =>
  units === 'mm' ? FINE_MM : { ...INCH, denominator: null, decimals: 3 };

/** Figure of a field: ounces go with inches where leather is meant. */
export function fieldFigure({ id, note }: Pick<ExploreField, 'id' | 'note'>, units: 'mm' | 'in'): Figure {
  const isLeather = /^leather\.\w+(\.(min|max|foldThickness)_mm)?$/.test(id);
  if (note.unit === 'mm' && units === 'in') return isLeather ? OUNCE : EXACT_INCH;
  if (note.unit === 'mm') return isLeather ? FINE_MM : MM;
  if (note.unit === 'deg') return DEGREE;
  return { ...RATIO, unit: note.unit };
}

/** A value without its unit, to the nearest step that the figure prints; an overrun has a true minus sign. */
export function bareText(value: number, { size, denominator, decimals, isExact }: Figure): string {
  const units = value / size;
  if (denominator !== null) {
    const steps = Math.round(units * denominator);
    if (isExact !== true || Math.abs(units * denominator - steps) < 1e-6)
      return formatFraction(steps, denominator).replace('-', '−');
  }
  const text = units.toFixed(decimals);
  return Number(text) === 0 ? (0).toFixed(decimals) : text.replace('-', '−');
}

export const withUnit = (text: string, { unit }: Figure): string =>
  unit === '' || unit === '°' ? `${text}${unit}` : `${text} ${unit}`;

export const figureText = (value: number, figure: Figure): string => withUnit(bareText(value, figure), figure);
