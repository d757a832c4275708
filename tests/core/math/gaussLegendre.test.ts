import { expect, test } from 'vitest';
import { gaussLegendre } from '../../../src/core/math/gaussLegendre.ts';
import { nth } from '../../nth.ts';

test('the Gauss-Legendre rule has the points and weights of the table', () => {
  // Source: Abramowitz and Stegun 1964, table 25.4, n = 5, over -1 to 1; from memory, and as roots they have a closed form.
  const five = gaussLegendre(5);
  const z = [0.906179845938664, 0.538469310105683, 0, -0.538469310105683, -0.906179845938664];
  const weights = [0.236926885056189, 0.478628670499366, 0.568888888888889, 0.478628670499366, 0.236926885056189];
  for (const [k, { x, weight }] of five.entries()) {
    expect(2 * x - 1).toBeCloseTo(nth(z, k), 14);
    expect(2 * weight).toBeCloseTo(nth(weights, k), 14);
  }
});

test.each([1, 2, 7, 40])('the rule of %d points is exact up to degree 2 n - 1', (n) => {
  const integral = (degree: number): number =>
    gaussLegendre(n).reduce((sum, { x, weight }) => sum + weight * x ** degree, 0);
  for (const degree of [0, 1, n, 2 * n - 1]) expect(integral(degree)).toBeCloseTo(1 / (degree + 1), 13);
  if (n < 8) expect(Math.abs(integral(2 * n) - 1 / (2 * n + 1))).toBeGreaterThan(1e-9);
});
