import { describe, expect, test } from 'vitest';
import {
  formatLeatherWeight,
  MM_PER_OUNCE,
  mmFromOunces,
  ouncesFromMm,
} from '../../../src/core/units/leatherWeight.ts';
import { mm } from '../../../src/core/units/mm.ts';

describe('leather weight', () => {
  // Source: ASTM D1814, 1.2: "One ounce equals 1/64 in. or 0.0156 in. or 0.396 mm", both decimals cut, not rounded.
  test('one ounce is the 1/64 in of ASTM D1814, and its 0.0156 in and 0.396 mm as far as they are printed', () => {
    expect(MM_PER_OUNCE).toBe(25.4 / 64);
    expect(Math.floor(1e4 * (MM_PER_OUNCE / 25.4)) / 1e4).toBe(0.0156);
    expect(Math.floor(1e3 * MM_PER_OUNCE) / 1e3).toBe(0.396);
    expect(mmFromOunces(8)).toBe(3.175);
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
