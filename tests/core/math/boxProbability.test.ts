import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Box, boxProbability } from '../../../src/core/math/boxProbability.ts';
import { cholesky } from '../../../src/core/math/cholesky.ts';
import { normalDistribution } from '../../../src/core/math/normal.ts';
import { normalDraw, randomDraws } from '../../../src/core/math/randomDraws.ts';
import { defined } from '../../defined.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';

type Matrix = readonly (readonly number[])[];

const ZERO = [0, 0, 0];
const POSITIVE: Box = { low: ZERO, high: [Infinity, Infinity, Infinity] };
const correlations = (r01: number, r02: number, r12: number): Matrix => [
  [1, r01, r02],
  [r01, 1, r12],
  [r02, r12, 1],
];
const between = (low: number, high: number): number => Math.max(0, normalDistribution(high) - normalDistribution(low));

const number = (low: number, high: number): fc.Arbitrary<number> => fc.double({ min: low, max: high, noNaN: true });
const side = fc.oneof(
  { weight: 4, arbitrary: fc.tuple(number(-3, 2), number(0, 4)).map(([low, width]) => [low, low + width] as const) },
  { weight: 1, arbitrary: number(-2, 2).map((high) => [-Infinity, high] as const) },
  { weight: 1, arbitrary: number(-2, 2).map((low) => [low, Infinity] as const) },
);
const boxes = fc
  .tuple(side, side, side)
  .map((sides): Box => ({ low: sides.map(([low]) => low), high: sides.map(([, high]) => high) }));

/** Covariances of rank 1 to 3, of which some variables nearly follow from others. */
const covariances = fc
  .tuple(
    fc.integer({ min: 1, max: 3 }),
    fc.array(number(-1, 1), { minLength: 9, maxLength: 9 }),
    fc.constantFrom(0, 1e-7, 1e-4, 1e-2, 1),
  )
  .map(([rank, draws, apart]) => {
    const rows = [0, 1, 2].map((i) => draws.slice(3 * i, 3 * i + rank));
    const near = rows.map((row, i) =>
      i === 0 ? row : row.map((x, k) => apart * x + (1 - apart) * nth(nth(rows, 0), k)),
    );
    return near.map((a) => near.map((b) => a.reduce((sum, x, k) => sum + x * nth(b, k), 0)));
  });

