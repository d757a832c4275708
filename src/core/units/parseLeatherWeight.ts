import { MM_PER_OUNCE, type Mm, mm } from './mm.ts';
import { type Reading, refusal } from './reading.ts';
import { type NotANumber, normaliseTyped, parseTypedFigure, type TypedFigure } from './typedNumber.ts';

/** Leather is sold as a range of thickness; the two are equal when one figure was given. */
export interface ThicknessRange {
  readonly min: Mm;
  readonly max: Mm;
}

/** Thickest leather a field takes: 10 mm is about 25 oz, beyond any strap or sole leather (common practice, no source). */
const MAX_LEATHER: Mm = mm(10);

const EXAMPLE = 'as 4-5 oz, 4.5 oz or 1.6-2.0 mm';

const UNIT_NAMES = new Map<string, 'oz' | 'mm'>([
  ...['oz', 'oz.', 'ounce', 'ounces'].map((name) => [name, 'oz'] as const),
  ...['mm', 'mm.', 'millimetre', 'millimetres', 'millimeter', 'millimeters'].map((name) => [name, 'mm'] as const),
]);

const MM_PER = { mm: 1, oz: MM_PER_OUNCE } as const;

/**
 * Reads the weight or thickness of leather as it is sold: `4-5 oz`, `4/5 oz`, `4 to 5 oz`, `4 1/2 oz`, `1.6-2.0 mm`.
 *
 * A bar between two plain numbers is a range, since 4/5 oz on a hide means 4 to 5 oz (common practice, no source); after a
 * whole number it is a fraction, so 4 1/2 and 4-1/2 are four and a half. The unit must be given: 4-5 is sold in both.
 * One figure gives min = max. Never throws.
 */
export function parseLeatherWeight(text: string): Reading<ThicknessRange> {
  const refuse = (remedy: string) => refusal(text, 'a leather weight', remedy);
  const typed = normaliseTyped(text);
  if (typed === '') return refuse(`Type the weight the leather is sold by, ${EXAMPLE}.`);
  if (/^- ?[\d.,]/.test(typed)) return refuse('A thickness cannot be negative: remove the minus sign.');

  const figures = readFigures(typed);
  if ('remedy' in figures)
    return refuse(figures.remedy ?? `Write one figure or two, thinner first, then the unit, ${EXAMPLE}.`);
  const [low, high] = figures;

  if (high.unitName === '') return refuse('Add the unit, oz or mm.');
  const unit = UNIT_NAMES.get(high.unitName);
  const lowUnit = low.unitName === '' ? unit : UNIT_NAMES.get(low.unitName);
  if (unit === undefined || lowUnit === undefined) return refuse('Write the unit once, as oz or mm.');
  if (unit !== lowUnit) return refuse('Give both ends in the same unit.');

  const [min, max] = [toMm(low, unit), toMm(high, unit)];
  if (min === 0 || max === 0) return refuse('Give the thickness as sold: it cannot be 0.');
  if (min > max) return refuse(`Put the thinner end first: ${high.number.text} to ${low.number.text} ${unit}.`);
  if (max > MAX_LEATHER)
    return refusal(text, `a leather weight of at most ${MAX_LEATHER} mm`, 'Check the unit and the decimal point.');

  const written = `${asRange(low.number.text, high.number.text)} ${unit}`;
  const inMm = asRange(min.toFixed(2), max.toFixed(2));
  return { ok: true, value: { min, max }, understood: unit === 'mm' ? written : `${written} = ${inMm} mm` };
}

const asRange = (low: string, high: string): string => (low === high ? low : `${low} to ${high}`);

const toMm = ({ number }: TypedFigure, unit: 'oz' | 'mm'): Mm =>
  mm((number.numerator * MM_PER[unit]) / number.denominator);

/** Reads one figure (given back twice) or two: a bar between plain numbers first, then one figure, then a dash or `to`. */
function readFigures(typed: string): readonly [TypedFigure, TypedFigure] | NotANumber {
  const bar = /^([^/-]+)\/([^/-]+)$/.exec(typed);
  const attempts = bar ? [pair(bar[1]!, bar[2]!)] : [];
  attempts.push(pair(typed, typed));
  for (const { index, 0: separator } of typed.matchAll(/to|-/g)) {
    attempts.push(pair(typed.slice(0, index), typed.slice(index + separator.length)));
  }
  const read = attempts.find((attempt) => !('remedy' in attempt));
  return read ?? attempts.find((attempt) => 'remedy' in attempt && attempt.remedy !== null) ?? { remedy: null };
}

function pair(lowText: string, highText: string): readonly [TypedFigure, TypedFigure] | NotANumber {
  const [low, high] = [parseTypedFigure(lowText.trim()), parseTypedFigure(highText)];
  if ('remedy' in low) return low;
  if ('remedy' in high) return high;
  // Digits in a unit name mean that the text was cut at the wrong place.
  return /\d/.test(low.unitName + high.unitName) ? { remedy: null } : [low, high];
}
