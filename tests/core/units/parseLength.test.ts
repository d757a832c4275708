import { describe, expect, test } from 'vitest';
import { parseLength } from '../../../src/core/units/parseLength.ts';

const inches = (text: string) => parseLength(text, { defaultUnit: 'in' });
const millimetres = (text: string) => parseLength(text, { defaultUnit: 'mm' });

function refused(text: string): string {
  for (const read of [inches, millimetres]) {
    const reading = read(text);
    if (reading.ok) throw new Error(`“${text}” was read as ${reading.understood}`);
  }
  const reading = inches(text);
  return reading.ok ? '' : reading.message;
}

describe('parseLength', () => {
  test.each([
    '8 1/2',
    '8-1/2',
    '8–1/2',
    '8 1/2 in',
    '8 1/2in.',
    '8.5"',
    '8.5″',
    '8.5”',
    "8.5''",
    '8,5 in',
    '8.5 inches',
    '8.5 INCH',
    '8½',
    '8 ½"',
    '８½',
    '8¹⁄₂',
    '17/2',
    '8 2/4',
    '215.9 mm',
    '215,9mm',
    '21.59 cm',
    '21.590 CM',
    '  8.5\u{a0}in ',
  ])('every way of writing eight and a half inches gives exactly 215.9 mm: %s', (text) => {
    expect(inches(text)).toMatchObject({ ok: true, value: 215.9 });
  });

  test.each([
    ['3/8', 9.525],
    ['⅜', 9.525],
    ['15/16"', 23.8125],
    ['¹⁵⁄₁₆', 23.8125],
    ['.5 in', 12.7],
    ['8.', 203.2],
    ['0', 0],
  ])('inches: %s is %d mm', (text, value) => expect(inches(text)).toMatchObject({ ok: true, value }));

  test.each([
    ['216', 216],
    ['21.6 cm', 216],
    ['21,6 cm', 216],
    ['0,125', 0.125],
    ['1234,567', 1234.567],
    ['10000', 10_000],
    ['1.234', 1.234],
    ['1,23', 1.23],
    ['216㎜', 216],
    ['2 in', 50.8],
    ['165 millimetres', 165],
  ])('millimetres: %s is %d mm', (text, value) => expect(millimetres(text)).toMatchObject({ ok: true, value }));

  test('a number without a unit takes the default unit, a fraction without one is inches', () => {
    expect(inches('3')).toMatchObject({ value: 76.2 });
    expect(millimetres('3')).toMatchObject({ value: 3 });
    expect(millimetres('8 1/2')).toMatchObject({ value: 215.9 });
  });

  test('what was understood is said back with its unit and in millimetres', () => {
    expect(inches('8½')).toMatchObject({ understood: '8 1/2 in = 215.9 mm' });
    expect(inches('21,6 cm')).toMatchObject({ understood: '21.6 cm = 216 mm' });
    expect(inches('3/8')).toMatchObject({ understood: '3/8 in = 9.525 mm' });
    expect(millimetres('216')).toMatchObject({ understood: '216 mm' });
  });

  test.each([
    ['1,234', 'Write 1.234 or 1234: the comma could mean either.'],
    ['12,500 mm', 'Write 12.500 or 12500: the comma could mean either.'],
    ['1,234.5', 'no thousands separator'],
    ['1.234,5 mm', 'no thousands separator'],
    ['1/0', 'cannot be 0'],
    ['8 1/0 in', 'cannot be 0'],
    ['8 9/8', 'less than 1'],
    ['8 2/2', 'less than 1'],
    ['-5', 'remove the minus sign'],
    ['−5 mm', 'remove the minus sign'],
    ['-½', 'remove the minus sign'],
    ['8 in 20 mm', 'one unit'],
    ['8" 1/2', 'one unit'],
    ['8 in mm', 'Write the unit as'],
    ['3 furlongs', 'Write the unit as'],
    ['8 constructor', 'Write the unit as'],
    ["1'", 'write the length in inches'],
    ['1 ft', 'write the length in inches'],
    ['1 fts', 'Write the unit as'],
    ['1 aft', 'Write the unit as'],
    ['1.2 3.4', 'Write one number and its unit'],
    ['10001 mm', 'Check the unit'],
    ['999999999 in', 'Check the unit'],
    ['9999999999', 'at most 9 digits'],
    ['1/9999999999', 'at most 9 digits'],
    ['', 'Type the length as measured'],
    ['   ', 'Nothing is typed'],
  ])('%s is refused with a remedy', (text, remedy) => expect(refused(text)).toContain(remedy));

  test.each([
    'NaN',
    'Infinity',
    '1e3',
    '0x10',
    '+5',
    'in',
    '"',
    '/',
    '.',
    ',',
    '1 234',
    '8 1/2 3/4',
    '8..5',
    '½½',
    '½8',
  ])('junk is refused: %s', (text) => expect(refused(text)).toMatch(/^(“.+” is not .+|Nothing is typed)\. .+\.$/));

  test.each(['8 - 1/2', '8²', '8₂', '8①'])('digits are never run together or subtracted: %s is refused', (text) => {
    refused(text);
  });

  test('a field names what it allows, and its largest length to what is out of all bounds', () => {
    const read = (text: string, range?: { min: number; max: number }): string => {
      const reading = parseLength(text, { defaultUnit: 'mm', ...(range && { range }) });
      return reading.ok ? '' : reading.message;
    };
    expect(read('x', { min: 30, max: 1000 })).toMatch(/ Allowed: 30 to 1000 mm\.$/);
    expect(read('x')).not.toContain('Allowed');
    expect(read('10001', { min: 30, max: 1000 })).toContain('a length of at most 1000 mm');
    expect(read('10001')).toContain('a length of at most 10000 mm');
  });

  test('a text of 40 characters is quoted whole', () => {
    expect(refused('x'.repeat(40))).toContain(`“${'x'.repeat(40)}” is not`);
  });

  test('a long refused text is quoted only at its start and without control characters', () => {
    expect(refused(`8\u{7}${'x'.repeat(500)}`)).toContain(`“8\u{fffd}${'x'.repeat(38)}…” is not`);
  });

  test.each([
    ['-12', -12, '−12 mm'],
    ['− 8 1/2 in', -215.9, '−8 1/2 in = −215.9 mm'],
    ['0', 0, '0 mm'],
    ['-0', 0, '0 mm'],
  ])('%s is read below 0 where the field is', (text, value, understood) => {
    const reading = parseLength(text, { defaultUnit: 'mm', range: { min: -2000, max: 2000 } });
    expect(reading).toEqual({ ok: true, value, understood });
  });

  test('a minus is refused where the field begins at 0, and a length below 0 is as long at most as one above', () => {
    expect(parseLength('-12', { defaultUnit: 'mm', range: { min: 0, max: 2000 } }).ok).toBe(false);
    expect(parseLength('-10001', { defaultUnit: 'mm', range: { min: -2000, max: 2000 } }).ok).toBe(false);
  });
});
