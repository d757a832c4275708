import fc from 'fast-check';
import { expect, test } from 'vitest';
import { flattened } from '../../src/artwork/flattened.ts';
import type { Vec2 } from '../../src/core/index.ts';
import { checkLaw } from '../laws.ts';

const point = fc.tuple(
  fc.double({ min: -100, max: 100, noNaN: true }),
  fc.double({ min: -100, max: 100, noNaN: true }),
);

/** The polynomial of Bernstein, written out: independent of de Casteljau's construction. */
function bernstein(control: readonly Vec2[], t: number): Vec2 {
  const weights =
    control.length === 3
      ? [(1 - t) ** 2, 2 * t * (1 - t), t ** 2]
      : [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t ** 2 * (1 - t), t ** 3];
  const along = (axis: 0 | 1) => control.reduce((sum, at, i) => sum + weights[i]! * at[axis], 0);
  return [along(0), along(1)];
}

function distanceTo([px, py]: Vec2, [ax, ay]: Vec2, [bx, by]: Vec2): number {
  const [dx, dy] = [bx - ax, by - ay];
  const share = Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(px - ax - share * dx, py - ay - share * dy);
}

test('no point of a curve is farther from its chords than the tolerance', () => {
  checkLaw(
    fc.property(
      fc.oneof(fc.tuple(point, point, point), fc.tuple(point, point, point, point)),
      fc.constantFrom(0.01, 0.1, 1),
      (control, tolerance) => {
        const chain = [control[0], ...flattened(control, tolerance)];
        expect(chain.at(-1)).toEqual(control.at(-1));
        for (let i = 0; i <= 500; i++) {
          const at = bernstein(control, i / 500);
          const off = Math.min(...chain.slice(1).map((end, k) => distanceTo(at, chain[k]!, end)));
          expect(off).toBeLessThanOrEqual(tolerance * 1.000001);
        }
      },
    ),
    { cost: 10 },
  );
});

test('a straight curve is one chord, and a huge one has no more chords than allowed', () => {
  expect(
    flattened(
      [
        [0, 0],
        [5, 5],
        [10, 10],
      ],
      0.01,
    ),
  ).toEqual([[10, 10]]);
  expect(
    flattened(
      [
        [0, 0],
        [1e9, 5],
        [10, 10],
      ],
      0.01,
      50,
    ),
  ).toHaveLength(50);
});
