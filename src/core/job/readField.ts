import { parseLeatherWeight } from '../units/parseLeatherWeight.ts';
import { type LengthUnit, parseLength } from '../units/parseLength.ts';
import { type Reading, refusal } from '../units/reading.ts';
import { normaliseTyped, parseTypedNumber } from '../units/typedNumber.ts';
import { fieldNote } from './fieldNote.ts';
import type { Patch } from './jobDocument.ts';

/** A leather's weight is one entry for the two ends of its range. */
export const isLeather = (path: string): boolean => /^leather\.(outside|pocket|lining)$/.test(path);

/** One thickness of a leather, which may be typed as a weight. */
const isThickness = (path: string): boolean => /^leather\.\w+\.(min|max|foldThickness)_mm$/.test(path);

/** Reads what was typed into the field at a path, as the changes that it makes to the job. */
export function readField(path: string, text: string, unit: LengthUnit): Reading<readonly Patch[]> {
  if (isLeather(path)) {
    const reading = parseLeatherWeight(text);
    if (!reading.ok) return reading;
    const { min, max } = reading.value;
    const value = [
      { path: `${path}.min_mm`, value: min },
      { path: `${path}.max_mm`, value: max },
    ];
    return { ...reading, value };
  }
  if (isThickness(path) && /oz|ounce/i.test(text)) return readThickness(path, text);
  const reading = fieldNote(path).unit === 'mm' ? parseLength(text, { defaultUnit: unit }) : readNumber(text, path);
  return reading.ok ? { ...reading, value: [{ path, value: reading.value }] } : reading;
}

function readThickness(path: string, text: string): Reading<readonly Patch[]> {
  const reading = parseLeatherWeight(text);
  if (!reading.ok) return reading;
  const { min, max } = reading.value;
  if (min === max) return { ...reading, value: [{ path, value: min }] };
  const leather = path.slice(0, path.lastIndexOf('.'));
  return refusal(text, 'one weight or thickness, such as 4 oz', `The range of a leather belongs to ${leather}.`);
}

function readNumber(text: string, path: string): Reading<number> {
  const { min, max, unit } = fieldNote(path);
  const figure = normaliseTyped(text).replace(/(deg|°|mpa|kg\/m3)$/, '');
  const number = parseTypedNumber(figure.trim());
  if ('remedy' in number)
    return refusal(text, `a number from ${min} to ${max} ${unit}`.trim(), number.remedy ?? 'Write one number.');
  return { ok: true, value: number.numerator / number.denominator, understood: `${number.text} ${unit}`.trim() };
}
