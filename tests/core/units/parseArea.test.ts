import { describe, expect, test } from 'vitest';
import { parseArea } from '../../../src/core/units/parseArea.ts';

const dm2 = (text: string, unit: 'mm' | 'in' = 'mm') => {
  const reading = parseArea(text, unit, 2000);
  return reading.ok ? reading.value : reading.message;
};

describe('an area of leather', () => {
  // The international foot is 0.3048 m exactly (agreement of 1959), so a square foot is 9.290304 dm².
  test.each([
    ['62 dm²', 62],
    ['62 dm2', 62],
    ['62,5', 62.5],
    ['0.62 m²', 62],
    ['1 sq ft', 9.290304],
    ['6 3/4 sq. ft.', 62.709552],
    ['2 square feet', 18.580608],
    ['10 ft²', 92.90304],
    ['0', 0],
  ])('%j is %d dm²', (text, value) => expect(dm2(text)).toBeCloseTo(value, 9));

  test('without a unit is in square feet where work is in inches', () => {
    expect(dm2('2', 'in')).toBeCloseTo(18.580608, 9);
  });

  test.each([
    ['much', 'is not an area of leather'],
    ['3 mm', 'Write the unit as dm², m² or sq ft'],
    ['-3 dm²', 'is not an area of leather'],
    ['30 m²', 'at most 2000 dm²'],
  ])('%j is refused', (text, why) => expect(dm2(text)).toContain(why));
});