describe('the probability of a box', () => {
  test('is a product for independent variables', () => {
    const covariance = [
      [4, 0, 0],
      [0, 1, 0],
      [0, 0, 0.25],
    ];
    const box = { low: [-1, -Infinity, 0.5], high: [3, 1, Infinity] };
    const right = between(-1, 1) * normalDistribution(-1) * (1 - normalDistribution(-1));
    expect(boxProbability([1, 2, 1], covariance, box)).toBeCloseTo(right, 14);
  });

  // Source: P = 1/8 + (asin r01 + asin r02 + asin r12) / 4 pi, Sheppard 1899, and David 1953, Biometrika 40, 458, for three.
  test('of the positive octant is the sum of arc sines, singular or not', () => {
    checkLaw(
      fc.property(covariances, (covariance) => {
        const u = covariance.map((row, i) => Math.sqrt(nth(row, i)));
        if (Math.min(...u) < 1e-3) return;
        const asin = (i: number, j: number): number =>
          Math.asin(Math.max(-1, Math.min(1, nth(nth(covariance, i), j) / (nth(u, i) * nth(u, j)))));
        const right = 1 / 8 + (asin(0, 1) + asin(0, 2) + asin(1, 2)) / (4 * Math.PI);
        expect(Math.abs(boxProbability(ZERO, covariance, POSITIVE) - right)).toBeLessThan(1e-7);
      }),
    );
  });

  // Source: the threefold integral by nested adaptive quadrature with 20 digits (mpmath 1.3).
  test.each([
    [[1.4, 0.8, 0.7], [2, 0.3, 0.4, 0.5, 0.35, 0.6], ZERO, [4, 3, 3], 0.63623490433979],
    [ZERO, [1, -0.5, 0.2, 1, 0.6, 1], [-1, -0.5, -2], [0.5, 1.5, 0.3], 0.20805722078122],
    [[2, 1, 1.2], [1.96, 0.5, 0.5, 0.36, 0.3, 0.49], ZERO, [Infinity, Infinity, 2.5], 0.84428599429601],
  ])('of mean %j and covariance %j is the integral', (mean, [a, b, c, d, e, f] = [], low, high, right) => {
    const covariance = [
      [a, b, c],
      [b, d, e],
      [c, e, f],
    ].map((row) => row.map(Number));
    expect(Math.abs(boxProbability(mean, covariance, { low, high }) - right)).toBeLessThan(1e-9);
  });

  test('of two variables that are one up to a shift is that of the shorter interval', () => {
    checkLaw(
      fc.property(boxes, number(-0.8, 0.8), number(-1, 1), ({ low, high }, r, shift) => {
        // Head and tail: x2 = x1 + shift. With x0 free of bounds it drops out.
        const free = { low: [-Infinity, ...low.slice(1)], high: [Infinity, ...high.slice(1)] };
        const right = between(Math.max(nth(low, 1), nth(low, 2) - shift), Math.min(nth(high, 1), nth(high, 2) - shift));
        const got = boxProbability([0, 0, shift], correlations(r, r, 1), free);
        expect(Math.abs(got - right)).toBeLessThan(1e-6);
        const mirrored = boxProbability([0, 0, shift], correlations(r, -r, -1), {
          low: [-Infinity, nth(low, 1), 2 * shift - nth(high, 2)],
          high: [Infinity, nth(high, 1), 2 * shift - nth(low, 2)],
        });
        expect(Math.abs(mirrored - right)).toBeLessThan(1e-6);
      }),
    );
  });

  test('of three variables that are one is that of the shortest interval', () => {
    checkLaw(
      fc.property(boxes, (box) => {
        const right = between(Math.max(...box.low), Math.min(...box.high));
        expect(Math.abs(boxProbability(ZERO, correlations(1, 1, 1), box) - right)).toBeLessThan(1e-6);
      }),
    );
  });

  test('of a sum of two others, worked by hand: x2 = (x0 + x1) / sqrt 2 below 0 with both above it is impossible', () => {
    const covariance = correlations(0, Math.SQRT1_2, Math.SQRT1_2);
    const impossible = { low: [0, 0, -Infinity], high: [Infinity, Infinity, 0] };
    expect(boxProbability(ZERO, covariance, impossible)).toBeLessThan(1e-9);
    expect(boxProbability(ZERO, covariance, POSITIVE)).toBeCloseTo(1 / 4, 9);
  });

  test('lies in a million random draws within four standard errors', () => {
    const random = randomDraws(11);
    const mean = [1, 0.5, 0.2];
    const covariance = [
      [2, 0.6, -0.4],
      [0.6, 0.8, 0.2],
      [-0.4, 0.2, 0.5],
    ];
    const box = { low: [0, 0, -0.5], high: [3, 2, Infinity] };
    const factor = defined(cholesky(covariance));
    const draws = 1e6;
    let inside = 0;
    for (let n = 0; n < draws; n++) {
      const z = [normalDraw(random), normalDraw(random), normalDraw(random)];
      const x = factor.map((row, i) => nth(mean, i) + row.reduce((sum, l, k) => sum + l * nth(z, k), 0));
      if (x.every((one, i) => one >= nth(box.low, i) && one <= nth(box.high, i))) inside++;
    }
    const p = boxProbability(mean, covariance, box);
    expect(Math.abs(inside / draws - p)).toBeLessThan(4 * Math.sqrt((p * (1 - p)) / draws));
  });

  test('is the sum over two halves of the box', () => {
    checkLaw(
      fc.property(boxes, covariances, number(0, 1), fc.nat({ max: 2 }), (box, covariance, share, i) => {
        const [low, high] = [Math.max(-3, nth(box.low, i)), Math.min(3, nth(box.high, i))];
        const cut = low + share * (high - low);
        // Where a variable has no variance both halves may hold it.
        if (nth(nth(covariance, i), i) < 1e-6) return;
        const whole = boxProbability(ZERO, covariance, box);
        const lower = boxProbability(ZERO, covariance, { low: box.low, high: box.high.with(i, cut) });
        const upper = boxProbability(ZERO, covariance, { low: box.low.with(i, cut), high: box.high });
        expect(Math.abs(lower + upper - whole)).toBeLessThan(2e-6);
      }),
    );
  });

  test('does not depend on the order of the variables', () => {
    checkLaw(
      fc.property(boxes, covariances, fc.constantFrom([1, 0, 2], [2, 1, 0], [1, 2, 0]), (box, covariance, order) => {
        const turned = boxProbability(
          ZERO,
          order.map((i) => order.map((j) => nth(nth(covariance, i), j))),
          { low: order.map((i) => nth(box.low, i)), high: order.map((i) => nth(box.high, i)) },
        );
        expect(Math.abs(turned - boxProbability(ZERO, covariance, box))).toBeLessThan(1e-9);
      }),
    );
  });

  test('moves with a side by no more than the density there', () => {
    checkLaw(
      fc.property(boxes, covariances, (box, covariance) => {
        const u = Math.sqrt(nth(nth(covariance, 0), 0));
        if (u < 0.05 || !Number.isFinite(nth(box.low, 0))) return;
        const step = 1e-3 * u;
        const moved = boxProbability(ZERO, covariance, { ...box, low: box.low.with(0, nth(box.low, 0) - step) });
        const more = moved - boxProbability(ZERO, covariance, box);
        expect(more).toBeGreaterThan(-1e-6);
        expect(more).toBeLessThan(0.4 * 1e-3 + 1e-6);
      }),
    );
  });

  test('takes a variable without variance as inside or outside, its sides included', () => {
    const covariance = [
      [1, 0, 0.5],
      [0, 0, 0],
      [0.5, 0, 1],
    ];
    const box = (low: number, high: number): Box => ({ low: [0, low, 0], high: [Infinity, high, Infinity] });
    const right = 1 / 4 + Math.asin(0.5) / (2 * Math.PI);
    for (const [low, high] of [
      [1, 3],
      [2, 3],
      [1, 2],
      [2, 2],
    ] as const)
      expect(boxProbability([0, 2, 0], covariance, box(low, high))).toBeCloseTo(right, 9);
    for (const [low, high] of [
      [2.1, 3],
      [1, 1.9],
    ] as const)
      expect(boxProbability([0, 2, 0], covariance, box(low, high))).toBe(0);
  });

  test('is 0 for a box turned inside out', () => {
    expect(boxProbability(ZERO, correlations(0.5, 0.5, 0.5), { low: [1, 0, 0], high: [0, 1, 1] })).toBe(0);
    expect(boxProbability(ZERO, correlations(0.5, 0.5, 0.5), { low: [1, 1, 0], high: [0, 0, 1] })).toBe(0);
  });
});
