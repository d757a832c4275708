import { fieldNote } from '../../core/job/fieldNote.ts';
import type { Patch } from '../../core/job/jobDocument.ts';
import { parseLeatherWeight } from '../../core/units/parseLeatherWeight.ts';
import { type LengthUnit, parseLength } from '../../core/units/parseLength.ts';
import { type Reading, refusal } from '../../core/units/reading.ts';
import { normaliseTyped, parseTypedNumber } from '../../core/units/typedNumber.ts';

/** A leather's weight is one entry for the two ends of its range. */
const isLeather = (path: string): boolean => /^leather\.(outside|pocket|lining)$/.test(path);

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
  const range = fieldNote(path);
  const reading = range.unit === 'mm' ? parseLength(text, { defaultUnit: unit, range }) : readNumber(text, path);
  return reading.ok ? { ...reading, value: [{ path, value: reading.value }] } : reading;
}

function readNumber(text: string, path: string): Reading<number> {
  const { min, max, unit } = fieldNote(path);
  const figure = normaliseTyped(text).replace(/(deg|°|mpa|kg\/m3)$/, '');
  const number = parseTypedNumber(figure.trim());
  if ('remedy' in number)
    return refusal(
      text,
      'a number',
      `${number.remedy ?? 'Write one number.'} Allowed: ${`${min} to ${max} ${unit}`.trim()}.`,
    );
  return { ok: true, value: number.numerator / number.denominator, understood: `${number.text} ${unit}`.trim() };
}
