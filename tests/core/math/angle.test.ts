import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { turnBetween, wrapAngle } from '../../../src/core/math/angle.ts';
import { heading } from '../../../src/core/math/vec2.ts';
import { checkLaw } from '../../laws.ts';

const angles = fc.double({ min: -50, max: 50, noNaN: true });

describe('an angle', () => {
  test.each([
    [0.3, 0.3],
    [Math.PI + 0.1, 0.1 - Math.PI],
    [-Math.PI - 0.1, Math.PI - 0.1],
    [7 * Math.PI + 0.5, 0.5 - Math.PI],
    [-Math.PI, -Math.PI],
    [Math.PI, -Math.PI],
  ])('%d wraps to %d', (angle, wrapped) => {
    expect(wrapAngle(angle)).toBeCloseTo(wrapped, 12);
  });

  test('wraps to one turn from any place and keeps its direction', () => {
    checkLaw(
      fc.property(angles, angles, (angle, from) => {
        const wrapped = wrapAngle(angle, from);
        expect(wrapped).toBeGreaterThanOrEqual(from - 1e-12);
        expect(wrapped).toBeLessThanOrEqual(from + 2 * Math.PI + 1e-12);
        expect(Math.cos(wrapped)).toBeCloseTo(Math.cos(angle), 12);
        expect(Math.sin(wrapped)).toBeCloseTo(Math.sin(angle), 12);
      }),
    );
  });

  test('is not rounded where it lies in the turn asked for', () => {
    expect(wrapAngle(0.1 + 0.2, 0)).toBe(0.1 + 0.2);
    expect(wrapAngle(-3.1)).toBe(-3.1);
  });

  test('from one direction to another is the wrapped difference, whatever their lengths', () => {
    checkLaw(
      fc.property(
        angles,
        fc.double({ min: -3.1, max: 3.1, noNaN: true }),
        fc.double({ min: 0.1, max: 9, noNaN: true }),
        (a, turn, k) => {
          const [x, y] = heading(a + turn);
          expect(turnBetween(heading(a), [k * x, k * y])).toBeCloseTo(turn, 10);
        },
      ),
    );
  });
});
