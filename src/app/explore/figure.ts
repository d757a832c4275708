import { type ExploreField, type ExploreResult, MM_PER_INCH, MM_PER_OUNCE, type Printer } from '../../core/index.ts';

/** How a number is printed, and how its axis is divided: in what unit, and in fractions or decimals. */
export interface Figure {
  readonly unit: string;
  /** Model units (mm, degrees) in one printed unit. */
  readonly size: number;
  /** Finest fraction that the axis is divided in; null for decimals. */
  readonly denominator: number | null;
  /** A value with its unit, as it is printed elsewhere. */
  readonly text: (value: number) => string;
}

const lengthFigure = (units: Printer['units'], text: Figure['text']): Figure =>
  units === 'mm'
    ? { unit: 'mm', size: 1, denominator: null, text }
    : { unit: 'in', size: MM_PER_INCH, denominator: 64, text };

const plainFigure = (unit: string, decimals: number, { number }: Printer): Figure => {
  const figure = { unit, size: 1, denominator: null };
  return { ...figure, text: (value) => withUnit(number(value, decimals), figure) };
};

/** Figure of a result: gaps are rounded as gaps, chances down, cut sizes are printed as they are cut, sums as their parts add up. */
export function resultFigure({ unit, group }: Pick<ExploreResult, 'unit' | 'group'>, print: Printer): Figure {
  if (unit === 'deg') return { ...plainFigure('°', 0, print), text: print.degrees };
  if (unit === '%')
    return { unit: '%', size: 0.01, denominator: null, text: (value) => print.share(neverMore(value), 1) };
  if (unit === '') return plainFigure('', 3, print);
  const text = group === 'cut sizes' ? print.size : group === 'allowances' ? print.fine : print.signedGap;
  return lengthFigure(print.units, text);
}

/** A chance to 0.1 %, never overstated. */
const neverMore = (chance: number): number => Math.floor(1000 * chance + 1e-9) / 1000;

/** Figure of rates and other small lengths. */
export const smallFigure = (print: Printer): Figure => ({
  ...lengthFigure(print.units, print.small),
  denominator: null,
});

/** Figure of a field: leather is in ounces where lengths are in inches. */
export function fieldFigure({ id, note }: Pick<ExploreField, 'id' | 'note'>, print: Printer): Figure {
  if (note.unit === 'deg') return { ...plainFigure('°', 0, print), text: print.degrees };
  if (note.unit === '%') return { unit: '%', size: 0.01, denominator: null, text: (value) => print.share(value, 1) };
  if (note.unit !== 'mm') return plainFigure(note.unit, 3, print);
  if (!/^leather\.\w+(\.(min|max|foldThickness)_mm)?$/.test(id)) return lengthFigure(print.units, print.exact);
  const inMm = lengthFigure('mm', print.weight);
  return print.units === 'mm' ? inMm : { ...inMm, unit: 'oz', size: MM_PER_OUNCE, denominator: 8 };
}

/** A value under a heading that names the unit: without the unit, unless it is another. */
export function bareText(value: number, { text, unit }: Figure): string {
  const full = text(value);
  return unit !== '' && full.endsWith(unit) ? full.slice(0, -unit.length).trimEnd() : full;
}

export const withUnit = (text: string, { unit }: Pick<Figure, 'unit'>): string =>
  unit === '' || unit === '°' ? `${text}${unit}` : `${text} ${unit}`;
