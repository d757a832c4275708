import { describe, expect, test } from 'vitest';
import { findLevel } from '../../../src/core/math/findLevel.ts';

/** The level's place, and how often the function was asked for it. */
function counted(f: (x: number) => number, level: number, low: number, high: number): { x: number; asked: number } {
  let asked = 0;
  const x = findLevel(
    (at) => {
      asked++;
      return f(at);
    },
    level,
    low,
    high,
  );
  return { x, asked };
}

describe('findLevel', () => {
  // Roots by arithmetic; Kepler's by Meeus, Astronomical Algorithms, 2nd edition (1998), example 30.a, quoted from memory.
  test.each([
    ['a cube', (x: number) => x ** 3, 2, 0, 10, Math.cbrt(2)],
    ['a line', (x: number) => 3 * x - 1, 5, -100, 1000, 2],
    ['an exponential', Math.exp, 20, -40, 40, Math.log(20)],
    ['a triple root', (x: number) => (x - 1) ** 3, 0, -3, 11, 1],
    ["Kepler's equation", (x: number) => x - 0.1 * Math.sin(x), (5 * Math.PI) / 180, 0, 1, (5.554589 * Math.PI) / 180],
  ])('finds the root of %s', (name, f, level, low, high, root) => {
    const { x, asked } = counted(f, level, low, high);
    // The book prints six decimals of a degree.
    expect(x).toBeCloseTo(root, name.startsWith('Kepler') ? 7 : 11);
    expect(asked).toBeLessThan(name === 'a triple root' ? 80 : 20);
  });

  test('is not stalled by a kink, a step or a stretch that is level', () => {
    expect(counted((x) => (x < 3 ? 1e-6 * (x - 3) : 1e6 * (x - 3)), 0, -7, 8).x).toBeCloseTo(3, 11);
    const step = counted((x) => (x < Math.SQRT2 ? -1 : 1), 0, 0, 2);
    expect(step.x).toBeCloseTo(Math.SQRT2, 12);
    expect(step.asked).toBeLessThan(60);
    const level = counted((x) => Math.min(0, x + 1) + Math.max(0, x - 1), 0, -30, 4);
    expect(Math.abs(level.x)).toBeLessThanOrEqual(1);
  });

  test('gives the nearer end where the level is out of reach', () => {
    expect(findLevel((x) => x, 5, 0, 1)).toBe(1);
    expect(findLevel((x) => x, -5, 0, 1)).toBe(0);
  });
});
