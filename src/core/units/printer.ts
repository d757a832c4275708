import { formatLength } from './formatLength.ts';
import { formatFraction } from './fraction.ts';
import { MM_PER_INCH, MM_PER_OUNCE, mm } from './mm.ts';
import type { LengthUnit } from './parseLength.ts';
import { ROUNDING_NOISE_MM, type Rounding, roundToSteps } from './rounding.ts';
import { signed } from './signed.ts';

/**
 * Prints every figure of a job in the unit that the job is worked in; values come in mm, mm2, radians, newtons and shares.
 *
 * What has a size of its own (a cut size, a measure, a setting) is printed by `size`, by everyone, so that one thing has
 * one text. What is only computed and shown is rounded to a step that a ruler can show.
 */
export interface Printer {
  readonly units: LengthUnit;
  /**
   * A cut size, a measure or a setting, true to 0.005 mm: in mm without idle zeros; in inches as a fraction down to 1/64,
   * and where no 1/64 says it, as `380 mm`. Not for computed lengths: see `length`.
   */
  size(value: number): string;
  /** A computed length that is set as a measure: as `size`, but in inches to 0.001 in where no fraction says it, never in mm. */
  exact(value: number): string;
  /** A length that is wished of a fit, as the loosest gap: as `size`, but in inches to the nearest fraction, never in mm. */
  wish(value: number): string;
  /** A computed length or difference: to the nearest 0.1 mm, or 1/64 in (1/32 in from 1 in on). */
  length(value: number): string;
  /** A small computed length, or one that is a line of a sum: to 0.01 mm without idle zeros, or as `length` in inches. */
  fine(value: number): string;
  /** A small computed length that a fraction would misstate: to so many decimals of a millimetre, 2 unless told; of an inch to one more. */
  small(value: number, decimals?: number): string;
  /** Size of a gap or, negative, of an overrun: spare room is never overstated, an overrun never understated. */
  gap(value: number): string;
  /** A gap, with a minus where it is an overrun. */
  signedGap(value: number): string;
  /** Smallest and largest of some gaps, as `1.0 to 1.4 mm`, or one of them where they print alike. */
  range(values: readonly number[]): string;
  /** Thread or lace, rounded up: `1.20 m` by the centimetre, `3 ft 9 in` by the inch. */
  reel(value: number): string;
  /** A leather thickness: in ounces where it is a quarter ounce, else in mm. */
  weight(value: number): string;
  /** A range of leather thickness as leather is sold: `4-5 oz`, `1.6-2 mm`; in a sentence by ` to `. */
  weights(min: number, max: number, by?: '-' | ' to '): string;
  /** As leather is sold: `17.8 dm² (1.92 sq ft)`, the job's own unit first. */
  area(mm2: number): string;
  /** A weight on the scales, from grams: whole grams, or hundredths of a pound. */
  mass(grams: number): string;
  /** A liquid as it is sold, to the next 0.1 ml. */
  volume(ml: number): string;
  /** `60 degrees`, from radians: whole, rounded up unless less is what is safe. */
  angle(value: number, round?: Rounding): string;
  /** `60°`, from degrees: as `angle`. */
  degrees(value: number, round?: Rounding): string;
  /** N, to 0.1 below 10. */
  force(value: number): string;
  /** A share of one, in whole percent unless told otherwise, without idle zeros. */
  share(value: number, decimals?: number): string;
  /** A plain number with so many decimals. */
  number(value: number, decimals: number): string;
  /** `1 lace`, `8 laces`. */
  count(count: number, one: string, many: string): string;
  money(amount: number, sign: { readonly currency: string; readonly decimals: number }): string;
  /** How a sum of this total is printed, part by part. */
  column(total: number): Column;
}

/** A column of figures that can be added as they are printed: each is a whole number of one step. */
interface Column {
  readonly unit: LengthUnit;
  /** A length in whole steps, to the nearest. */
  steps(value: number): number;
  /** Whole steps, without the unit. */
  text(steps: number): string;
}

/** International avoirdupois pound, g (exact, by the international yard and pound agreement of 1959). */
const GRAMS_PER_POUND = 453.592_37;

/** Steps, mm, that thread and lace are measured off a reel in. */
export const REEL_STEP = { mm: 10, in: MM_PER_INCH } as const;

/** Half the last digit of what `size` prints, mm. */
const TRUE_WITHIN = 0.005;

/** Finest inch fraction that a ruler shows, mm; common practice, no source. */
const FINEST_INCH = MM_PER_INCH / 64;

/** Finest step that leather is sold by, mm: it is the half or whole ounce (common practice, no source). */
const QUARTER_OUNCE = MM_PER_OUNCE / 4;

/** Square millimetres in a square foot, (12 x 25.4)^2. */
const MM2_PER_SQUARE_FOOT = 92_903.04;

/** Whole hundredths, a half away from 0 whatever its floating-point noise, so that 3.175 is 3.18 everywhere. */
const hundredths = (value: number): number => Math.sign(value) * Math.round(Math.abs(value) * 100 + 1e-6);

/** Hundredths as a decimal number without idle zeros. */
const decimal = (count: number): string => signed(String(count / 100));

const wholeDegrees = (value: number, round: Rounding): string => signed(String(roundToSteps(mm(value), 1, round)));

