import { parseColour } from '../units/parseColour.ts';
import { parseLeatherWeight } from '../units/parseLeatherWeight.ts';
import { type LengthUnit, parseLength } from '../units/parseLength.ts';
import { printer } from '../units/printer.ts';
import { type Reading, refusal } from '../units/reading.ts';
import { allowedRange } from '../units/signed.ts';
import { normaliseTyped, parseTypedNumber, signOf } from '../units/typedNumber.ts';
import type { FieldNote } from './field.ts';
import { fieldNote } from './fieldNote.ts';
import type { Patch } from './jobDocument.ts';
import type { JobPath } from './jobPath.ts';
import type { LeatherName } from './jobSchema.ts';

/** A leather's weight is one entry for the two ends of its range. */
export const isLeather = (path: JobPath): path is `leather.${LeatherName}` =>
  /^leather\.(outside|pocket|lining)$/.test(path);

/** Whether a path is that of a colour. */
export const isColour = (path: JobPath): boolean => /^finish\.(\w+\.colour|edgeColour|thread|lace|ribbon)$/.test(path);

/**
 * Standard uncertainties in what a maker calls give or take: 19 in 20 normal errors are no larger (JCGM 100:2008 G.3.2 has
 * 1.96 for 95 %). Doubts are typed and shown so; the job keeps one standard uncertainty.
 */
export const GIVE_OR_TAKE = 2;

/** One thickness of a leather, which may be typed as a weight. */
const isThickness = (path: JobPath): boolean => /^leather\.\w+\.(min|max|foldThickness)_mm$/.test(path);

/** Reads what was typed into the field at a path, as the changes that it makes to the job. */
export function readField(path: JobPath, text: string, unit: LengthUnit): Reading<readonly Patch[]> {
  if (isLeather(path)) {
    const reading = parseLeatherWeight(text);
    if (!reading.ok) return reading;
    const { min, max } = reading.value;
    const value: readonly Patch[] = [
      { path: `${path}.min_mm`, value: min },
      { path: `${path}.max_mm`, value: max },
    ];
    return { ...reading, value };
  }
  if (isColour(path)) {
    const reading = parseColour(text);
    return reading.ok ? { ...reading, value: [{ path, value: reading.value }] } : reading;
  }
  if (isThickness(path) && /oz|ounce/i.test(text)) return readThickness(path, text);
  const times = /^doubts\..*\.u$/.test(path) ? GIVE_OR_TAKE : 1;
  const inJob = fieldNote(path);
  const note = { ...inJob, min: inJob.min * times, max: inJob.max * times };
  const reading = readFigure(note, text, unit);
  if (!reading.ok) return reading;
  if (times > 1 && (reading.value < note.min || reading.value > note.max))
    return refusal(
      text,
      'a likely doubt',
      'Check the figure and its unit.',
      allowedRange(note.min, note.max, note.unit),
    );
  return { ...reading, value: [{ path, value: reading.value / times }] };
}

/** Reads what was typed as the figure that a note describes. A share is held to the note's range; the rest is left to the job. */
export function readFigure(note: FieldNote, text: string, unit: LengthUnit): Reading<number> {
  if (note.unit === 'mm') return parseLength(text, { defaultUnit: unit, range: note });
  return note.unit === '%' ? readShare(text, note) : readNumber(text, note);
}

function readThickness(path: JobPath, text: string): Reading<readonly Patch[]> {
  const reading = parseLeatherWeight(text);
  if (!reading.ok) return reading;
  const { min, max } = reading.value;
  if (min === max) return { ...reading, value: [{ path, value: min }] };
  const leather = path.slice(0, path.lastIndexOf('.'));
  return refusal(text, 'one weight or thickness', `The range of a leather belongs to ${leather}.`);
}

/**
 * Percent; without the sign a number under 1 is the share itself, as 0.2, where the field takes such a share: a waste of
 * 0.2 is 20 %, a change of size of -0.5 is half a percent.
 */
function readShare(text: string, { min, max }: FieldNote): Reading<number> {
  const typed = normaliseTyped(text);
  const [sign, unsigned] = signOf(typed);
  const number = parseTypedNumber(unsigned.replace(/%$/, '').trim());
  const refuse = (remedy: string) => refusal(text, 'a share', remedy, allowedRange(100 * min, 100 * max, '%'));
  if ('remedy' in number) return refuse(number.remedy ?? 'Write one number, such as 20 %.');
  const figure = (sign * number.numerator) / number.denominator;
  const isAllowed = (share: number): boolean => share >= min && share <= max;
  const percent = (sign * number.numerator) / (number.denominator * 100);
  const isPercent = typed.endsWith('%') || Math.abs(figure) >= 1 || (!isAllowed(figure) && isAllowed(percent));
  const value = isPercent ? percent : figure;
  if (!isAllowed(value)) return refuse('Check the number.');
  return { ok: true, value, understood: printer('mm').share(value, 2) };
}

function readNumber(text: string, { min, max, unit }: FieldNote): Reading<number> {
  const figure = normaliseTyped(text).replace(/(deg|°|mpa|kg\/m3)$/, '');
  const [sign, unsigned] = min < 0 ? signOf(figure) : ([1, figure] as const);
  const number = parseTypedNumber(unsigned.trim());
  if ('remedy' in number)
    return refusal(text, 'a number', number.remedy ?? 'Write one number.', allowedRange(min, max, unit));
  const value = (sign * number.numerator) / number.denominator || 0;
  return { ok: true, value, understood: `${value < 0 ? '−' : ''}${number.text} ${unit}`.trim() };
}
