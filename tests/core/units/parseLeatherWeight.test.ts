import { describe, expect, test } from 'vitest';
import { MM_PER_OUNCE } from '../../../src/core/units/mm.ts';
import { parseLeatherWeight } from '../../../src/core/units/parseLeatherWeight.ts';

// Source: ASTM D1814, 1.2: "One ounce equals 1/64 in. or 0.0156 in. or 0.396 mm", both decimals cut, not rounded.
test('one ounce is the 1/64 in of ASTM D1814, and its 0.0156 in and 0.396 mm as far as they are printed', () => {
  expect(MM_PER_OUNCE).toBe(25.4 / 64);
  expect(Math.floor(1e4 * (MM_PER_OUNCE / 25.4)) / 1e4).toBe(0.0156);
  expect(Math.floor(1e3 * MM_PER_OUNCE) / 1e3).toBe(0.396);
});

describe('parseLeatherWeight', () => {
  test.each([
    '4-5 oz',
    '4–5 oz',
    '4 - 5 oz',
    '4/5 oz',
    '4 / 5 ounces',
    '4 to 5 oz',
    '4oz-5oz',
    '4 oz to 5 oz.',
    '4to5OZ',
    '1.5875-1.984375 mm',
    '1,5875 to 1,984375mm',
  ])('every way of writing four to five ounces gives 1.5875 to 1.984375 mm: %s', (text) => {
    const reading = parseLeatherWeight(text);
    expect(reading.ok && reading.value.min).toBeCloseTo(1.5875, 12);
    expect(reading.ok && reading.value.max).toBeCloseTo(1.984375, 12);
  });

  test.each([
    ['1.8 mm', 1.8, 1.8],
    ['1.6-2.0 mm', 1.6, 2],
    ['1,6–2,0 mm', 1.6, 2],
    ['1.6/2.0 mm', 1.6, 2],
    ['8 oz', 3.175, 3.175],
    ['4.5 oz', 1.7859375, 1.7859375],
    ['4 1/2 oz', 1.7859375, 1.7859375],
    ['4-1/2 oz', 1.7859375, 1.7859375],
    ['4½ oz', 1.7859375, 1.7859375],
    ['½ oz', 0.1984375, 0.1984375],
    ['4-4 1/2 oz', 1.5875, 1.7859375],
    ['3-1/2-4-1/2 oz', 1.3890625, 1.7859375],
    ['3½/4½ oz', 1.3890625, 1.7859375],
    ['4/5-6 oz', 0.3175, 2.38125],
    ['10 mm', 10, 10],
  ])('%s is %d to %d mm', (text, min, max) => {
    const reading = parseLeatherWeight(text);
    expect(reading.ok && reading.value.min).toBeCloseTo(min, 12);
    expect(reading.ok && reading.value.max).toBeCloseTo(max, 12);
  });

  test('what was understood is said back as a range and in millimetres', () => {
    expect(parseLeatherWeight('4/5 oz')).toMatchObject({ understood: '4 to 5 oz = 1.59 to 1.98 mm' });
    expect(parseLeatherWeight('4½ oz')).toMatchObject({ understood: '4 1/2 oz = 1.79 mm' });
    expect(parseLeatherWeight('1,6-2 mm')).toMatchObject({ understood: '1.6 to 2 mm' });
  });

  test.each([
    ['5-4 oz', 'Put the thinner end first: 4 to 5 oz.'],
    ['5/4 oz', 'Put the thinner end first: 4 to 5 oz.'],
    ['2.0-1.6 mm', 'Put the thinner end first: 1.6 to 2.0 mm.'],
    ['4-5', 'Add the unit'],
    ['4.5', 'Add the unit'],
    ['4 oz - 2 mm', 'same unit'],
    ['4-5 lb', 'as oz or mm'],
    ['4 lb-5 oz', 'as oz or mm'],
    ['4 oz-5 lb', 'as oz or mm'],
    ['1/8 in', 'as oz or mm'],
    ['0 oz', 'cannot be 0'],
    ['0-5 oz', 'cannot be 0'],
    ['4-0 oz', 'cannot be 0'],
    ['-4 oz', 'remove the minus sign'],
    ['1,234 mm', 'could mean either'],
    ['1,234-2 mm', 'could mean either'],
    ['45 oz', 'Check the unit'],
    ['11 mm', 'Check the unit'],
    ['4 1/0 oz', 'cannot be 0'],
    ['', 'Type the weight the leather is sold by'],
  ])('%s is refused with a remedy', (text, remedy) => {
    const reading = parseLeatherWeight(text);
    expect(reading.ok ? `read as ${reading.understood}` : reading.message).toContain(remedy);
  });

  test.each(['oz', 'to', 'to 5 oz', '4 to oz', '4-5-6 oz', '4/5/6 oz', 'NaN oz', '4 oz 5', 'heavy', '4--5 oz'])(
    'junk is refused: %s',
    (text) => {
      const reading = parseLeatherWeight(text);
      expect(reading.ok ? `read as ${reading.understood}` : reading.message).toMatch(
        /^(“.+” is not .+|Nothing is typed)\. .+\.$/,
      );
    },
  );
});
