import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { budgetOf, type Model, propagate } from '../../../src/core/doubt/propagate.ts';
import { type Correlation, covarianceOf, type Uncertain } from '../../../src/core/doubt/uncertain.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';

const normal = (value: number, u: number): Uncertain => ({ value, u, distribution: 'normal' });
const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, x, i) => sum + x * nth(b, i), 0);

const number = (most: number): fc.Arbitrary<number> => fc.double({ min: -most, max: most, noNaN: true });
const doubt = fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 5, noNaN: true }));
const inputs = fc.array(fc.record({ value: number(100), u: doubt, distribution: fc.constantFrom('normal', 'even') }), {
  minLength: 2,
  maxLength: 7,
}) as fc.Arbitrary<Uncertain[]>;

/** Slopes of two linear outputs, and one correlation. */
const linear = inputs.chain((list) =>
  fc.record({
    inputs: fc.constant(list),
    slopes: fc.array(fc.array(number(4), { minLength: list.length, maxLength: list.length }), {
      minLength: 2,
      maxLength: 2,
    }),
    r: fc.double({ min: -1, max: 1, noNaN: true }),
  }),
);

describe('propagation by first order', () => {
  test('is exact for a linear model: c S c, and the slopes as sensitivities', () => {
    checkLaw(
      fc.property(linear, ({ inputs, slopes, r }) => {
        const covariance = covarianceOf(inputs, [{ a: 0, b: 1, r }]);
        const result = propagate((x) => slopes.map((row) => 7 + dot(row, x)), inputs, covariance);
        for (const [k, row] of slopes.entries()) {
          for (const [i, slope] of row.entries()) {
            expect(nth(nth(result.sensitivities, k), i)).toBeCloseTo(slope, 6);
            expect(nth(nth(result.curvature, k), i)).toBeCloseTo(0, 9);
          }
          expect(nth(result.values, k)).toBe(
            7 +
              dot(
                row,
                inputs.map(({ value }) => value),
              ),
          );
          for (const [m, other] of slopes.entries()) {
            const right = dot(
              row,
              covariance.map((line) => dot(line, other)),
            );
            expect(nth(nth(result.covariance, k), m)).toBeCloseTo(right, 6);
          }
          expect(nth(result.u, k)).toBe(Math.sqrt(Math.max(0, nth(nth(result.covariance, k), k))));
        }
      }),
    );
  });

  test('of a product worked by hand', () => {
    // (3 +- 0.1) (4 +- 0.2): u^2 = 16 0.01 + 9 0.04 = 0.52; with r = 0.5 also 2 4 3 0.5 0.1 0.2 = 0.24.
    const model: Model = ([a = 0, b = 0]) => [a * b];
    const inputs = [normal(3, 0.1), normal(4, 0.2)];
    expect(propagate(model, inputs).u[0]).toBeCloseTo(Math.sqrt(0.52), 12);
    const correlated = propagate(model, inputs, covarianceOf(inputs, [{ a: 0, b: 1, r: 0.5 }]));
    expect(correlated.u[0]).toBeCloseTo(Math.sqrt(0.76), 12);
    expect(nth(correlated.sensitivities, 0).map((c) => Math.round(c * 1e9) / 1e9)).toEqual([4, 3]);
  });

  test('counts a kink within u by its mean over +-u, and its curvature', () => {
    // max(0, x) at 0.5 with u 1: from 0 to 1.5 over 2, second difference 1.5 - 1 + 0.
    const { sensitivities, curvature } = propagate(([x = 0]) => [Math.max(0, x)], [normal(0.5, 1)]);
    expect(sensitivities).toEqual([[0.75]]);
    expect(curvature).toEqual([[0.5]]);
  });

  test('of a square has the curvature 2 u^2, which is twice the shift of its mean', () => {
    expect(nth(propagate(([x = 0]) => [x * x], [normal(3, 0.5)]).curvature, 0)).toEqual([0.5]);
  });

  test('has the slope of an input without doubt, of any size, and no variance from it', () => {
    for (const value of [0, 1e-5, -40, 1e7]) {
      const { sensitivities, u, curvature } = propagate(([x = 0]) => [5 * x + 1], [normal(value, 0)]);
      expect(nth(nth(sensitivities, 0), 0)).toBeCloseTo(5, 4);
      expect([u, curvature]).toEqual([[0], [[0]]]);
    }
  });

  test('calls the model once at the values and twice for each input', () => {
    let calls = 0;
    propagate(
      (x) => {
        calls++;
        return x;
      },
      [normal(1, 1), normal(2, 1), normal(3, 0)],
    );
    expect(calls).toBe(7);
  });

  test('does not depend on the order of the inputs', () => {
    checkLaw(
      fc.property(linear, ({ inputs, slopes, r }) => {
        const last = inputs.length - 1;
        const model: Model = (x) => slopes.map((row) => dot(row, x) + Math.sin(nth(x, 0)));
        const turned: Model = (x) => model([...x].reverse());
        const straight = propagate(model, inputs, covarianceOf(inputs, [{ a: 0, b: 1, r }]));
        const back = [...inputs].reverse();
        const reversed = propagate(turned, back, covarianceOf(back, [{ a: last, b: last - 1, r }]));
        for (const k of [0, 1]) {
          expect(nth(reversed.u, k)).toBeCloseTo(nth(straight.u, k), 6);
          const budget = budgetOf(nth(straight.sensitivities, k), covarianceOf(inputs, [{ a: 0, b: 1, r }]));
          const other = budgetOf(nth(reversed.sensitivities, k), covarianceOf(back, [{ a: last, b: last - 1, r }]));
          if (nth(straight.u, k) < 1e-3) continue;
          for (const i of inputs.keys()) expect(nth(other, last - i)).toBeCloseTo(nth(budget, i), 6);
        }
      }),
    );
  });

  test('with correlations of 1 equals one input with the sum of the slopes', () => {
    checkLaw(
      fc.property(fc.array(number(4), { minLength: 3, maxLength: 3 }), (slopes) => {
        const inputs = slopes.map(() => normal(2, 0.3));
        const all: Correlation[] = [
          { a: 0, b: 1, r: 1 },
          { a: 0, b: 2, r: 1 },
          { a: 1, b: 2, r: 1 },
        ];
        const { u } = propagate((x) => [dot(slopes, x)], inputs, covarianceOf(inputs, all));
        const sum = slopes.reduce((a, b) => a + b, 0);
        // The root of a variance that rounding leaves where the slopes cancel.
        expect(Math.abs(nth(u, 0) - Math.abs(sum) * 0.3)).toBeLessThan(1e-6);
      }),
    );
  });
});

