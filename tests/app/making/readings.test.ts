import { expect, test } from 'vitest';
import { polygonText, readPolygon } from '../../../src/app/making/leather/polygonText.ts';
import { readAmount } from '../../../src/app/making/quote/readAmount.ts';
import { readGap } from '../../../src/app/making/trial/readGap.ts';
import { printer } from '../../../src/core/units/printer.ts';
import type { Reading } from '../../../src/core/units/reading.ts';
import { scaleBar } from '../../../src/output/layout/scaleBar.ts';

const read = <T>(reading: Reading<T>): T | string => (reading.ok ? reading.value : reading.message);

test('a gap is a length, an overrun the same below zero, by its minus or as it is said to be', () => {
  expect(read(readGap('1.5', 'mm', false))).toBe(1.5);
  expect(read(readGap('1.5', 'mm', true))).toBe(-1.5);
  for (const minus of ['-', '−', '– ']) expect(read(readGap(`${minus}1/16`, 'mm', false))).toBe(-1.5875);
  expect(read(readGap('', 'mm', true))).toBeNull();
  expect(Object.is(read(readGap('0', 'in', true)), 0)).toBe(true);
  expect(read(readGap('a bit', 'mm', false))).toMatch(/^“a bit” is not a length\. /);
});

test('corners are read back as they are printed', () => {
  const hide = [
    [0, 0],
    [700.25, 40],
    [400, 640.5],
    [-30, 500],
  ] as const;
  expect(read(readPolygon(polygonText(hide, printer('mm')), 'mm'))).toEqual(hide);
});

test('corners of a job in inches are printed and read in inches; what no fraction says keeps its unit', () => {
  const hide = [
    [0, 0],
    [762, 0],
    [700, 406.4],
    [-12.7, 500],
  ] as const;
  const text = polygonText(hide, printer('in'));
  expect(text).toBe('0; 0\n30; 0\n700 mm; 16\n−1/2; 500 mm');
  expect(read(readPolygon(text, 'in'))).toEqual(hide);
});

test('two corners are a rectangle, however they are given', () => {
  const rectangle = [
    [10, 20],
    [30, 20],
    [30, 50],
    [10, 50],
  ];
  for (const text of ['10; 20\n30; 50', '30 50\n10 20\n', '10 50\n\n30 20', '1 cm; 2 cm\n3 cm; 5 cm'])
    expect(read(readPolygon(text, 'mm'))).toEqual(rectangle);
});

test('a line that is no corner is quoted, with what to write', () => {
  for (const line of ['10', '10; 20; 30', '10; deep', '10,20'])
    expect(read(readPolygon(`0; 0\n${line}\n5; 5`, 'mm'))).toContain(`“${line}” is not a corner`);
  expect(read(readPolygon('', 'mm'))).toMatch(/two opposite corners/);
});

test('an amount may be a rebate', () => {
  expect(read(readAmount('12,50'))).toBe(12.5);
  expect(read(readAmount('-5'))).toBe(-5);
  expect(read(readAmount('five'))).toMatch(/^“five” is not an amount\. /);
});

test('a scale bar is a round length, a sixth to a third of the width', () => {
  for (const unit of ['mm', 'in'] as const)
    for (const width of [45, 600, 999, 1234, 4000]) {
      const bar = scaleBar(width, unit);
      expect(bar).toBeLessThanOrEqual(width / 3);
      expect(bar).toBeGreaterThan(width / 3 / 2.5 - 1e-9);
      expect(String(Number((bar / (unit === 'mm' ? 1 : 25.4)).toFixed(6)))).toMatch(/^0?\.?0*[125]0*$/);
    }
});
