import { describe, expect, test } from 'vitest';
import {
  formatLeatherWeight,
  MM_PER_OUNCE,
  mmFromOunces,
  ouncesFromMm,
} from '../../../src/core/units/leatherWeight.ts';
import { mm } from '../../../src/core/units/mm.ts';

describe('leather weight', () => {
  test('one ounce is a sixty-fourth of an inch', () => expect(MM_PER_OUNCE).toBe(0.396875));

  // Source: ASTM D1814, which gives 1 oz = 0.396 mm (three decimals, cut not rounded) and 8 oz = 1/8 in.
  test('one ounce agrees with the 0.396 mm of ASTM D1814 to its last digit, eight ounces are an eighth of an inch', () => {
    expect(Math.abs(MM_PER_OUNCE - 0.396)).toBeLessThan(0.001);
    expect(mmFromOunces(8)).toBe(25.4 / 8);
  });

  test('ounces to millimetres and back is the identity', () => {
    for (let ounces = 0; ounces <= 20; ounces += 0.25)
      expect(ouncesFromMm(mmFromOunces(ounces))).toBeCloseTo(ounces, 12);
  });

  test('a weight is printed in quarter ounces, reduced', () => {
    expect(formatLeatherWeight(mmFromOunces(4))).toBe('4 oz');
    expect(formatLeatherWeight(mmFromOunces(4.5))).toBe('4 1/2 oz');
    expect(formatLeatherWeight(mmFromOunces(0.75))).toBe('3/4 oz');
  });

  test('a weight is never printed thinner than it is unless the caller says so', () => {
    expect(formatLeatherWeight(mm(1.6))).toBe('4 1/4 oz');
    expect(formatLeatherWeight(mm(1.6), 'nearest')).toBe('4 oz');
  });
});
