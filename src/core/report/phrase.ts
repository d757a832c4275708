import { formatLength } from '../units/formatLength.ts';
import { formatLeatherWeight, MM_PER_OUNCE } from '../units/leatherWeight.ts';
import { mm } from '../units/mm.ts';
import { ROUNDING } from '../units/rounding.ts';

/** Prints the numbers of a report's sentences in the maker's units. Values come in mm and radians. */
export interface Phrase {
  /** A measured or computed difference, to the nearest 0.1 mm or 1/64 in. */
  length(value: number): string;
  /** A measure or setting that the maker gave: to 0.01 mm without idle zeros, or to the nearest 1/64 in. */
  given(value: number): string;
  /** A cut size, rounded up. */
  cut(value: number): string;
  /** Size of a gap or, negative, of an overrun: spare room is never overstated, an overrun never understated. */
  gap(value: number): string;
  /** Smallest and largest of some gaps, as `1.0 to 1.4 mm`, or one of them where they print alike. */
  range(values: readonly number[]): string;
  angle(value: number): string;
  /** A leather thickness: in ounces where it is a quarter ounce, else as a length. */
  weight(value: number): string;
}

const NEAREST = { denominator: 64, decimals: 1, round: 'nearest' } as const;
const GAP = { denominator: 64, decimals: 1, round: ROUNDING.gap } as const;
const CUT = { denominator: 16, decimals: 1, round: ROUNDING.cut } as const;

/** @param unit unit of the lengths printed */
export function phrase(unit: 'mm' | 'in'): Phrase {
  const length = (value: number): string => formatLength(mm(value), { unit, ...NEAREST });
  const gap = (value: number): string => formatLength(mm(value), { unit, ...GAP }).replace('-', '');
  return {
    length,
    given: (value) => (unit === 'mm' ? `${Math.round(value * 100 + 1e-6) / 100} mm` : length(value)),
    cut: (value) => formatLength(mm(value), { unit, ...CUT }),
    gap,
    range: (values) => {
      const [low, high] = [gap(Math.min(...values)), gap(Math.max(...values))];
      return low === high ? low : `${low.slice(0, low.lastIndexOf(' '))} to ${high}`;
    },
    angle: (value) => `${((value * 180) / Math.PI).toFixed(1)} degrees`,
    weight: (value) => {
      const quarters = (value / MM_PER_OUNCE) * 4;
      const isQuarterOunce = Math.abs(quarters - Math.round(quarters)) < 1e-6;
      return isQuarterOunce
        ? formatLeatherWeight(mm(value), 'nearest')
        : formatLength(mm(value), { unit, ...NEAREST, decimals: 2 });
    },
  };
}
