import { MM_PER_INCH, type Mm, mm } from './mm.ts';
import { type Reading, refusal } from './reading.ts';
import { allowedRange, signed } from './signed.ts';
import { normaliseTyped, parseTypedFigure, signOf } from './typedNumber.ts';

export type LengthUnit = 'mm' | 'in';

/** Longest length a field takes. No hide is longer; a larger number is a slip of the unit or of the point. */
const MAX_LENGTH: Mm = mm(10_000);

const EXAMPLE = 'as 216 mm or 8 1/2 in';

const UNIT_NAMES = new Map<string, 'in' | 'cm' | 'mm'>([
  ...['"', 'in', 'in.', 'inch', 'inches'].map((name) => [name, 'in'] as const),
  ...['mm', 'mm.', 'millimetre', 'millimetres', 'millimeter', 'millimeters'].map((name) => [name, 'mm'] as const),
  ...['cm', 'cm.', 'centimetre', 'centimetres', 'centimeter', 'centimeters'].map((name) => [name, 'cm'] as const),
]);

/** Tenths of a millimetre in each unit: whole numbers, so the conversion below rounds only once. */
const TENTHS = { mm: 10, cm: 100, in: MM_PER_INCH * 10 } as const;

/**
 * Reads a length as makers type it: `8 1/2`, `8-1/2 in`, `8½"`, `3/8`, `216`, `216 mm`, `21.6 cm`, `21,6 cm`.
 *
 * A decimal or whole number without a unit takes `defaultUnit`. A fraction without a unit is always inches, because
 * millimetres are never written as fractions (common practice, no source); `understood` then says so, as in
 * `8 1/2 in = 215.9 mm`. Commas: see `parseTypedNumber`. Range: 0 to `MAX_LENGTH`; below 0 where the field's range is. Never
 * throws.
 * @param options.range what the field allows, mm: named where a text is refused, and left to the job to hold to
 */
export function parseLength(
  text: string,
  options: { readonly defaultUnit: LengthUnit; readonly range?: { readonly min: number; readonly max: number } },
): Reading<Mm> {
  const { defaultUnit, range } = options;
  const allowed = range === undefined ? '' : allowedRange(range.min, range.max, 'mm');
  const refuse = (remedy: string) => refusal(text, 'a length', remedy, allowed);
  const spelt = normaliseTyped(text);
  const [sign, typed] = range !== undefined && range.min < 0 ? signOf(spelt) : ([1, spelt] as const);
  if (typed === '') return refuse(`Type the length as measured, ${EXAMPLE}.`);
  if (/^- ?[\d.,]/.test(typed)) return refuse('A length cannot be negative: remove the minus sign.');

  const figure = parseTypedFigure(typed);
  if ('remedy' in figure) return refuse(figure.remedy ?? `Write one number and its unit, ${EXAMPLE}.`);
  const { number, unitName } = figure;
  if (/\d/.test(unitName)) return refuse('Write one number, with one unit at its end.');
  if (/^('|ft\.?|foot|feet)$/.test(unitName)) return refuse('Feet are not read: write the length in inches.');

  const unit = unitName === '' ? (number.isFraction ? 'in' : defaultUnit) : UNIT_NAMES.get(unitName);
  if (unit === undefined) return refuse('Write the unit as in, ", mm or cm.');

  const size = (number.numerator * TENTHS[unit]) / (number.denominator * 10);
  const value = mm(sign * size || 0);
  if (size > MAX_LENGTH)
    return refusal(text, `a length of at most ${range?.max ?? MAX_LENGTH} mm`, 'Check the unit and the decimal point.');
  const written = `${value < 0 ? '−' : ''}${number.text} ${unit}`;
  return {
    ok: true,
    value,
    understood: unit === 'mm' ? written : `${written} = ${signed(String(Number(value.toFixed(4))))} mm`,
  };
}