const isOnStep = (value: number, step: number, within: number): boolean =>
  Math.abs(value - Math.round(value / step) * step) <= within;

/** @param units unit that the job is worked in */
export function printer(units: LengthUnit): Printer {
  const isInch = units === 'in';
  const rounded = (value: number, round: Rounding): string =>
    formatLength(mm(value), {
      unit: units,
      denominator: Math.abs(value) < MM_PER_INCH ? 64 : 32,
      decimals: 1,
      round,
    });
  /** Whether no fraction of an inch job says a value. */
  const isBetween = (value: number): boolean => isInch && !isOnStep(value, FINEST_INCH, TRUE_WITHIN);
  const size = (value: number): string =>
    isInch && !isBetween(value)
      ? formatLength(mm(value), { unit: 'in', denominator: 64, decimals: 0, round: 'nearest' })
      : `${decimal(hundredths(value))} mm`;
  const length = (value: number): string => rounded(value, 'nearest');
  const signedGap = (value: number): string => rounded(value, 'down');
  const gap = (value: number): string => signedGap(value).replace('−', '');
  const weight = (value: number): string =>
    isOnStep(value, QUARTER_OUNCE, ROUNDING_NOISE_MM)
      ? `${formatFraction(Math.round(value / QUARTER_OUNCE), 4)} oz`
      : `${decimal(hundredths(value))} mm`;
  const number = (value: number, decimals: number): string => signed(value.toFixed(decimals));
  const small = (value: number, decimals = 2): string =>
    isInch ? `${number(value / MM_PER_INCH, decimals + 1)} in` : `${number(value, decimals)} mm`;
  return {
    units,
    size,
    exact: (value) => (isBetween(value) ? small(value) : size(value)),
    wish: (value) => (isBetween(value) ? length(value) : size(value)),
    length,
    fine: (value) => (isInch ? length(value) : `${decimal(hundredths(value))} mm`),
    small,
    gap,
    signedGap,
    range: (values) => joined(gap(Math.min(...values)), gap(Math.max(...values)), ' to '),
    reel: (value) => {
      if (!isInch) return `${(roundToSteps(mm(value), REEL_STEP.mm, 'up') / 100).toFixed(2)} m`;
      const inches = roundToSteps(mm(value), REEL_STEP.in, 'up');
      const [feet, rest] = [Math.floor(inches / 12), inches % 12];
      return [feet > 0 && `${feet} ft`, (rest > 0 || feet === 0) && `${rest} in`].filter(Boolean).join(' ');
    },
    weight,
    weights: (min, max, by = '-') => joined(weight(min), weight(max), by),
    area: (mm2) => {
      const both = [`${(mm2 / 10_000).toFixed(1)} dm²`, `${(mm2 / MM2_PER_SQUARE_FOOT).toFixed(2)} sq ft`];
      const [first, second] = isInch ? both.reverse() : both;
      return `${first} (${second})`;
    },
    mass: (grams) => (isInch ? `${number(grams / GRAMS_PER_POUND, 2)} lb` : `${number(grams, 0)} g`),
    volume: (ml) => `${number(Math.ceil(10 * ml - 1e-9) / 10, 1)} ml`,
    angle: (value, round = 'up') => {
      const degrees = wholeDegrees((value * 180) / Math.PI, round);
      return `${degrees} ${degrees === '1' ? 'degree' : 'degrees'}`;
    },
    degrees: (value, round = 'up') => `${wholeDegrees(value, round)}°`,
    force: (value) => `${number(value, Math.abs(value) < 9.95 ? 1 : 0)} N`,
    share: (value, decimals = 0) => `${signed(String(Number((100 * value).toFixed(decimals))))} %`,
    number,
    count: (count, one, many) => `${count} ${count === 1 ? one : many}`,
    money: (amount, { currency, decimals }) => `${currency} ${number(amount, decimals)}`.trim(),
    column: (total) => {
      const inInches = isInch && isOnStep(total, FINEST_INCH, TRUE_WITHIN);
      return {
        unit: inInches ? 'in' : 'mm',
        steps: (value) => (inInches ? Math.round(value / FINEST_INCH) : hundredths(value)),
        text: (steps) => (inInches ? formatFraction(steps, 64) : decimal(steps)),
      };
    },
  };
}

const nothing = (): string => '';

/** A printer whose texts are empty, for whom no sentence is asked. */
export const silentPrinter = (units: LengthUnit): Printer => ({
  units,
  size: nothing,
  exact: nothing,
  wish: nothing,
  length: nothing,
  fine: nothing,
  small: nothing,
  gap: nothing,
  signedGap: nothing,
  range: nothing,
  reel: nothing,
  weight: nothing,
  weights: nothing,
  area: nothing,
  mass: nothing,
  volume: nothing,
  angle: nothing,
  degrees: nothing,
  force: nothing,
  share: nothing,
  number: nothing,
  count: nothing,
  money: nothing,
  column: () => ({ unit: units, steps: () => 0, text: nothing }),
});

/** Two figures of one unit as a range, `low` without its unit; one where they are alike. */
function joined(low: string, high: string, by: string): string {
  if (low === high) return low;
  const [unit, other] = [low, high].map((text) => text.slice(text.lastIndexOf(' ')));
  return `${unit === other ? low.slice(0, low.lastIndexOf(' ')) : low}${by}${high}`;
}
