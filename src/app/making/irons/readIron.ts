import {
  type LengthUnit,
  MM_PER_INCH,
  normaliseTyped,
  parseLength,
  parseTypedNumber,
  type Reading,
  refusal,
} from '../../../core/index.ts';

/** Strides that a maker measures at once: one is too short for a rule. Common practice, no source. */
export const MEASURED = 10;

/** Digits to which a stride is kept, mm. */
const kept = (mm: number): number => Math.round(mm * 1e4) / 1e4;

/** Stride of an iron sold by stitches per inch, mm: 25.4 / n, for the inch is 25.4 mm by definition. */
export const strideOf = (perInch: number): number => kept(MM_PER_INCH / perInch);

/** Reads stitches per inch as a stride, mm. */
export function readPerInch(text: string): Reading<number> {
  const number = parseTypedNumber(normaliseTyped(text));
  if ('remedy' in number) return refusal(text, 'stitches per inch', number.remedy ?? 'Write one number, as 8.');
  const count = number.numerator / number.denominator;
  if (!(count >= 1.02 && count <= 25)) return refusal(text, 'stitches per inch', 'Write a number from 2 to 25.');
  return { ok: true, value: strideOf(count), understood: String(count) };
}

/** Reads the length of ten strides as one stride, mm. */
export function readTenStrides(text: string, unit: LengthUnit): Reading<number> {
  const length = parseLength(text, { defaultUnit: unit });
  if (!length.ok) return length;
  const value = kept(length.value / MEASURED);
  return value >= 1 && value <= 25
    ? { ...length, value }
    : refusal(text, 'the length of ten strides', 'Write 10 mm to 250 mm.');
}

/** Reads tooth counts, as `10, 2`. */
export function readTeeth(text: string): Reading<number[]> {
  const counts = text.split(/[\s,;+]+/).filter((part) => part !== '');
  const value = counts.map(Number);
  if (
    value.length === 0 ||
    value.length > 8 ||
    !value.every((count) => Number.isInteger(count) && count >= 1 && count <= 24)
  )
    return refusal(text, 'teeth', 'Write whole numbers from 1 to 24, as 10, 2.');
  return { ok: true, value, understood: value.join(', ') };
}

/** Stitches per inch of a stride in mm, to a hundredth. */
export const perInchOf = (stride: number): string => String(Number((MM_PER_INCH / stride).toFixed(2)));