describe('a budget', () => {
  test('adds up to 1, correlated or not', () => {
    checkLaw(
      fc.property(linear, ({ inputs, slopes, r }) => {
        const covariance = covarianceOf(inputs, [{ a: 0, b: 1, r }]);
        const row = nth(slopes, 0);
        const shares = budgetOf(row, covariance);
        const variance = dot(
          row,
          covariance.map((line) => dot(line, row)),
        );
        const total = shares.reduce((sum, share) => sum + share, 0);
        if (variance > 1e-3) expect(total).toBeCloseTo(1, 9);
        if (inputs.every(({ u }) => u === 0)) expect(total).toBe(0);
      }),
    );
  });

  test('takes independent inputs by their variance, and half of each covariance', () => {
    const inputs = [normal(0, 3), normal(0, 4)];
    expect(budgetOf([1, 1], covarianceOf(inputs))).toEqual([9 / 25, 16 / 25]);
    // 9 + 16 + 2 x 6 = 37, of which 9 + 6 and 16 + 6.
    expect(budgetOf([1, 1], covarianceOf(inputs, [{ a: 0, b: 1, r: 0.5 }]))).toEqual([15 / 37, 22 / 37]);
  });

  test('is all 0 for an output without variance', () => {
    expect(budgetOf([0, 0], covarianceOf([normal(1, 2), normal(1, 2)]))).toEqual([0, 0]);
  });
});
